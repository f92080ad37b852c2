using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class LumenMethodTests
{
    private const double LxPerFootcandle = 10.7639104;
    private const double MPerFoot = 0.3048;

    [Fact]
    public void Navy_manual() =>
        // read, US Navy construction manual: 50,000 lm, CU 0.43, MF 0.70, 2 fc, 50 ft wide: 150.5 ft (the book rounds to 150)
        Assert.Equal(150.5, LumenMethod.SpacingM(50_000, 0.43, 0.70, 2 * LxPerFootcandle, 50 * MPerFoot) / MPerFoot, 0.05);

    [Fact]
    public void Worked_example_of_flux() =>
        // read: 6.46 lx over 7 m x 50 m, MF 0.29, CU 0.9: 8663 lm
        Assert.Equal(8663, LumenMethod.FluxLm(6.46, 7 * 50, 0.9, 0.29), 1.0);

    [Fact]
    public void Example_with_feet_read_as_metres() =>
        // read, printed 75 ft through a unit error: 33,200 lm, CU 0.18, MF 0.8 x 0.9, 5 lx, 11.5 feet wide is 245.5 m
        Assert.Equal(245.5, LumenMethod.SpacingM(33_200, 0.18, 0.8 * 0.9, 5, 11.5 * MPerFoot), 0.05);

    [Theory]
    [InlineData(7, 8)] // closed form, recomputed: 0.5 W / sqrt(H^2 + W^2) is 0.32926 at W 7, H 8
    [InlineData(4, 6)]
    [InlineData(12, 10)]
    public void Utilisation_of_a_line_of_Lambertian_heads_at_the_edge(double widthM, double heightM)
    {
        var expected = 0.5 * widthM / Math.Sqrt((heightM * heightM) + (widthM * widthM));
        Assert.Equal(expected, LumenMethod.UtilisationFactor(Distributions.Lambertian(3000), widthM, heightM, 0, 0), 1e-3 * expected);
    }

    [Fact]
    public void Average_of_the_line_of_Lambertian_heads() =>
        // closed form, recomputed: 3000 lm, S 25, H 8, W 7: 5.644 lx
        Assert.Equal(5.644, LumenMethod.AverageLx(3000, LumenMethod.UtilisationFactor(Distributions.Lambertian(3000), 7, 8, 0, 0), 1, 25, 7), 0.006);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 0)]
    [InlineData(-0.5, 10)]
    [InlineData(1, 15)]
    public void Agrees_with_the_point_by_point_average(double overhangM, double tiltDegrees)
    {
        // two methods of our own on a skewed distribution: the point grid samples and cuts at 5 H, hence 2 %
        var d = Distributions.Skewed(4000, 0.5, 0.2);
        var factor = LumenMethod.UtilisationFactor(d, 6, 8, overhangM, tiltDegrees);
        var points = Illuminance.OnRoad(d, new RoadLayout(6, 20, 8, overhangM, tiltDegrees, Arrangement.SingleSided), 0.8);
        Assert.Equal(LumenMethod.AverageLx(4000, factor, 0.8, 20, 6), points.AverageLx, 0.02 * points.AverageLx);
    }

    [Fact]
    public void Maintenance_product() => Assert.Equal(0.8379, Maintenance.Factor(0.98, 0.95, 0.90), 1e-10); // read: 0.98 x 0.95 x 0.90

    [Theory]
    [InlineData(25, Pollution.High, 1, 0.53)] // CIE 154:2003, read
    [InlineData(23, Pollution.Medium, 1, 0.62)]
    [InlineData(23, Pollution.Low, 1, 0.82)]
    [InlineData(23, Pollution.High, 3, 0.42)]
    [InlineData(23, Pollution.Medium, 3, 0.53)]
    [InlineData(23, Pollution.Low, 3, 0.78)]
    [InlineData(54, Pollution.High, 1, 0.89)]
    [InlineData(54, Pollution.Medium, 1, 0.90)]
    [InlineData(55, Pollution.Low, 1, 0.92)]
    [InlineData(55, Pollution.High, 3, 0.76)]
    [InlineData(55, Pollution.Medium, 3, 0.82)]
    [InlineData(55, Pollution.Low, 3, 0.88)]
    [InlineData(65, Pollution.High, 1, 0.91)]
    [InlineData(66, Pollution.Low, 1, 0.93)]
    [InlineData(66, Pollution.High, 3, 0.83)]
    [InlineData(67, Pollution.Low, 3, 0.90)]
    [InlineData(66, Pollution.Medium, 1, 0.92)] // from memory
    public void Dirt(int ipCode, Pollution pollution, double years, double expected) =>
        Assert.Equal(expected, Maintenance.DirtFraction(ipCode, pollution, years), 1e-12);

    [Fact]
    public void Dirt_lies_between_the_years_of_the_table()
    {
        Assert.Equal(0.905, Maintenance.DirtFraction(66, Pollution.High, 1.25), 1e-12);
        Assert.Equal(0.91, Maintenance.DirtFraction(66, Pollution.High, 0.5), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Maintenance.DirtFraction(66, Pollution.High, 4));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(100_000, 0.8)] // definition of L80
    [InlineData(50_000, 0.8944)] // square root of 0.8
    public void Lumen_maintenance(double hours, double expected) => Assert.Equal(expected, Maintenance.LumenFraction(hours, 100_000), 1e-4);
}
