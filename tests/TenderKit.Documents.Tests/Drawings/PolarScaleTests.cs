using PdfSharp.Drawing;
using TenderKit.Documents.Drawings;
using TenderKit.Documents.Tests.Light;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Documents.Tests.Drawings;

public class PolarScaleTests
{
    private static readonly PolarScale Scale = PolarScale.For(new XPoint(100, 50), 80, 400);

    [Theory]
    [InlineData(0, 400, 100, 130)]
    [InlineData(90, 400, 180, 50)]
    [InlineData(-90, 200, 60, 50)]
    [InlineData(180, 100, 100, 30)]
    [InlineData(30, 200, 120, 84.6410161514)]
    [InlineData(-30, 200, 80, 84.6410161514)]
    [InlineData(45, 0, 100, 50)]
    public void A_point_stands_at_its_angle_from_straight_down_in_proportion_to_its_intensity(double gamma, double cdPerKlm, double x, double y)
    {
        var at = Scale.At(gamma, cdPerKlm);

        Assert.Equal(x, at.X, 9);
        Assert.Equal(y, at.Y, 9);
    }

    [Theory]
    [InlineData(341, 100, 4)]
    [InlineData(400, 100, 4)]
    [InlineData(401, 200, 3)]
    [InlineData(79.6, 20, 4)]
    [InlineData(620, 200, 4)]
    [InlineData(0, 1, 1)]
    public void Rings_are_round_and_hold_the_greatest_intensity(double greatest, double step, int rings)
    {
        var scale = PolarScale.For(new XPoint(0, 0), 80, greatest);

        Assert.Equal((step, rings), (scale.StepCdPerKlm, scale.Rings));
        Assert.True(scale.Radius(greatest) <= 80 + 1e-9);
        Assert.Equal(80, scale.Radius(scale.OuterCdPerKlm), 9);
    }

    /// <summary>Definition: 100 cd all round is 400 pi lm, so 1000 / (4 pi) = 79.58 cd for each 1000 lm (recomputed).</summary>
    [Fact]
    public void The_curves_of_a_light_equal_all_round_are_circles_of_80_cd_per_klm()
    {
        var light = InventedLight.Sphere();
        var perKlm = 1000 / light.FluxLm;
        var line = Scale.Line(PolarCurve.InPlane(light, 90).Points, perKlm);

        Assert.Equal(79.577, 100 * perKlm, 2);
        Assert.Equal(73, line.Length);
        Assert.All(line, p => Assert.Equal(80 * 100 * perKlm / 400, Math.Sqrt(Math.Pow(p.X - 100, 2) + Math.Pow(p.Y - 50, 2)), 9));
        Assert.True(line[0].Y < 50 && line[36].Y > 50 && line[18].X < 100 && line[54].X > 100);
    }

    [Fact]
    public void The_upper_half_is_drawn_only_for_light_that_goes_there()
    {
        var (road, sphere) = (InventedLight.Road(), InventedLight.Sphere());

        Assert.InRange(new PolarPicture(road, PhotometricAnalysis.Of(road)).HeightPt, 100, 160);
        Assert.InRange(new PolarPicture(sphere, PhotometricAnalysis.Of(sphere)).HeightPt, 170, 210);
    }
}
