using TenderKit.Documents.Drawings;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Drawings;

public class PictureTests
{
    [Fact]
    public void Poles_of_a_bay_stand_where_the_arrangement_puts_them()
    {
        Assert.Equal([0, 28], Xs(Arrangement.SingleSided));
        Assert.Equal([0, 14, 28], Xs(Arrangement.Staggered));
        Assert.Equal([0, 0, 28, 28], Xs(Arrangement.Opposite));
    }

    [Fact]
    public void A_pole_stands_an_arm_behind_its_luminaire()
    {
        var near = LightPoles.Of(Road(Arrangement.Opposite), 1.2).First();
        var far = LightPoles.Of(Road(Arrangement.Opposite), 1.2).Last();

        Assert.Equal((0.5, -0.7), (near.LuminaireYM, Math.Round(near.FootYM!.Value, 9)));
        Assert.Equal((4.5, 5.7), (far.LuminaireYM, Math.Round(far.FootYM!.Value, 9)));
    }

    [Fact]
    public void Poles_of_a_yard_begin_half_a_bay_from_its_end()
    {
        var light = Road(Arrangement.SingleSided) with { Layout = null, Yard = new YardLayout(60, 25, 3, true, 6, 0.5, 5) };

        Assert.Equal([10, 10, 30, 30, 50, 50], LightPoles.Of(light, 1).Select(p => p.XM).Order());
    }

    [Fact]
    public void Pictures_keep_within_a_page()
    {
        foreach (var site in HandMadeDesign.Small().Sites) Assert.InRange(new LightPicture(site.Light, site.Parts.Pole.ArmReachM).HeightPt, 60, 420);
    }

    private static IEnumerable<double> Xs(Arrangement arrangement) => LightPoles.Of(Road(arrangement), 1).Select(p => p.XM).Order();

    private static LightSolution Road(Arrangement arrangement)
    {
        var light = HandMadeDesign.Small().Sites[0].Light;
        return light with { Layout = new RoadLayout(5, 28, 6, 0.5, 5, arrangement) };
    }
}
