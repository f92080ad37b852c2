using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class DarkNightRangeTests
{
    // Exact 90 % limits of a Poisson count, chi2(0.05, 2 N) / 2 and chi2(0.95, 2 N + 2) / 2: N = 0: 0, 2.996; 1: 0.0513, 4.744; 2: 0.355, 6.296; 5: 1.970, 10.513
    // (Garwood 1936, standard tables, from memory)
    [Theory]
    [InlineData(0, 0, 2.996)]
    [InlineData(1, 0.0513, 4.744)]
    [InlineData(2, 0.355, 6.296)]
    [InlineData(5, 1.970, 10.513)]
    public void Few_nights_in_as_many_years(int total, double low, double high)
    {
        var years = new int[20];
        for (var i = 0; i < total; i++) years[i * 4]++;
        var range = DarkNightBound.TwoSidedNinety(years);
        Assert.Equal(high / 20, range.HighPerYear, 0.0001);
        Assert.InRange(range.LowPerYear, 0, low / 20 + 0.0001); // the spread between years may widen it
    }

    [Fact]
    public void The_low_end_of_one_year_is_the_exact_limit() => Assert.Equal(1.970, DarkNightBound.TwoSidedNinety([5]).LowPerYear, 0.001);

    // t(0.95, 9) = 1.833 (tables of Student's t): five years of 20 and five of 0, mean 10, deviation 10.54, 10 -+ 1.833 x 10.54 / sqrt(10) = 3.89 to 16.11
    [Fact]
    public void Nights_in_clusters_are_judged_by_the_spread_between_years()
    {
        var range = DarkNightBound.TwoSidedNinety([20, 0, 20, 0, 20, 0, 20, 0, 20, 0]);
        Assert.Equal(3.89, range.LowPerYear, 0.01);
        Assert.Equal(16.11, range.HighPerYear, 0.01);
    }

    [Fact]
    public void A_run_of_nights_is_one_event()
    {
        var single = DarkNightBound.TwoSidedNinety([2]);
        var runs = DarkNightBound.TwoSidedNinety([8], 4);
        Assert.Equal(4 * single.LowPerYear, runs.LowPerYear, 1e-9);
        Assert.Equal(4 * single.HighPerYear, runs.HighPerYear, 1e-9);
    }

    [Fact]
    public void The_range_holds_the_mean_and_the_one_sided_bound()
    {
        var system = new PowerSystem(Systems.Array(80), Systems.Lithium(600), Systems.Tracking, 20);
        var result = EnergyBalance.Run(Systems.Weather(9, 0.5, 10), Systems.AllNight(9), system);
        Assert.InRange(result.DarkNightsPerYear, result.DarkNightRange.LowPerYear, result.DarkNightRange.HighPerYear);
        Assert.True(result.DarkNightsPerYear > 0);
        Assert.True(result.DarkNightRange.HighPerYear > result.DarkNightsUpperBound);
    }
}
