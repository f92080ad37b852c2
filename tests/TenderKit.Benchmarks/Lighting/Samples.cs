using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Benchmarks.Lighting;

/// <summary>A made-up road optic, wide along the road, 4000 lm or so.</summary>
internal static class Samples
{
    public static LightDistribution Road(double planeStepDegrees, double gammaStepDegrees)
    {
        var planes = Steps(360, planeStepDegrees);
        var gammas = Steps(90, gammaStepDegrees);
        return new LightDistribution(planes, gammas, [.. planes.SelectMany(c => gammas.Select(g => IntensityCd(c, g)))], null, 30);
    }

    private static double IntensityCd(double planeDegrees, double gammaDegrees)
    {
        if (gammaDegrees >= 85) return 0;
        double gamma = gammaDegrees * Math.PI / 180, plane = planeDegrees * Math.PI / 180;
        double x = Math.Tan(gamma) * Math.Cos(plane), y = Math.Tan(gamma) * Math.Sin(plane);
        return 600 * Math.Pow(Math.Cos(gamma), -1.7) / ((1 + Math.Pow(Math.Abs(x / 2.2), 6)) * (1 + Math.Pow(Math.Abs((y - 0.5) / 0.95), 4)));
    }

    private static ImmutableArray<double> Steps(double last, double step) => [.. Enumerable.Range(0, (int)(last / step) + 1).Select(i => i * step)];
}
