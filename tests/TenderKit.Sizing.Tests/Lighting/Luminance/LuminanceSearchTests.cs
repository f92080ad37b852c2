using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

public class LuminanceSearchTests
{
    private static readonly SpacingBounds Dimmable = new(0.5, 1, 6, 0.1);

    private static RoadSolution Search(RoadSection shape, double fluxLm, SpacingBounds? bounds = null) =>
        LuminanceSearch.Road(Roads.Beams(fluxLm), shape, RoadSurface.R3, 0.8, bounds ?? Dimmable);

    [Theory]
    [InlineData("M5", Arrangement.SingleSided)]
    [InlineData("M4", Arrangement.Staggered)]
    [InlineData("M6", Arrangement.Opposite)]
    public void Widest_spacing_complies_and_no_wider_one_does(string name, Arrangement arrangement)
    {
        var shape = Roads.Section(10, arrangement: arrangement, roadClass: RoadClasses.Find(name));
        var found = Search(shape, 9000);
        Assert.True(found.Met, found.GoverningLimit);
        Assert.All(found.Quality.Carriageway.Verdict!.Checks, c => Assert.True(c.Met, c.Limit));
        Assert.Equal(5, found.Quality.Carriageway.Verdict!.Checks.Length);
        for (var s = found.SpacingM + 0.5; s <= 48; s += 0.5)
        {
            var wider = LuminanceSearch.AtSpacing(Roads.Beams(9000), shape with { SpacingM = s }, RoadSurface.R3, 0.8, Dimmable);
            Assert.False(wider.Met);
            if (s == found.SpacingM + 0.5) Assert.Equal(wider.GoverningLimit, found.GoverningLimit);
        }
    }

    [Fact]
    public void Level_is_the_lowest_whole_percent_and_the_quality_is_of_that_level()
    {
        var section = Roads.Section(20, roadClass: RoadClasses.Find("M5"));
        var full = Roads.Quality(Roads.Beams(12_000), section);
        var found = LuminanceSearch.AtSpacing(Roads.Beams(12_000), section, RoadSurface.R3, 0.8, Dimmable);
        Assert.Equal(Math.Ceiling(50 / full.Carriageway.Luminance!.AverageCdM2) / 100, found.LevelFraction, 1e-12);
        var dimmed = Roads.Quality(Roads.Beams(12_000 * found.LevelFraction), section);
        Assert.Equal(dimmed.Carriageway.Luminance!.AverageCdM2, found.Quality.Carriageway.Luminance!.AverageCdM2, 1e-9);
        Assert.Equal(dimmed.Carriageway.Glare!.IncrementFraction, found.Quality.Carriageway.Glare!.IncrementFraction, 1e-9);
        Assert.Equal(dimmed.Carriageway.Illuminance.MinimumLx, found.Quality.Carriageway.Illuminance.MinimumLx, 1e-9);
    }

    [Fact]
    public void Dimming_can_save_the_threshold_increment()
    {
        var section = Roads.Section(20, roadClass: RoadClasses.Find("M5"));
        var full = Roads.Quality(Roads.Beams(12_000), section).Carriageway.Glare!.IncrementFraction;
        var roadClass = section.Class! with { Glare = new GlareLimit(0.97 * full) };
        var fixedOutput = Dimmable with { LeastLevelFraction = 1 };
        var asked = section with { Class = roadClass };
        Assert.Equal("threshold increment", LuminanceSearch.AtSpacing(Roads.Beams(12_000), asked, RoadSurface.R3, 0.8, fixedOutput).GoverningLimit);
        var dimmed = LuminanceSearch.AtSpacing(Roads.Beams(12_000), asked, RoadSurface.R3, 0.8, Dimmable);
        Assert.True(dimmed.Quality.Carriageway.Verdict!.Checks.Single(c => c.Limit == "threshold increment").Met);
    }

    [Fact]
    public void A_sidewalk_of_its_own_class_can_stop_the_spacing()
    {
        var shape = Roads.Section(10, roadClass: RoadClasses.Find("M6"));
        var alone = Search(shape, 6000);
        var behind = RoadClasses.Find("P1")! with { Glare = null };
        var both = Search(shape with { NearSidewalks = [new Sidewalk("footway", 2, RoadClass.Of(behind.Illuminance! with { AverageCeilingLx = null }))] }, 6000);
        Assert.True(alone.Met && both.Met);
        Assert.True(both.SpacingM < alone.SpacingM);
        Assert.StartsWith("footway: ", both.GoverningLimit, StringComparison.Ordinal);
        Assert.Equal(2, both.Quality.Verdicts.Count());
    }

    [Fact]
    public void Nearest_miss_when_nothing_complies()
    {
        var found = Search(Roads.Section(10, roadClass: RoadClasses.Find("M1")), 300);
        Assert.False(found.Met);
        Assert.Equal((1.0, "average luminance"), (found.LevelFraction, found.GoverningLimit));
    }

    [Fact]
    public void Bound_is_named_when_the_light_would_go_further()
    {
        var found = Search(Roads.Section(10, roadClass: RoadClasses.Find("M6")), 9000, Dimmable with { MaxSpacingToHeight = 1.5 });
        Assert.Equal((12.0, SpacingSearch.GreatestSpacingAllowed), (found.SpacingM, found.GoverningLimit));
    }

    [Fact]
    public void Illuminance_class_gives_what_the_illuminance_search_gives()
    {
        var layout = new RoadLayout(5, 10, 6, 0.5, 5, Arrangement.SingleSided);
        var target = LightClasses.Find("P4")!;
        var expected = SpacingSearch.Road(Roads.Beams(4000), layout, target, 0.8, Dimmable);
        var found = LuminanceSearch.Road(Roads.Beams(4000), RoadSection.Of(layout, 1, RoadClass.Of(target)), null, 0.8, Dimmable);
        Assert.Equal((expected.SpacingM, expected.LevelFraction), (found.SpacingM, found.LevelFraction));
        Assert.Equal((expected.Met, expected.GoverningLimit), (found.Met, found.GoverningLimit));
        Assert.Equal(expected.Result.AverageLx, found.Quality.Carriageway.Illuminance.AverageLx, 1e-9);
    }

    [Fact]
    public void A_section_nothing_is_asked_of_or_not_worked_out_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Search(Roads.Section(10), 5000));
        var section = Roads.Section(10, roadClass: RoadClasses.Find("M5"));
        Assert.Throws<ArgumentException>(() => LuminanceSearch.Road(Roads.Beams(5000), section, null, 0.8, Dimmable));
    }

    [Fact]
    public void Limits_print_in_a_compliance_table()
    {
        var verdict = Roads.Quality(Roads.Beams(9000), Roads.Section(25, roadClass: RoadClasses.Find("M5"))).Carriageway.Verdict!;
        var check = verdict.Checks.Single(c => c.Limit == "threshold increment").ToCheck("light.carriageway", "Carriageway", verdict.Class.Source);
        Assert.Equal(("light.carriageway.threshold-increment", Comparison.AtMost, 15.0, "%"), (check.Id, check.Comparison, check.Required, check.Unit));
    }
}
