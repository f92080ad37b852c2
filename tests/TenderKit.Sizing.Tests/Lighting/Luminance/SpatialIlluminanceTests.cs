using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

public class SpatialIlluminanceTests
{
    private const int Slices = 720;

    [Fact]
    public void Vertical_by_hand() =>
        // 1000 cd, 3 m up, 3 m in front: I cos / d^2 = 1000 x 0.70711 / 18
        Assert.Equal(39.28, SpatialIlluminance.VerticalLx(1000, 3, 45, 0), 0.005);

    [Fact]
    public void Vertical_face_sees_nothing_from_behind() => Assert.Equal(0, SpatialIlluminance.VerticalLx(1000, 3, 45, 120));

    [Fact]
    public void Hemisphere_under_a_lamp_has_half_the_light_of_the_ground() => Assert.Equal(1000.0 / 9 / 2, SpatialIlluminance.HemisphericalLx(1000, 3, 0), 1e-9);

    [Fact]
    public void Semicylinder_is_the_mean_of_its_faces() => Gen.Select(Gen.Double[5, 85], Gen.Double[0, 180]).Sample((epsilon, alpha) =>
    {
        // the curved surface is a fan of vertical faces from -90 to 90 degrees
        var mean = Enumerable.Range(0, Slices)
            .Average(i => SpatialIlluminance.VerticalLx(1000, 4, epsilon, alpha - 90 + ((i + 0.5) * 180 / Slices)));
        return Math.Abs(mean - SpatialIlluminance.SemicylindricalLx(1000, 4, epsilon, alpha)) < 1e-4 * (1 + mean);
    });

    [Fact]
    public void Semicylinders_back_to_back_do_not_mind_where_the_light_is() => Gen.Select(Gen.Double[5, 85], Gen.Double[0, 180]).Sample((epsilon, alpha) =>
    {
        var both = SpatialIlluminance.SemicylindricalLx(1000, 4, epsilon, alpha) + SpatialIlluminance.SemicylindricalLx(1000, 4, epsilon, 180 - alpha);
        return Math.Abs(both - (2 / Math.PI * SpatialIlluminance.VerticalLx(1000, 4, epsilon, 0))) < 1e-9;
    });

    [Fact]
    public void Hemisphere_is_the_mean_of_its_faces() => Gen.Double[0, 85].Sample(epsilon =>
    {
        double sum = 0, area = 0;
        double sin = Math.Sin(epsilon * Math.PI / 180), cos = Math.Cos(epsilon * Math.PI / 180);
        for (var i = 0; i < 200; i++)
        {
            var polar = (i + 0.5) * Math.PI / 400;
            for (var j = 0; j < 200; j++)
            {
                var facing = (Math.Sin(polar) * Math.Cos((j + 0.5) * Math.PI / 100) * sin) + (Math.Cos(polar) * cos);
                sum += Math.Max(0, facing) * Math.Sin(polar);
                area += Math.Sin(polar);
            }
        }

        var squareOn = 1000 * cos * cos / 9; // I / d^2
        return Math.Abs((squareOn * sum / area) - SpatialIlluminance.HemisphericalLx(1000, 3, epsilon)) < 1e-3 * squareOn;
    });

    [Fact]
    public void A_strip_agrees_with_a_sum_written_out()
    {
        // isotropic 1000 cd, 5 m up, 12 m apart over the edge of a path of 3 m: points 0.6 m + 1.2 m, 0.5, 1.5 and 2.5 m from the edge
        var section = RoadSection.Of(new RoadLayout(3, 12, 5, 0, 0, Arrangement.SingleSided), 1);
        var spatial = RoadEvaluation.Of(Distributions.Isotropic(4000 * Math.PI), section, null, 0.5).Carriageway.Spatial;
        double vertical = double.MaxValue, round = double.MaxValue;
        foreach (var y in new[] { 0.5, 1.5, 2.5 })
        {
            for (var i = 0; i < 10; i++)
            {
                var x = 0.6 + (1.2 * i);
                foreach (var facing in new[] { 1, -1 })
                {
                    var near = Enumerable.Range(-4, 9).Select(k => (12.0 * k) - x).Where(dx => (dx * dx) + (y * y) <= 625).ToList();
                    double Squared(double dx) => (dx * dx) + (y * y) + (3.5 * 3.5);
                    vertical = Math.Min(vertical, near.Sum(dx => 500 * Math.Max(0, facing * dx) / Math.Pow(Squared(dx), 1.5)));
                    round = Math.Min(round, near.Sum(dx => 500 / Math.PI * (Math.Sqrt((dx * dx) + (y * y)) + (facing * dx)) / Math.Pow(Squared(dx), 1.5)));
                }
            }
        }

        Assert.Equal(vertical, spatial.MinimumVerticalLx, 1e-9);
        Assert.Equal(round, spatial.MinimumSemicylindricalLx, 1e-9);
    }
}
