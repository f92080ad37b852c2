using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

/// <summary>Whole roads on distributions of closed form, against a separate program of the same rules that knows no intensity table (recomputed).</summary>
public class WholeRoadTests
{
    [Theory]
    [InlineData("lambertian", 0.2902, 0.3750, 0.5734, 0.07552, 0.5283)]
    [InlineData("isotropic", 0.2469, 0.4389, 0.8683, 0.45237, 0.6460)]
    [InlineData("ahead", 0.3341, 0.3971, 0.7406, 0.25580, 0.6165)]
    public void Single_sided(string lamp, double averageCdM2, double overall, double longitudinal, double increment, double edge) =>
        AssertRoad(new RoadLayout(7, 25, 8, 0, 0, Arrangement.SingleSided), 1, lamp, averageCdM2, overall, longitudinal, increment, edge);

    [Theory]
    [InlineData("lambertian", 0.2736, 0.5895, 0.6309, 0.05861, 0.7370)]
    [InlineData("isotropic", 0.2335, 0.6338, 0.8347, 0.34724, 0.7985)]
    [InlineData("ahead", 0.3145, 0.5862, 0.7459, 0.20117, 0.7027)]
    public void Staggered(string lamp, double averageCdM2, double overall, double longitudinal, double increment, double edge) =>
        AssertRoad(new RoadLayout(8, 40, 9, 1, 0, Arrangement.Staggered), 0.75, lamp, averageCdM2, overall, longitudinal, increment, edge);

    private static void AssertRoad(
        RoadLayout layout, double maintenanceFactor, string lamp, double averageCdM2, double overall, double longitudinal, double increment, double edge)
    {
        var road = Roads.Quality(Lamp(lamp), RoadSection.Of(layout, 2), maintenanceFactor).Carriageway;
        Assert.Equal(averageCdM2, road.Luminance!.AverageCdM2, 0.005 * averageCdM2);
        Assert.Equal(overall, road.Luminance.OverallUniformity, 0.005);
        Assert.Equal(longitudinal, road.Luminance.LongitudinalUniformity, 0.005);
        Assert.Equal(increment, road.Glare!.IncrementFraction, 0.01 * increment);
        Assert.Equal(edge, road.EdgeRatio!.Value, 0.005);
    }

    /// <summary>The last: 900 (1 + 0.5 sin C sin g) sqrt(cos g) (cos^2 C sin^2 g + 0.3) cd, with light up to the horizontal.</summary>
    private static LightDistribution Lamp(string name) => name switch
    {
        "lambertian" => Distributions.Lambertian(3000),
        "isotropic" => Distributions.Isotropic(5000),
        _ => Distributions.Of(90, (c, g) => Ahead(c * Math.PI / 180, g * Math.PI / 180)),
    };

    private static double Ahead(double c, double g)
    {
        double along = Math.Cos(c) * Math.Sin(g), street = Math.Sin(c) * Math.Sin(g);
        return 900 * (1 + (0.5 * street)) * Math.Sqrt(Math.Max(0, Math.Cos(g))) * ((along * along) + 0.3);
    }
}
