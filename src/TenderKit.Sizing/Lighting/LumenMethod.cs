using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Hand check of the average illuminance: flux x utilisation x maintenance = average x area of one bay. Source: textbook lumen method,
/// as in a navy construction manual. Check: 50,000 lm, UF 0.43, MF 0.70, 21.53 lx, 15.24 m gives 45.87 m (150.5 ft).
/// </summary>
public static class LumenMethod
{
    private const int Azimuths = 1440;
    private const int Elevations = 180;

    /// <summary>Average over the strip from luminaires at the given spacing, lx.</summary>
    /// <param name="fluxLm">Flux of one luminaire, new, lm.</param>
    /// <param name="utilisationFactor">Part of that flux on the strip, 0 to 1.</param>
    /// <param name="maintenanceFactor">Maintenance factor, 0 to 1.</param>
    /// <param name="spacingM">Length of strip per luminaire, m (half the spacing of one side when both sides are lit).</param>
    /// <param name="widthM">Width of the strip, m.</param>
    public static double AverageLx(double fluxLm, double utilisationFactor, double maintenanceFactor, double spacingM, double widthM) =>
        UsefulFluxLm(fluxLm, utilisationFactor, maintenanceFactor) / (Require.Positive(spacingM, nameof(spacingM)) * Require.Positive(widthM, nameof(widthM)));

    /// <summary>Length of strip per luminaire for an average, m; parameters as in <see cref="AverageLx"/>.</summary>
    public static double SpacingM(double fluxLm, double utilisationFactor, double maintenanceFactor, double averageLx, double widthM) =>
        UsefulFluxLm(fluxLm, utilisationFactor, maintenanceFactor) / (Require.Positive(averageLx, nameof(averageLx)) * Require.Positive(widthM, nameof(widthM)));

    /// <summary>Flux needed for an average over an area, lm; parameters as in <see cref="AverageLx"/>.</summary>
    public static double FluxLm(double averageLx, double areaM2, double utilisationFactor, double maintenanceFactor) =>
        Require.NotNegative(averageLx, nameof(averageLx)) * Require.Positive(areaM2, nameof(areaM2))
        / (Require.InRange(utilisationFactor, 0.001, 1, nameof(utilisationFactor)) * Require.InRange(maintenanceFactor, 0.001, 1, nameof(maintenanceFactor)));

    /// <summary>
    /// Part of a luminaire's flux that falls on an endless strip of the lit plane. In every vertical plane of the world the strip is seen
    /// between two elevations with exact tangents; the intensity is summed over them (1440 azimuths, 180 elevations; error under 0.1 %).
    /// Source: definition of the utilisation factor, CIE 140 (from memory). Check: Lambertian at the edge, H 8, W 7: 0.5 W / sqrt(H^2 + W^2) = 0.3293.
    /// </summary>
    /// <param name="distribution">Luminaire.</param>
    /// <param name="widthM">Width of the strip, m.</param>
    /// <param name="heightM">Mounting height, m.</param>
    /// <param name="overhangM">Photometric centre beyond the near edge, m.</param>
    /// <param name="tiltDegrees">Tilt of the street side upwards, degrees.</param>
    public static double UtilisationFactor(LightDistribution distribution, double widthM, double heightM, double overhangM, double tiltDegrees)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        Require.Positive(widthM, nameof(widthM));
        Require.Positive(heightM, nameof(heightM));
        Require.InRange(tiltDegrees, 0, 45, nameof(tiltDegrees));
        if (distribution.FluxLm <= 0) return 0;
        var mounting = new Mounting(1, 90, tiltDegrees);
        double near = -overhangM / heightM, far = (widthM - overhangM) / heightM;
        var stepRad = 2 * Math.PI / Azimuths;
        var flux = 0.0;
        var fan = new Fan();
        for (var i = 0; i < Azimuths; i++) flux += stepRad * FluxOfAzimuth(distribution, mounting, (i + 0.5) * stepRad, near, far, fan);
        return flux / distribution.FluxLm;
    }

    private static double FluxOfAzimuth(LightDistribution distribution, in Mounting mounting, double azimuthRad, double near, double far, Fan fan)
    {
        double cos = Math.Cos(azimuthRad), sin = Math.Sin(azimuthRad);
        var (first, last) = sin > 0 ? (near / sin, far / sin) : (far / sin, near / sin);
        if (last <= 0) return 0;
        double from = Math.Atan(Math.Max(first, 0)), step = (Math.Atan(last) - from) / Elevations;
        for (var j = 0; j < Elevations; j++)
        {
            var tan = Math.Tan(from + ((j + 0.5) * step));
            (fan.Tangents[j], fan.Xs[j], fan.Ys[j], fan.Lx[j]) = (tan, tan * cos, tan * sin, 0);
        }

        LightKernel.Add(distribution, mounting, 0, 0, fan.Xs, fan.Ys, fan.Lx);
        var sum = 0.0;
        for (var j = 0; j < Elevations; j++)
        {
            var squared = 1 + (fan.Tangents[j] * fan.Tangents[j]); // at height 1: intensity = lx / cos^3, and sin = tan cos
            sum += fan.Lx[j] * squared * fan.Tangents[j];
        }

        return sum * step;
    }

    private static double UsefulFluxLm(double fluxLm, double utilisationFactor, double maintenanceFactor) =>
        Require.NotNegative(fluxLm, nameof(fluxLm))
        * Require.InRange(utilisationFactor, 0, 1, nameof(utilisationFactor))
        * Require.InRange(maintenanceFactor, 0, 1, nameof(maintenanceFactor));

    /// <summary>Points of one azimuth on a plane at distance 1, and their light.</summary>
    private sealed class Fan
    {
        public double[] Tangents { get; } = new double[Elevations];

        public double[] Xs { get; } = new double[Elevations];

        public double[] Ys { get; } = new double[Elevations];

        public double[] Lx { get; } = new double[Elevations];
    }
}
