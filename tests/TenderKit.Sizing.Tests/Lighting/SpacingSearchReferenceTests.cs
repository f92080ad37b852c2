using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

/// <summary>The search leaves out what cannot comply; trying every spacing in full must end at the same answer.</summary>
public class SpacingSearchReferenceTests
{
    [Fact]
    public void Leaving_out_dark_spacings_changes_nothing() =>
        Gen.Select(Gen.Double[300, 12_000], Gen.Double[3, 10], Gen.Double[2, 10], Gen.Int[0, 3], Gen.Enum<Arrangement>(), Gen.Double[-0.9, 0.9]).Sample(
            (flux, height, width, which, arrangement, street) =>
            {
                var target = LightClasses.Find(new[] { "P4", "C5", "P6", "parking light" }[which])!;
                var d = Distributions.Skewed(flux, street, 0.2);
                var shape = new RoadLayout(width, 10, height, 0.3, 5, arrangement);
                var bounds = new SpacingBounds(0.5, 1, 6, 0.2);
                var found = SpacingSearch.Road(d, shape, target, 0.8, bounds);
                var expected = Exhaustive(d, shape, target, bounds);
                return found.SpacingM == expected.SpacingM
                    && found.Met == expected.Met
                    && found.LevelFraction == expected.LevelFraction
                    && found.GoverningLimit == expected.GoverningLimit
                    && found.Result.Points.SequenceEqual(expected.Result.Points);
            },
            iter: 60);

    private static LightSolution Exhaustive(LightDistribution d, RoadLayout shape, LightTarget target, SpacingBounds bounds)
    {
        var first = (int)Math.Floor((bounds.MaxSpacingToHeight * shape.MountingHeightM / bounds.StepM) + 1e-9);
        var last = (int)Math.Ceiling((bounds.MinSpacingToHeight * shape.MountingHeightM / bounds.StepM) - 1e-9);
        var all = Enumerable.Range(0, first - last + 1)
            .Select(i => SpacingSearch.AtSpacing(d, shape with { SpacingM = (first - i) * bounds.StepM }, target, 0.8, bounds))
            .ToList();
        var met = all.FindIndex(s => s.Met);
        if (met == 0) return all[0] with { GoverningLimit = SpacingSearch.GreatestSpacingAllowed };
        if (met > 0) return all[met] with { GoverningLimit = all[met - 1].GoverningLimit };
        return all.MaxBy(s => Margin(s, target))!;
    }

    /// <summary>Least of reached over required.</summary>
    private static double Margin(LightSolution s, LightTarget target)
    {
        double[] margins =
        [
            s.Result.AverageLx / target.AverageLx,
            target.MinimumLx is { } minimum ? s.Result.MinimumLx / minimum : double.PositiveInfinity,
            target.OverallUniformity is { } uniformity ? s.Result.OverallUniformity / uniformity : double.PositiveInfinity,
            target.AverageCeilingLx is { } ceiling ? ceiling / s.Result.AverageLx : double.PositiveInfinity,
        ];
        return margins.Min();
    }
}
