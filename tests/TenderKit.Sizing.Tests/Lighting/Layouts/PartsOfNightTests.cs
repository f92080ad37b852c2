using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class PartsOfNightTests
{
    private static readonly LightTarget P4 = LightClasses.Find("P4")!; // 5 lx average, 1 lx minimum
    private static readonly LightTarget P6 = LightClasses.Find("P6")!; // 2 lx average, 0.4 lx minimum
    private static readonly LightResult Full = new(6, 1.5, 12, 10, 3, []);

    [Fact]
    public void Light_follows_the_level_and_each_part_its_own_target()
    {
        var parts = PartsOfNight.Of(Full, [new("evening", 1, P4), new("night", 0.4, P6), new("night as evening", 0.4, P4), new("free", 0.1, null)]);
        Assert.Equal([6, 2.4, 2.4, 0.6], parts.Select(p => Math.Round(p.AverageLx, 12)));
        Assert.Equal([1.5, 0.6, 0.6, 0.15], parts.Select(p => Math.Round(p.MinimumLx, 12)));
        Assert.Equal([true, true, false, null], parts.Select(p => p.Met));
        Assert.All(parts, p => Assert.Equal(0.25, p.OverallUniformity, 1e-12));
        Assert.Equal("average illuminance", parts[2].TightestLimit);
        Assert.Equal(5.0 / 6, parts[2].LevelNeededFraction!.Value, 1e-12);
        Assert.Null(parts[3].TightestLimit);
    }

    [Fact]
    public void Too_much_light_for_a_lower_class_is_a_miss()
    {
        var part = PartsOfNight.Of(Full, [new("night", 0.6, P6)])[0]; // 3.6 lx against a ceiling of 3 lx
        Assert.False(part.Met);
        Assert.Equal("ceiling of the average illuminance", part.TightestLimit);
        Assert.Equal(1.0 / 3, part.LevelNeededFraction!.Value, 1e-12);
    }

    [Fact]
    public void A_dark_part_is_dark()
    {
        var part = PartsOfNight.Of(Full, [new("off", 0, P6)])[0];
        Assert.Equal((0, 0, 0), (part.AverageLx, part.MinimumLx, part.OverallUniformity));
        Assert.False(part.Met);
    }

    [Fact]
    public void Targets_out_of_reach_need_more_than_full_light()
    {
        Assert.True(PartsOfNight.Of(Full, [new("evening", 1, LightClasses.Find("P1"))])[0].LevelNeededFraction > 1);
        Assert.Null(PartsOfNight.Of(Full with { MinimumLx = 0 }, [new("evening", 1, P4)])[0].LevelNeededFraction);
    }

    [Fact]
    public void Levels_beyond_full_are_the_callers_fault() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PartsOfNight.Of(Full, [new("evening", 1.1, null)]));
}
