using BenchmarkDotNet.Attributes;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Benchmarks.Lighting;

/// <summary>Whole searches as the tender runs them for every luminaire on every pole.</summary>
[MemoryDiagnoser]
public class SpacingSearchBenchmarks
{
    private readonly LightDistribution distribution = Samples.Road(planeStepDegrees: 5, gammaStepDegrees: 2.5);
    private readonly LightTarget target = LightClasses.Find("P4")!;
    private readonly SpacingBounds bounds = new(0.5, 1, 7, 0.1);

    [Params(Arrangement.SingleSided, Arrangement.Staggered, Arrangement.Opposite)]
    public Arrangement Arrangement { get; set; }

    [Benchmark]
    public LightSolution Road() => SpacingSearch.Road(distribution, new RoadLayout(6, 20, 6, 0.5, 5, Arrangement), target, 0.8, bounds);

    [Benchmark]
    public LightSolution RoadThatNothingMeets() =>
        SpacingSearch.Road(distribution, new RoadLayout(6, 20, 6, 0.5, 5, Arrangement), target with { OverallUniformity = 0.99 }, 0.8, bounds);
}
