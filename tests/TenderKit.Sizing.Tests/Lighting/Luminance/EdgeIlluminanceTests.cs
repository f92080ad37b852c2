using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

public class EdgeIlluminanceTests
{
    [Fact]
    public void Rows_over_both_edges_that_light_both_sides_alike_give_one()
    {
        // 3 m up: the far row, 36 m and more away, is past five mounting heights
        var section = new RoadSection(40, 10, 8, [new LuminaireRow(0, 3, 90, 0, 0), new LuminaireRow(40, 3, 270, 0, 0)], null, [], []);
        Assert.Equal(1, RoadEvaluation.Of(Distributions.Lambertian(1000), section, null, 0.8).Carriageway.EdgeRatio!.Value, 1e-9);
    }

    [Fact]
    public void Line_of_lambertian_luminaires_by_closed_form()
    {
        // flux on a strip from the edge under the line to a: 0.5 a / sqrt(H^2 + a^2) (closed form, recomputed); the far side is the worse one
        var section = RoadSection.Of(new RoadLayout(7, 8, 8, 0, 0, Arrangement.SingleSided), 2);
        double Share(double a) => 0.5 * a / Math.Sqrt(64 + (a * a));
        var expected = (Share(10.5) - Share(7)) / (Share(7) - Share(3.5));
        Assert.Equal(expected, RoadEvaluation.Of(Distributions.Lambertian(1000), section, null, 1).Carriageway.EdgeRatio!.Value, 0.01 * expected);
    }

    [Fact]
    public void A_side_with_a_class_of_its_own_does_not_count()
    {
        var alone = Roads.Section(30, roadClass: RoadClasses.Find("M5"));
        var footway = new Sidewalk("footway", 2, RoadClass.Of(LightClasses.Find("P5")!));
        var free = Roads.Quality(Roads.Beams(5000), alone).Carriageway.EdgeRatio!.Value;
        var near = Roads.Quality(Roads.Beams(5000), alone with { FarSidewalks = [footway] }).Carriageway.EdgeRatio!.Value;
        var far = Roads.Quality(Roads.Beams(5000), alone with { NearSidewalks = [footway] }).Carriageway.EdgeRatio!.Value;
        Assert.NotEqual(near, far);
        Assert.Equal(free, Math.Min(near, far));
        var both = Roads.Quality(Roads.Beams(5000), alone with { NearSidewalks = [footway], FarSidewalks = [footway] }).Carriageway;
        Assert.Null(both.EdgeRatio);
        Assert.DoesNotContain(both.Verdict!.Checks, c => c.Limit == "edge illuminance ratio");
        var unclassed = Roads.Quality(Roads.Beams(5000), alone with { NearSidewalks = [footway with { Class = null }] }).Carriageway;
        Assert.Contains(unclassed.Verdict!.Checks, c => c.Limit == "edge illuminance ratio");
    }

    [Fact]
    public void Level_and_maintenance_do_not_matter()
    {
        var quality = Roads.Quality(Roads.Beams(5000), Roads.Section(30), 0.6);
        Assert.Equal(quality.Carriageway.EdgeRatio, quality.AtLevel(0.4).Carriageway.EdgeRatio);
        Assert.Equal(quality.Carriageway.EdgeRatio!.Value, Roads.Quality(Roads.Beams(9000), Roads.Section(30), 1).Carriageway.EdgeRatio!.Value, 1e-9);
    }
}
