using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

public sealed class SequenceRulesTests
{
    private static readonly RuleSet Rules = new(
    [
        Rule("climate.years", 50), Rule("climate.seed", 19), Rule("climate.day_correlation", 0.29), Rule("climate.year_spread", 0.08),
        Rule("climate.month_correlation", 0.3), Rule("climate.day_dispersion", 1.1),
    ]);

    [Fact]
    public void Rules_alone() => Assert.Equal(new SequenceSettings(50, 19, 0.29, 0.08, MonthToMonthCorrelation: 0.3, DispersionFactor: 1.1), SequenceRules.Of(Rules));

    [Theory]
    [InlineData(0.12, 0.12)]
    [InlineData(0.8, 0.5)]
    public void The_spread_of_the_site_goes_before_the_rule(double own, double used) => Assert.Equal(used, SequenceRules.Of(Rules, own).YearToYearSpreadFraction);

    [Fact]
    public void A_series_of_the_site_goes_before_the_rules()
    {
        var own = new SeriesStatistics([.. Enumerable.Repeat(0.06, 12)], 0.06, 0.35, -0.1, 20, 0.9);
        var used = SequenceRules.Of(Rules, own, -13.5);
        Assert.Equal(0.06, used.YearToYearSpreadFraction);
        Assert.Equal(0.35, used.DayToDayCorrelation);
        Assert.Equal(0, used.MonthToMonthCorrelation);
        Assert.Equal(1.1 * 0.9 / 0.75, used.DispersionFactor, 1e-12);
        Assert.Equal(1.5, SequenceRules.Of(Rules, own with { DispersionFactor = 2 }, -13.5).DispersionFactor);
        Assert.Equal(SequenceRules.Of(Rules), SequenceRules.Of(Rules, null, -13.5));
    }

    private static DesignRule Rule(string id, double value) => new(id, value, 0, 1, "-", "test", "test", false);
}
