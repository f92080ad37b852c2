using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Sizing.Tests.Lighting;

/// <summary>Distributions with a closed form.</summary>
internal static class Distributions
{
    public static LightDistribution Lambertian(double fluxLm) => Of(90, (_, gamma) => fluxLm / Math.PI * Cos(gamma));

    public static LightDistribution Isotropic(double fluxLm) => Of(180, (_, _) => fluxLm / (4 * Math.PI));

    /// <summary>More to the street side than to the house side, more ahead (C 0) than behind.</summary>
    public static LightDistribution Skewed(double fluxLm, double street, double ahead) =>
        Of(90, (plane, gamma) => fluxLm / Math.PI * Cos(gamma) * (1 + (street * Math.Sin(plane * Math.PI / 180)) + (ahead * Cos(plane))));

    public static LightDistribution Of(double lastGamma, Func<double, double, double> intensityCd, double planeStep = 5, double gammaStep = 1)
    {
        var planes = Enumerable.Range(0, (int)(360 / planeStep) + 1).Select(i => i * planeStep).ToImmutableArray();
        var gammas = Enumerable.Range(0, (int)(lastGamma / gammaStep) + 1).Select(i => i * gammaStep).ToImmutableArray();
        var values = planes.SelectMany(c => gammas.Select(g => Math.Max(0, intensityCd(c, g)))).ToImmutableArray();
        return new LightDistribution(planes, gammas, values, null, null);
    }

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);
}
