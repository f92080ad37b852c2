using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class RoadSceneTests
{
    private static readonly Gen<RoadLayout> Roads =
        Gen.Select(Gen.Double[3, 14], Gen.Double[5, 50], Gen.Double[3, 12], Gen.Double[-1, 2], Gen.Double[0, 20]).Select(
            (w, s, h, overhang, tilt) => new RoadLayout(w, s, h, overhang, tilt, Arrangement.SingleSided));

    private static LightResult Only(LightDistribution d, RoadScene scene) => SceneLight.Of(d, scene, 1)[0].Result;

    private static bool Same(LightResult a, LightResult b) =>
        a.Points.Length == b.Points.Length && a.Points.Zip(b.Points).All(p => Close(p.First.IlluminanceLx, p.Second.IlluminanceLx));

    private static bool Close(double a, double b) => Math.Abs(a - b) <= 1e-9 * Math.Max(Math.Abs(a), 1e-6);

    [Theory]
    [InlineData(Arrangement.SingleSided)]
    [InlineData(Arrangement.Opposite)]
    [InlineData(Arrangement.Staggered)]
    public void Scene_of_a_layout_is_the_road(Arrangement arrangement) => Roads.Sample(
        road =>
        {
            var d = Distributions.Skewed(3000, 0.5, 0.3);
            var layout = road with { Arrangement = arrangement };
            return Same(Illuminance.OnRoad(d, layout, 1), Only(d, RoadScene.Of(layout)));
        },
        iter: 40);

    [Fact]
    public void Left_is_right_seen_from_the_other_end() => Roads.Sample(road =>
    {
        var d = Distributions.Skewed(3000, 0.5, 0.3);
        var (right, left) = (Only(d, RoadScene.SingleSidedRight(road)), Only(d, RoadScene.SingleSidedLeft(road)));
        return Same(right, left with { Points = [.. left.Points.Reverse()] });
    });

    [Fact]
    public void Mirrored_layouts_of_a_left_right_symmetric_luminaire_mirror_the_light() => Roads.Sample(road =>
    {
        var d = Distributions.Skewed(3000, 0.5, 0);
        var (right, left) = (Only(d, RoadScene.SingleSidedRight(road)), Only(d, RoadScene.SingleSidedLeft(road)));
        var mirrored = Enumerable.Range(0, left.PointsAcross).Reverse().SelectMany(j => left.Points.Skip(j * left.PointsAlong).Take(left.PointsAlong));
        return Same(right, left with { Points = [.. mirrored] });
    });

    [Fact]
    public void A_whole_turn_changes_nothing() => Gen.Select(Roads, Gen.Double[-90, 90]).Sample((road, turn) =>
    {
        var d = Distributions.Skewed(3000, 0.5, 0.3);
        return Same(Only(d, RoadScene.Opposite(road, turn)), Only(d, RoadScene.Opposite(road, turn + 360)));
    });

    [Fact]
    public void Half_a_turn_swaps_street_side_and_house_side() => Roads.Sample(road =>
    {
        // turned back to front at its place, untilted, it lights as the distribution with C + 180 would
        var level = road with { TiltDegrees = 0 };
        var turned = Only(Distributions.Skewed(3000, 0.5, 0.3), RoadScene.SingleSidedRight(level, 180));
        return Same(turned, Only(Distributions.Skewed(3000, -0.5, -0.3), RoadScene.SingleSidedRight(level)));
    });

    [Fact]
    public void Rotation_moves_the_light_along_the_road()
    {
        // turned clockwise by 45 degrees a forward throw falls ahead (+x) of the pole
        var d = Distributions.Skewed(3000, 0.9, 0);
        var scene = RoadScene.SingleSidedRight(new RoadLayout(7, 100, 6, 0, 0, Arrangement.SingleSided), -45);
        var result = Only(d, scene);
        var (ahead, behind) = (result.Points.Where(p => p.XM < 20).Average(p => p.IlluminanceLx), result.Points.Where(p => p.XM > 80).Average(p => p.IlluminanceLx));
        Assert.True(ahead > 2 * behind);
    }

    [Fact]
    public void Twin_median_lights_both_carriageways_alike() => Gen.Select(Roads, Gen.Double[0, 6]).Sample((road, median) =>
    {
        var light = SceneLight.Of(Distributions.Skewed(3000, 0.5, 0.3), RoadScene.TwinMedian(road, median), 1);
        return light.Length == 2 && Same(light[0].Result, light[1].Result with { Points = [.. light[1].Result.Points.Reverse()] });
    });

    [Fact]
    public void Twin_median_stands_where_it_should()
    {
        var scene = RoadScene.TwinMedian(new RoadLayout(7, 30, 9, 1, 5, Arrangement.SingleSided), 4);
        Assert.Equal([6.0, 12], scene.Rows.Select(r => r.YM));
        Assert.Equal([270.0, 90], scene.Rows.Select(r => r.FacingDegrees));
        Assert.Equal([(0, 7), (11, 18)], scene.Strips.Select(s => (s.FromM, s.ToM)));
    }

    [Fact]
    public void A_strip_as_a_section_keeps_its_place_under_the_rows()
    {
        var scene = RoadScene.TwinMedian(new RoadLayout(7, 30, 9, 1, 5, Arrangement.SingleSided), 4);
        var section = scene.SectionOf(scene.Strips[1], 2, null, bothDirections: true);
        Assert.Equal((7, 2, true), (section.WidthM, section.Lanes, section.BothDirections));
        Assert.Equal([-5.0, 1], section.Rows.Select(r => r.YM));
    }

    [Fact]
    public void Further_strips_are_lit_by_the_same_rows()
    {
        var d = Distributions.Skewed(3000, 0.5, 0);
        var road = new RoadLayout(6, 25, 6, 0.5, 0, Arrangement.SingleSided);
        var light = SceneLight.Of(d, RoadScene.SingleSidedRight(road).With(new Strip("footway", -2, 0)).With(new Strip("verge", 6, 9)), 0.8);
        Assert.Equal(["carriageway", "footway", "verge"], light.Select(s => s.Strip.Name));
        var point = light[1].Result.Points[4];
        Assert.InRange(point.YM, -2, 0);
        var luminaires = Enumerable.Range(-40, 81).Select(k => new LuminairePosition(k * 25, 0.5, 6, 90, 0)).Where(l => Math.Abs(l.XM - point.XM) < 29).ToArray();
        Assert.Equal(ScalarLight.At(d, luminaires, [point], 0.8)[0], point.IlluminanceLx, 1e-9);
        Assert.True(light[0].Result.AverageLx > light[2].Result.AverageLx);
    }

    [Fact]
    public void Strip_of_a_row_of_lambertian_luminaires()
    {
        // closed form, recomputed: UF of an endless strip from its edge is 0.5 W / sqrt(H^2 + W^2) = 0.32926; 3000 lm, S 25 m: 5.644 lx
        // without the cut at five mounting heights, which takes 0.4 %; within 0.5 %
        var scene = RoadScene.Path(7, 25, 8, 0, 0);
        Assert.Equal(5.644, Only(Distributions.Lambertian(3000), scene).AverageLx, 0.005 * 5.644);
        Assert.Equal(0.32926, LumenMethod.UtilisationFactor(Distributions.Lambertian(3000), 7, 8, 0, 0), 0.0005 * 0.32926);
    }

    [Fact]
    public void Height_and_flux() => Gen.Select(Roads, Gen.Double[0.2, 5], Gen.Double[0.5, 1.5]).Sample((road, flux, size) =>
    {
        // a scene drawn larger by k has 1 / k^2 of the light, point for point; the grid must not change, so spacing and width keep their steps
        var d = Distributions.Skewed(2000, 0.5, 0.3);
        var small = new RoadLayout(3, 14, 5, 0.4, road.TiltDegrees, Arrangement.SingleSided);
        var large = small with { WidthM = 3 * size, SpacingM = 14 * size, MountingHeightM = 5 * size, OverhangM = 0.4 * size };
        var (a, b) = (Only(d, RoadScene.Of(small)), Only(d.Scaled(flux), RoadScene.Of(large)));
        return a.Points.Zip(b.Points).All(p => Close(p.First.IlluminanceLx * flux, p.Second.IlluminanceLx * size * size));
    });

    [Fact]
    public void Impossible_scenes_are_the_callers_fault()
    {
        var road = new RoadLayout(7, 25, 8, 0, 0, Arrangement.SingleSided);
        var d = Distributions.Lambertian(1000);
        Assert.Throws<ArgumentOutOfRangeException>(() => RoadScene.TwinMedian(road, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoadScene.SingleSidedLeft(road with { WidthM = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SceneLight.Of(d, RoadScene.Of(road).With(new Strip("no width", 3, 3)), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SceneLight.Of(d, RoadScene.Of(road), 1.5));
    }
}
