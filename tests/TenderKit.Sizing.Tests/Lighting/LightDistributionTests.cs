using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class LightDistributionTests
{
    [Fact]
    public void Flux_of_closed_forms()
    {
        // closed form: the integral of phi/pi cos(gamma), of phi/(4 pi) and of the skewed Lambertian is phi; 1 degree table
        Assert.Equal(1000, Distributions.Lambertian(1000).FluxLm, 0.1);
        Assert.Equal(1000, Distributions.Isotropic(1000).FluxLm, 1e-6);
        Assert.Equal(1000, Distributions.Skewed(1000, 0.5, 0.3).FluxLm, 0.1);
    }

    [Fact]
    public void Parts_of_the_flux()
    {
        // closed form: street half of (1 + k sin C) is 1/2 + k/pi; the upper half of an isotropic source is 1/2
        Assert.Equal(0.5 + (0.5 / Math.PI), Distributions.Skewed(1000, 0.5, 0).StreetSideFraction, 1e-3);
        Assert.Equal(0.5, Distributions.Isotropic(1000).UpwardFraction, 1e-9);
        Assert.Equal(0, Distributions.Lambertian(1000).UpwardFraction);
    }

    [Fact]
    public void Table_values_come_back_and_halves_lie_between()
    {
        var d = new LightDistribution([0, 90, 180, 270, 360], [0, 45, 90], [10, 8, 0, 10, 6, 2, 10, 8, 0, 10, 4, 0, 10, 8, 0], 1000, 20);
        Assert.Equal(6, d.IntensityCd(90, 45));
        Assert.Equal(6, d.IntensityCd(-270, 45));
        Assert.Equal(7, d.IntensityCd(45, 45));
        Assert.Equal(4, d.IntensityCd(90, 67.5));
        Assert.Equal(0, d.IntensityCd(90, 90.001));
        Assert.Equal(10, d.PeakIntensityCd);
        Assert.Equal(1000, d.StatedFluxLm);
        Assert.Equal(20, d.StatedPowerW);
    }

    [Fact]
    public void Uneven_angles_give_the_same_as_even_ones_on_a_linear_profile()
    {
        double[] uneven = [0, 1, 7, 30, 31.5, 88, 90];
        var d = new LightDistribution([0, 10, 200, 360], [.. uneven], [.. Enumerable.Range(0, 4).SelectMany(_ => uneven.Select(g => 180 - g))], null, null);
        Gen.Select(Gen.Double[0, 360], Gen.Double[0, 90]).Sample((c, g) => Math.Abs(d.IntensityCd(c, g) - (180 - g)) < 1e-9);
    }

    [Fact]
    public void Flux_is_the_sum_of_its_parts()
    {
        var d = Distributions.Skewed(2500, 0.6, 0.2);
        Gen.Select(Gen.Double[1, 359], Gen.Double[1, 89]).Sample((c, g) =>
            Math.Abs(d.FluxWithinLm(0, c, 0, g) + d.FluxWithinLm(c, 360, 0, g) + d.FluxWithinLm(0, 360, g, 180) - d.FluxLm) < 1e-3 * d.FluxLm);
    }

    [Theory]
    [InlineData(new double[] { 0, 180 }, new double[] { 0, 90 }, 4)]
    [InlineData(new double[] { 0, 360 }, new double[] { 0, 85 }, 4)]
    [InlineData(new double[] { 0, 360 }, new double[] { 0, 0, 90 }, 6)]
    [InlineData(new double[] { 0, 360 }, new double[] { 0, 90 }, 5)]
    public void Wrong_tables_are_refused(double[] planes, double[] gammas, int count) =>
        Assert.Throws<ArgumentException>(() => new LightDistribution([.. planes], [.. gammas], [.. new double[count]], null, null));
}
