using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class DullSpellTests
{
    // Computed for this project from open typical years (SWERA, TMY, TMY3), 63 places within 25 degrees of the equator; the rows are the table in tests/Published
    [Theory]
    [InlineData(0, 0.64)]
    [InlineData(1, 0.74)]
    [InlineData(2, 0.81)]
    [InlineData(3, 0.86)]
    public void The_table_says_what_is_said_of_the_tropics(int spell, double published)
    {
        var tropics = TypicalYears.All().Where(t => Math.Abs(t.LatitudeDegrees) <= 25).ToList();
        Assert.Equal(63, tropics.Count);
        Assert.Equal(published, tropics.Average(t => t.Lowest[spell]), 0.005);
    }

    // Required: synthetic years reproduce the dull spells of typical years within 10 %; published means as above
    [Theory]
    [InlineData(0, 0.64)]
    [InlineData(1, 0.74)]
    [InlineData(2, 0.81)]
    [InlineData(3, 0.86)]
    public void Dull_spells_of_the_tropics(int spell, double published)
    {
        var simulated = TypicalYears.Pairs.Where(p => Math.Abs(p.Typical.LatitudeDegrees) <= 25).Average(p => p.Simulated[spell].Average());
        Assert.InRange(simulated / published, 0.90, 1.10);
    }

    // The same against the mean of the table's own rows in every band, and in each half of the places, so that no band pays for another
    [Theory]
    [InlineData(0, 10)]
    [InlineData(10, 20)]
    [InlineData(20, 25)]
    [InlineData(25, 40)]
    [InlineData(40, 90)]
    [InlineData(25, 90)]
    [InlineData(0, 90)]
    public void Dull_spells_by_latitude(double from, double to)
    {
        var places = TypicalYears.Pairs.Where(p => Math.Abs(p.Typical.LatitudeDegrees) > from && Math.Abs(p.Typical.LatitudeDegrees) <= to).ToList();
        for (var s = 0; s < 4; s++) Assert.InRange(places.Average(p => p.Simulated[s].Average()) / places.Average(p => p.Typical.Lowest[s]), 0.90, 1.10);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Dull_spells_in_each_half_of_the_tropical_places(int half)
    {
        var places = TypicalYears.Pairs.Where(p => Math.Abs(p.Typical.LatitudeDegrees) <= 25).OrderBy(p => Math.Abs(p.Typical.LatitudeDegrees)).Where((_, i) => i % 2 == half).ToList();
        for (var s = 0; s < 4; s++) Assert.InRange(places.Average(p => p.Simulated[s].Average()) / places.Average(p => p.Typical.Lowest[s]), 0.90, 1.10);
    }

    // Published: in 10 % of the places within 25 degrees the dullest 3 days lie under 0.50; here one simulated year of each place, for each of the years
    [Fact]
    public void One_place_in_ten_is_much_duller()
    {
        var tropics = TypicalYears.Pairs.Where(p => Math.Abs(p.Typical.LatitudeDegrees) <= 25).ToList();
        var tenths = Enumerable.Range(0, TypicalYears.YearsEach).Average(y => tropics.Select(p => p.Simulated[0][y]).Order().ElementAt(tropics.Count / 10));
        Assert.InRange(tenths / 0.50, 0.90, 1.10);
    }

    [Fact]
    public void The_spread_of_years_and_wider_days_make_it_duller()
    {
        var place = TypicalYears.All().First(t => t.Name.StartsWith("Addis", StringComparison.Ordinal));
        var usual = new SequenceSettings(50, 3, 0.29, 0);
        double Three(SequenceSettings settings) => TypicalYears.Simulated(place, settings)[0].Average();
        Assert.True(Three(usual with { DispersionFactor = 1.3 }) < Three(usual) - 0.05);
        Assert.True(Three(usual with { DispersionFactor = 0.7 }) > Three(usual) + 0.05);
        Assert.True(Three(usual with { DayToDayCorrelation = 0.5 }) < Three(usual));
    }

    // Factors and where they bend: the fit stated in DailyDispersion
    [Theory]
    [InlineData(0, 0.75)]
    [InlineData(-13.5, 0.75)]
    [InlineData(25, 0.75)]
    [InlineData(27.5, 0.925)]
    [InlineData(-33.9, 1.10)]
    [InlineData(42.5, 0.95)]
    [InlineData(60, 0.80)]
    [InlineData(-90, 0.80)]
    public void Dispersion_by_latitude(double latitude, double factor) => Assert.Equal(factor, DailyDispersion.Factor(latitude), 1e-12);

    [Fact]
    public void A_dispersed_distribution_keeps_its_mean_and_scales_its_deviations()
    {
        foreach (var mean in new[] { 0.35, 0.5, 0.65 })
        {
            var printed = new SaunierClearness(mean);
            double Deviation(ClearnessDistribution d) => Math.Sqrt(Enumerable.Range(0, 5000).Average(i => Math.Pow(d.Quantile((i + 0.5) / 5000) - mean, 2)));
            var narrow = new DispersedClearness(printed, 0.75);
            Assert.Equal(mean, Enumerable.Range(0, 5000).Average(i => narrow.Quantile((i + 0.5) / 5000)), 0.001);
            Assert.Equal(0.75, Deviation(narrow) / Deviation(printed), 0.005);
            Assert.InRange(new DispersedClearness(printed, 2).Quantile(1e-6), ClearnessDistribution.LeastClearness, ClearnessDistribution.LeastClearness);
        }
    }
}
