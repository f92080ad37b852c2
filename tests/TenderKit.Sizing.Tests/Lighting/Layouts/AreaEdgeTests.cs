using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

/// <summary>Areas with openings, and poles along the edges. Geometry by hand.</summary>
public class AreaEdgeTests
{
    private static readonly LightTarget P4 = new("P4", 5, 1, null, 7.5, "EN 13201-2:2015, table 3 (from memory)");

    /// <summary>50 x 40 m around a hall of 20 x 16 m: 2000 - 320 = 1680 m2.</summary>
    private static readonly Area Court = new([new(0, 0), new(50, 0), new(50, 40), new(0, 40)], [[new(15, 12), new(15, 28), new(35, 28), new(35, 12)]]);

    /// <summary>An L: 40 x 40 m with a corner of 25 x 25 m cut off.</summary>
    private static readonly Area Corner = new([new(0, 0), new(40, 0), new(40, 15), new(15, 15), new(15, 40), new(0, 40)]);

    [Fact]
    public void An_opening_is_no_part_of_the_area()
    {
        Assert.Equal(1680, Court.AreaM2, 1e-9);
        Assert.Equal(180, Court.PerimeterM, 1e-9);
        Assert.True(Court.Contains(10, 20));
        Assert.False(Court.Contains(25, 20));
        var result = AreaLight.Of(Distributions.Lambertian(5000), Court, [new LuminairePosition(10, 20, 8, 90, 0)], 0.8);
        Assert.DoesNotContain(result.Points, p => p is { XM: > 15 and < 35, YM: > 12 and < 28 });
        // every point of the 50 x 40 m grid that is not over the hall: p = 0.2 x 5^log10(50) = 3.08 m, 17 x 13 steps of 2.94 x 3.08 m, 7 x 5 of them inside
        Assert.Equal((17 * 13) - (7 * 5), result.Points.Length);
    }

    [Fact]
    public void Rows_across_a_rectangle_are_those_of_a_yard()
    {
        var yard = new YardLayout(60, 30, 3, true, 8, 0.5, 5);
        var rows = AreaPlacement.AcrossAxis(Area.Rectangle(60, 30), 0, 3, true, true, 0.5, 8, 5);
        Assert.Equal(
            Illuminance.PositionsOf(yard).Select(p => (p.XM, p.YM)).Order(), rows.Select(p => (Math.Round(p.XM, 9), Math.Round(p.YM, 9))).Order());
        Assert.Equal([90, 270, 90, 270, 90, 270], rows.Select(p => p.FacingDegrees));
        // the foot of a 1.5 m arm at y = 0.5 stands at y = -1
        Assert.Equal((10.0, -1.0), (AreaPlacement.Foot(rows[0], 1.5).XM, Math.Round(AreaPlacement.Foot(rows[0], 1.5).YM, 9)));
    }

    [Fact]
    public void Rows_across_a_corner_follow_its_edge()
    {
        // lines at x = 5, 15, 25, 35 leave the L at y = 40, 15 (its inner corner), 15, 15
        var far = AreaPlacement.AcrossAxis(Corner, 0, 4, false, true, 0, 6, 0);
        Assert.Equal([(5.0, 40.0), (15.0, 15.0), (25.0, 15.0), (35.0, 15.0)], far.Select(p => (Math.Round(p.XM, 9), Math.Round(p.YM, 9))));
        // across the other axis, from its right: y = 10 and 30 enter at x = 40 and 15 seen from the east
        var near = AreaPlacement.AcrossAxis(Corner, 90, 2, true, false, 0, 6, 0);
        Assert.Equal([(40.0, 10.0), (15.0, 30.0)], near.Select(p => (Math.Round(p.XM, 9), Math.Round(p.YM, 9))));
    }

    [Fact]
    public void A_boundary_may_start_anywhere()
    {
        var round = AreaPlacement.AlongBoundary(Area.Rectangle(60, 30), 3, 1, 6, 0, 0.25);
        // 180 m in three steps of 60 m from 15 m: (15, 0), then 75 m: 15 m up the right side, then 135 m: 45 m along the top
        Assert.Equal([(15.0, 1.0), (59.0, 15.0), (15.0, 29.0)], round.Select(p => (Math.Round(p.XM, 9), Math.Round(p.YM, 9))));
    }

    [Fact]
    public void The_search_lights_a_court_from_its_edge_and_its_numbers_are_those_of_its_poles()
    {
        var (d, shape) = (Distributions.Lambertian(9000), new AreaShape(8, 0, null, 6, 0.1) { EdgeOverhangM = 0.5, ReachM = 1 });
        var found = AreaSearch.FewestPoles(d, Court, P4, 0.8, shape);
        Assert.True(found.Met);
        Assert.All(found.Poles, p => Assert.False(AreaPlacement.Foot(p, 1) is { XM: > 15 and < 35, YM: > 12 and < 28 }));
        var again = AreaLight.Of(d, Court, found.Poles.AsSpan(), 0.8);
        Assert.Equal(again.AverageLx * found.LevelFraction, found.Result.AverageLx, 1e-9);
        Assert.Equal(again.MinimumLx * found.LevelFraction, found.Result.MinimumLx, 1e-9);
        Assert.Equal(ScalarLight.At(d, found.Poles, again.Points, 0.8).Min(), again.MinimumLx, 1e-9);
        Assert.InRange(found.Result.AverageLx, 5, 7.5);
        Assert.True(found.Result.MinimumLx >= 1);

        var asked = AreaSearch.OfPoles(d, Court, P4, 0.8, shape, found.Poles.Length + 2);
        Assert.Equal(found.Poles.Length + 2, asked.Poles.Length);
        var drawn = AreaSearch.OfPositions(d, Court, P4, 0.8, shape, found.Poles);
        Assert.Equal(found.Result.AverageLx, drawn.Result.AverageLx, 1e-9);
    }

    [Fact]
    public void What_nothing_meets_gives_its_nearest_miss()
    {
        var found = AreaSearch.FewestPoles(Distributions.Lambertian(60), Court, P4, 0.8, new AreaShape(8, 0, null, 20, 0.1) { EdgeOverhangM = 0.5, ReachM = 1 });
        Assert.False(found.Met);
        Assert.Equal(1, found.LevelFraction);
        Assert.NotEmpty(found.Poles);
    }
}
