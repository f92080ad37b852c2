using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Benchmarks.Lighting;

/// <summary>Cost of one luminaire's light at one point, beside the cost of the bare arithmetic it cannot do without.</summary>
[MemoryDiagnoser]
public class LightFieldBenchmarks
{
    private const int Pairs = 1024 * 32;

    private readonly LightDistribution distribution = Samples.Road(planeStepDegrees: 5, gammaStepDegrees: 2.5);
    private readonly LuminairePosition[] luminaires = new LuminairePosition[32];
    private readonly LightPoint[] points = new LightPoint[1024];

    [GlobalSetup]
    public void Lay()
    {
        for (var i = 0; i < luminaires.Length; i++) luminaires[i] = new LuminairePosition(i * 10, i % 2 * 20, 8, i % 2 == 0 ? 90 : 270, 5);
        for (var i = 0; i < points.Length; i++) points[i] = new LightPoint(i % 64 * 5, i / 64 * 1.25, 0);
    }

    [Benchmark(OperationsPerInvoke = Pairs)]
    public ImmutableArray<LightPoint> PerPair() => Illuminance.AtPoints(distribution, luminaires, points, 0.8);

    /// <summary>Inverse cube of the distance only: no angle, no table.</summary>
    [Benchmark(OperationsPerInvoke = Pairs, Baseline = true)]
    public double BareArithmetic()
    {
        var all = 0.0;
        foreach (var point in points)
        {
            foreach (var luminaire in luminaires)
            {
                double dx = point.XM - luminaire.XM, dy = point.YM - luminaire.YM;
                var squared = (dx * dx) + (dy * dy) + (luminaire.HeightM * luminaire.HeightM);
                all += luminaire.HeightM / (squared * Math.Sqrt(squared));
            }
        }

        return all;
    }
}
