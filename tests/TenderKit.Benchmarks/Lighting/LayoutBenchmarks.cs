using BenchmarkDotNet.Attributes;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Benchmarks.Lighting;

/// <summary>The larger computations on light.</summary>
[MemoryDiagnoser]
public class LayoutBenchmarks
{
    private readonly LightDistribution distribution = Samples.Road(planeStepDegrees: 5, gammaStepDegrees: 2.5);

    [Benchmark]
    public double UtilisationFactor() => LumenMethod.UtilisationFactor(distribution, 6, 6, 0.5, 5);

    [Benchmark]
    public LightSolution Yard() => SpacingSearch.Yard(
        distribution, new YardLayout(80, 40, 1, false, 8, 0.5, 5), LightClasses.Find("parking light")!, 0.8, new SpacingBounds(0.5, 0.5, 6, 0.1));

    [Benchmark]
    public AreaSolution Area() => AreaSearch.FewestPoles(
        distribution,
        new Area([new(0, 0), new(60, 0), new(60, 20), new(20, 20), new(20, 60), new(0, 60)]),
        LightClasses.Find("parking light")!,
        0.8,
        new AreaShape(8, 0, null, 8, 0.1));

    [Benchmark]
    public PhotometricAnalysis Analysis() => PhotometricAnalysis.Of(distribution);
}
