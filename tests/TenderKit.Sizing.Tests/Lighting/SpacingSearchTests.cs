using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class SpacingSearchTests
{
    private static readonly LightTarget P4 = LightClasses.Find("P4")!;
    private static readonly SpacingBounds Dimmable = new(0.5, 1, 6, 0.1);
    private static readonly RoadLayout Shape = new(5, 10, 6, 0.5, 0, Arrangement.SingleSided);

    [Fact]
    public void Widest_spacing_complies_and_no_wider_one_does() => Gen.Select(Gen.Double[1500, 8000], Gen.Double[4, 10], Gen.Double[3, 8]).Sample(
        (flux, h, w) =>
        {
            var d = Distributions.Skewed(flux, 0.4, 0);
            var shape = Shape with { MountingHeightM = h, WidthM = w };
            var found = SpacingSearch.Road(d, shape, P4, 0.8, Dimmable);
            if (!found.Met) return true;
            for (var s = found.SpacingM + 0.5; s <= 6 * h; s += 0.5)
            {
                if (SpacingSearch.AtSpacing(d, shape with { SpacingM = s }, P4, 0.8, Dimmable).Met) return false;
            }

            return found.Result.AverageLx >= 5 && found.Result.MinimumLx >= 1 && found.Result.AverageLx <= 7.5;
        },
        iter: 30);

    [Fact]
    public void Level_is_the_lowest_whole_percent_that_meets_the_target()
    {
        var d = Distributions.Lambertian(3000);
        var full = Illuminance.OnRoad(d, Shape with { SpacingM = 15 }, 0.8);
        var found = SpacingSearch.AtSpacing(d, Shape with { SpacingM = 15 }, P4, 0.8, Dimmable);
        var needed = Math.Max(5 / full.AverageLx, 1 / full.MinimumLx);
        Assert.True(found.Met);
        Assert.Equal(Math.Ceiling(needed * 100) / 100, found.LevelFraction, 1e-12);
        Assert.Equal(full.AverageLx * found.LevelFraction, found.Result.AverageLx, 1e-12);
        Assert.Equal("average illuminance", found.GoverningLimit);
    }

    [Fact]
    public void Without_dimming_a_lamp_too_strong_misses_the_ceiling()
    {
        var fixedOutput = Dimmable with { LeastLevelFraction = 1 };
        var found = SpacingSearch.AtSpacing(Distributions.Lambertian(6000), Shape with { SpacingM = 15 }, P4, 0.8, fixedOutput);
        Assert.False(found.Met);
        Assert.Equal("ceiling of the average illuminance", found.GoverningLimit);
        Assert.True(SpacingSearch.AtSpacing(Distributions.Lambertian(6000), Shape with { SpacingM = 15 }, P4, 0.8, Dimmable).Met);
    }

    [Fact]
    public void Governing_limit_is_what_the_next_step_fails()
    {
        var found = SpacingSearch.Road(Distributions.Lambertian(3000), Shape, P4, 0.8, Dimmable);
        var next = SpacingSearch.AtSpacing(Distributions.Lambertian(3000), Shape with { SpacingM = found.SpacingM + 0.5 }, P4, 0.8, Dimmable);
        Assert.True(found.Met);
        Assert.False(next.Met);
        Assert.Equal(next.GoverningLimit, found.GoverningLimit);
    }

    [Fact]
    public void Bound_is_named_when_the_light_would_go_further()
    {
        var found = SpacingSearch.Road(Distributions.Lambertian(5000), Shape, P4, 0.8, Dimmable with { MaxSpacingToHeight = 2 });
        Assert.Equal((12.0, SpacingSearch.GreatestSpacingAllowed), (found.SpacingM, found.GoverningLimit));
    }

    [Fact]
    public void Nearest_miss_when_nothing_complies()
    {
        var found = SpacingSearch.Road(Distributions.Lambertian(100), Shape, P4, 0.8, Dimmable);
        Assert.False(found.Met);
        Assert.Equal(1, found.LevelFraction);
        Assert.Equal(6, found.SpacingM); // the closest poles allowed come nearest
        Assert.Equal("average illuminance", found.GoverningLimit);
    }

    [Fact]
    public void Uniformity_class_is_stopped_by_uniformity()
    {
        var found = SpacingSearch.Road(Distributions.Lambertian(50_000), Shape, LightClasses.Find("C5")!, 0.8, Dimmable);
        Assert.True(found.Met);
        Assert.True(found.Result.OverallUniformity >= 0.4);
        Assert.Equal("overall uniformity", found.GoverningLimit);
    }

    [Fact]
    public void Yard_takes_the_fewest_poles()
    {
        var target = LightClasses.Find("parking light")!;
        var shape = new YardLayout(60, 25, 1, false, 8, 0.5, 5);
        var d = Distributions.Skewed(12_000, 0.6, 0);
        var found = SpacingSearch.Yard(d, shape, target, 0.8, Dimmable);
        Assert.True(found.Met);
        var poles = found.Yard!.PolesPerSide * (found.Yard.BothSides ? 2 : 1);
        for (var n = 2; n < poles; n++)
        {
            Assert.False(SpacingSearch.AtPoles(d, shape with { PolesPerSide = n }, target, 0.8, Dimmable).Met);
            if (n % 2 == 0) Assert.False(SpacingSearch.AtPoles(d, shape with { PolesPerSide = n / 2, BothSides = true }, target, 0.8, Dimmable).Met && n >= 4);
        }

        Assert.Equal(60.0 / found.Yard.PolesPerSide, found.SpacingM);
    }

    [Fact]
    public void Staggered_poles_change_sides_at_half_the_spacing()
    {
        var positions = PoleLine.Positions(Shape with { Arrangement = Arrangement.Staggered }, 60, 3);
        Assert.Equal([10, 30, 50], positions.Select(p => p.XM));
        Assert.Equal([0.5, 4.5, 0.5], positions.Select(p => p.YM));
        Assert.Equal([90, 270, 90], positions.Select(p => p.FacingDegrees));
        Assert.Equal(40, PoleLine.SpacingM(60, 3, Arrangement.Staggered));
    }

    [Fact]
    public void A_short_line_needs_more_than_an_endless_road()
    {
        var d = Distributions.Skewed(4000, 0.4, 0);
        var endless = SpacingSearch.AtSpacing(d, Shape with { SpacingM = 18 }, P4, 0.8, Dimmable);
        var ends = SpacingSearch.OnLine(d, Shape, 54, 3, P4, 0.8, Dimmable);
        Assert.True(endless.Met);
        Assert.Equal(18, ends.SpacingM);
        Assert.True(ends.LevelFraction > endless.LevelFraction || !ends.Met);
    }

    [Theory]
    [InlineData(500, 35, Arrangement.SingleSided, 15, 33.333)] // by hand
    [InlineData(500, 35, Arrangement.Opposite, 30, 33.333)]
    [InlineData(500, 35, Arrangement.Staggered, 29, 34.483)]
    [InlineData(70, 35, Arrangement.SingleSided, 2, 35)]
    [InlineData(10, 35, Arrangement.SingleSided, 1, 10)]
    public void Poles_on_a_line(double lengthM, double spacingM, Arrangement arrangement, int poles, double reachedM)
    {
        Assert.Equal(poles, PoleLine.Count(lengthM, spacingM, arrangement));
        Assert.Equal(reachedM, PoleLine.SpacingM(lengthM, poles, arrangement), 1e-3);
    }
}
