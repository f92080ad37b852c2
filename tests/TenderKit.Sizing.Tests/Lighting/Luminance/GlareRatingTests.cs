using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

public class GlareRatingTests
{
    private static readonly YardLayout Yard = new(40, 20, 2, true, 8, 0.5, 5);

    [Fact]
    public void Formulas_by_hand()
    {
        // CIE 112:1994, from memory: 0.035 x 0.15 x 10 / pi = 0.016711; log10(0.1) - 0.9 log10(0.016711) = -1 + 1.59930; 27 + 24 x 0.59930
        Assert.Equal(0.016711, GlareRating.SurroundingsCdM2(10, 0.15), 1e-6);
        Assert.Equal(41.38, GlareRating.Rating(0.1, GlareRating.SurroundingsCdM2(10, 0.15)), 0.01);
        Assert.Equal(10, GlareRating.Rating(0, 0.01));
        Assert.Equal(90, GlareRating.Rating(1e6, 0.01));
    }

    [Fact]
    public void One_luminaire_by_hand()
    {
        // 1000 cd all round, 4 m up, the eye 10 m away looking at its foot along x: 2.5 m rise, d^2 106.25,
        // theta = atan(0.25) + 2 = 16.0362 degrees, cos 0.961087; Lvl = 10 x 1000 x 0.961087 / 106.25 / 257.160 = 0.351746
        var area = new LightResult(10, 10, 10, 1, 1, [new LightPoint(0, 0, 10)]);
        var expected = 27 + (24 * Math.Log10(0.351746 / Math.Pow(0.035 * 0.15 * 10 / Math.PI, 0.9)));
        var worst = GlareRating.Worst(Distributions.Isotropic(4000 * Math.PI), [new LuminairePosition(10, 0, 4, 90, 0)], area, 1, 0.15);
        Assert.Equal(expected, worst, 1e-3);
    }

    [Fact]
    public void Grows_with_flux_to_the_power_of_a_tenth_whatever_the_maintenance()
    {
        var one = Worst(4000, 0.8);
        Assert.Equal(24 * 0.1 * Math.Log10(2), Worst(8000, 0.8) - one, 1e-9);
        Assert.Equal(one, Worst(4000, 0.5), 1e-9);
    }

    [Fact]
    public void Sharp_cut_off_leaves_no_glare_until_it_is_tilted()
    {
        // nothing beyond 30 degrees from its axis: whoever is lit has it more than 58 degrees above him, hardly in sight
        var sharp = Distributions.Of(90, (_, g) => g <= 30 ? 1000 : 0);
        Assert.Equal(10, Worst(sharp, 0.8, 0));
        Assert.True(Worst(sharp, 0.8, 30) > 20);
    }

    [Fact]
    public void An_area_is_held_against_illuminance_and_glare()
    {
        var roadClass = RoadClasses.Find("parking light")!;
        var area = new LightResult(6, 2, 12, 1, 1, []);
        var good = ClassVerdict.OfArea("yard", area, 48.5, roadClass);
        Assert.True(good.Met);
        Assert.Equal(["average illuminance", "overall uniformity", "glare rating"], good.Checks.Select(c => c.Limit));
        var glaring = ClassVerdict.OfArea("yard", area, 57, roadClass);
        Assert.Equal((false, "glare rating"), (glaring.Met, glaring.Governing.Limit));
        Assert.Throws<ArgumentException>(() => ClassVerdict.OfArea("yard", area, 40, RoadClasses.Find("M4")!));
    }

    private static double Worst(double fluxLm, double maintenanceFactor) => Worst(Roads.Beams(fluxLm), maintenanceFactor, 5);

    private static double Worst(LightDistribution lamp, double maintenanceFactor, double tiltDegrees)
    {
        var yard = Yard with { TiltDegrees = tiltDegrees };
        var area = Illuminance.OnYard(lamp, yard, maintenanceFactor);
        return GlareRating.Worst(lamp, Illuminance.PositionsOf(yard).AsSpan(), area, maintenanceFactor, 0.15);
    }
}
