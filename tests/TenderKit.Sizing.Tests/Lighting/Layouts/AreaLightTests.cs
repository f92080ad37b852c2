using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class AreaLightTests
{
    /// <summary>An L: 40 x 40 m with a corner of 25 x 25 m cut off, 975 m2.</summary>
    private static readonly Area Corner = new([new(0, 0), new(40, 0), new(40, 15), new(15, 15), new(15, 40), new(0, 40)]);

    [Fact]
    public void Area_and_centre_by_hand()
    {
        Assert.Equal(975, Corner.AreaM2, 1e-9);
        // moments of 40 x 15 at (20, 7.5) and 15 x 25 at (7.5, 27.5)
        Assert.Equal(((600 * 20) + (375 * 7.5)) / 975, Corner.Centre.XM, 1e-9);
        Assert.Equal(((600 * 7.5) + (375 * 27.5)) / 975, Corner.Centre.YM, 1e-9);
        Assert.Equal(Math.PI * 100, Area.Circle(new(3, 4), 10).AreaM2, 1e-9);
    }

    [Theory]
    [InlineData(10, 10, true)]
    [InlineData(30, 10, true)]
    [InlineData(10, 30, true)]
    [InlineData(30, 30, false)]
    [InlineData(-1, 10, false)]
    [InlineData(41, 10, false)]
    public void Inside_or_not(double x, double y, bool expected)
    {
        Assert.Equal(expected, Corner.Contains(x, y));
        Assert.Equal(expected, new Area([.. Corner.Vertices.Reverse()]).Contains(x, y)); // either sense of turning
    }

    [Fact]
    public void Inside_a_convex_area_is_left_of_every_side() => Gen.Select(Gen.Double[-30, 30], Gen.Double[-30, 30]).Sample((x, y) =>
    {
        var area = Area.Circle(new(0, 0), 20);
        var left = Enumerable.Range(0, area.Vertices.Length).All(i =>
        {
            var (a, b) = (area.Vertices[i], area.Vertices[(i + 1) % area.Vertices.Length]);
            return ((b.XM - a.XM) * (y - a.YM)) - ((b.YM - a.YM) * (x - a.XM)) > 0;
        });
        return area.Contains(x, y) == left;
    });

    [Fact]
    public void A_rectangle_is_the_yard()
    {
        var d = Distributions.Skewed(5000, 0.5, 0.2);
        var yard = new YardLayout(40, 20, 2, true, 8, 0.5, 5);
        var expected = Illuminance.OnYard(d, yard, 0.8);
        var positions = Illuminance.PositionsOf(yard);
        var result = AreaLight.Of(d, Area.Rectangle(40, 20), positions.AsSpan(), 0.8);
        Assert.Equal((16, 8), (result.PointsAlong, result.PointsAcross)); // d 40 m: p = 0.2 x 5^1.602 = 2.635 m, EN 12464-2, from memory
        Assert.Equal(ScalarLight.At(d, positions, result.Points, 0.8).Average(), result.AverageLx, 1e-9);
        Assert.Equal(expected.AverageLx, result.AverageLx, 0.01 * expected.AverageLx);
    }

    [Fact]
    public void Points_lie_inside_and_are_as_many_as_the_area_holds()
    {
        var result = AreaLight.Of(Distributions.Lambertian(1000), Corner, [new LuminairePosition(10, 10, 8, 90, 0)], 1);
        Assert.All(result.Points, p => Assert.True(Corner.Contains(p.XM, p.YM)));
        Assert.Equal(975.0 / 1600, result.Points.Length / (double)(result.PointsAlong * result.PointsAcross), 0.03);
    }

    [Fact]
    public void Narrow_areas_still_get_points()
    {
        var sliver = new Area([new(0, 0), new(30, 30), new(30, 30.4), new(0, 0.4)]);
        Assert.True(AreaLight.Of(Distributions.Lambertian(1000), sliver, [new LuminairePosition(10, 10, 8, 90, 0)], 1).Points.Length >= 12);
    }

    [Fact]
    public void Single_pole_over_its_circle()
    {
        // closed form: a Lambertian source puts sin^2(gamma) of its flux within gamma, so the average over a disc of radius r is
        // flux / (pi (H^2 + r^2)); the square grid samples the disc to 2 %
        var result = AreaLight.OfSinglePole(Distributions.Lambertian(3000), new LuminairePosition(5, -3, 6, 90, 0), 12, 0.8);
        Assert.Equal(0.8 * 3000 / (Math.PI * (36 + 144)), result.AverageLx, 0.02 * 4.244);
        var square = AreaLight.OfSinglePole(Distributions.Lambertian(3000), new LuminairePosition(6, 6, 6, 90, 0), 12, 12, 0.8);
        Assert.True(square.AverageLx > result.AverageLx && square.MinimumLx > result.MinimumLx);
    }

    [Fact]
    public void Turning_everything_turns_the_light() => Gen.Double[-180, 180].Sample(turn =>
    {
        // the light at a point does not depend on how the plan is laid on the paper
        var d = Distributions.Skewed(3000, 0.6, 0.3);
        double cos = Math.Cos(turn * Math.PI / 180), sin = Math.Sin(turn * Math.PI / 180);
        (double X, double Y) Turned(double x, double y) => ((x * cos) - (y * sin), (x * sin) + (y * cos));
        var pole = Turned(2, 3);
        var point = Turned(7, -4);
        var before = Illuminance.AtPoints(d, [new(2, 3, 6, 20, 10)], [new(7, -4, 0)], 1)[0].IlluminanceLx;
        var after = Illuminance.AtPoints(d, [new(pole.X, pole.Y, 6, 20 + turn, 10)], [new(point.X, point.Y, 0)], 1)[0].IlluminanceLx;
        return Math.Abs(before - after) < 1e-9 * before;
    });

    [Fact]
    public void Lattice_stands_on_the_centre_and_inside()
    {
        var poles = AreaPlacement.OnLattice(Area.Rectangle(40, 20), 20, 10, 0, 0.5, 0.5, 8, 0, 90);
        Assert.Equal([(10, 5), (30, 5), (10, 15), (30, 15)], poles.Select(p => (p.XM, p.YM)));
        var inwards = AreaPlacement.OnLattice(Area.Rectangle(40, 20), 20, 20, 0, 0.5, 0, 8, 0, null);
        Assert.Equal([(10, 0.0), (30, 180.0)], inwards.Select(p => (p.XM, Math.Round(p.FacingDegrees, 9))));
    }

    [Fact]
    public void Boundary_poles_stand_at_equal_steps_and_face_in()
    {
        foreach (var area in new[] { Area.Rectangle(40, 20), new Area([.. Area.Rectangle(40, 20).Vertices.Reverse()]) })
        {
            var poles = AreaPlacement.AlongBoundary(area, 6, 0.5, 8, 5);
            Assert.Equal(6, poles.Length);
            Assert.All(poles, p => Assert.True(area.Contains(p.XM, p.YM)));
            Assert.All(
                poles,
                p => Assert.True(area.Contains(p.XM + (5 * Math.Cos(p.FacingDegrees * Math.PI / 180)), p.YM + (5 * Math.Sin(p.FacingDegrees * Math.PI / 180)))));
        }

        Assert.Equal((10, 0.5), (AreaPlacement.AlongBoundary(Area.Rectangle(40, 20), 6, 0.5, 8, 5)[0].XM, AreaPlacement.AlongBoundary(Area.Rectangle(40, 20), 6, 0.5, 8, 5)[0].YM));
    }

    [Fact]
    public void Search_meets_the_target_with_poles_inside()
    {
        var target = LightClasses.Find("parking light")!;
        var found = AreaSearch.FewestPoles(Distributions.Lambertian(6000), Corner, target, 0.8, new AreaShape(8, 0, 90, 6, 0.1));
        Assert.True(found.Met);
        Assert.True(found.Result.AverageLx >= target.AverageLx && found.Result.OverallUniformity >= target.OverallUniformity);
        Assert.All(found.Poles, p => Assert.True(Corner.Contains(p.XM, p.YM)));
        Assert.Equal(2, found.LeastPolesByFlux); // 5 lx x 975 m2 / (6000 lm x 0.8) = 1.02
        Assert.InRange(found.Poles.Length, found.LeastPolesByFlux, 5);
        // thinned: no pole can be spared
        for (var i = 0; i < found.Poles.Length; i++)
        {
            var without = AreaLight.Of(Distributions.Lambertian(6000), Corner, found.Poles.RemoveAt(i).AsSpan(), 0.8);
            Assert.True(without.AverageLx < target.AverageLx || without.OverallUniformity < target.OverallUniformity);
        }
    }

    [Fact]
    public void Search_does_as_well_as_the_best_yard_on_a_rectangle()
    {
        var target = LightClasses.Find("parking light")!;
        var d = Distributions.Lambertian(12_000);
        var yard = SpacingSearch.Yard(d, new YardLayout(60, 25, 1, false, 8, 0.5, 0), target, 0.8, new SpacingBounds(0.5, 1, 6, 0.1));
        var found = AreaSearch.FewestPoles(d, Area.Rectangle(60, 25), target, 0.8, new AreaShape(8, 0, 90, 6, 0.1));
        Assert.True(found.Met && yard.Met);
        Assert.True(found.Poles.Length <= yard.Yard!.PolesPerSide * (yard.Yard.BothSides ? 2 : 1));
    }

    [Fact]
    public void Nothing_meets_an_impossible_target()
    {
        var found = AreaSearch.FewestPoles(
            Distributions.Lambertian(50), Corner, new LightTarget("much", 500, null, null, null, "none"), 0.8, new AreaShape(8, 0, null, 6, 1));
        Assert.False(found.Met);
        Assert.NotEmpty(found.Poles);
        Assert.Equal("average illuminance", found.TightestLimit);
    }

    [Fact]
    public void Impossible_areas_are_the_callers_fault()
    {
        Assert.Throws<ArgumentException>(() => new Area([new(0, 0), new(1, 1)]));
        Assert.Throws<ArgumentException>(() => new Area([new(0, 0), new(1, 1), new(2, 2)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Area([new(0, 0), new(double.NaN, 1), new(2, 2)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => AreaPlacement.AlongBoundary(Corner, 0, 0, 8, 0));
    }
}
