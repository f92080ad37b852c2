using System.Collections.Immutable;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class SeriesStatisticsTests
{
    // A sequence made with known settings gives them back; 60 years: standard error of the spread 0.003, of the month correlation 0.04
    [Theory]
    [InlineData(0.29, 0.08, 0.0)]
    [InlineData(0.29, 0.12, 0.4)]
    [InlineData(0.10, 0.05, 0.2)]
    [InlineData(0.50, 0.08, 0.6)]
    public void Known_settings_are_found_again(double days, double spread, double months)
    {
        var found = SeriesStatistics.Of(Hourly(60, new SequenceSettings(60, 5, days, spread, MonthToMonthCorrelation: months)))!;
        Assert.Equal(spread, found.YearSpreadFraction, 0.005);
        Assert.All(found.YearSpreadByMonth, s => Assert.Equal(spread, s, 0.01));
        Assert.Equal(days, found.DayToDayCorrelation, 0.04);
        Assert.Equal(months, found.MonthToMonthCorrelation, 0.09);
        Assert.Equal(60, found.Years);
        Assert.Equal(0.75, found.DispersionFactor, 0.03);
    }

    [Fact]
    public void Hours_and_days_say_the_same()
    {
        var hourly = Hourly(10, new SequenceSettings(10, 5, 0.29, 0.08));
        var days = Enumerable.Range(0, 3650).Select(d => (double?)(hourly.GlobalWhPerM2.AsSpan(d * 24, 24).ToArray().Sum() / 1000)).ToArray();
        var daily = new DailySeries(hourly.Years, -13.5, 34, [.. days], [], [], [], "invented");
        var (a, b) = (SeriesStatistics.Of(hourly)!, SeriesStatistics.Of(daily)!);
        Assert.Equal(a.YearSpreadFraction, b.YearSpreadFraction, 1e-6);
        Assert.Equal(a.DayToDayCorrelation, b.DayToDayCorrelation, 1e-6);
        Assert.Equal(a.MonthToMonthCorrelation, b.MonthToMonthCorrelation, 1e-6);

        // a year with a missing day is left out
        days[400] = null;
        Assert.Equal(9, SeriesStatistics.Of(daily with { GlobalKWhPerM2 = [.. days] })!.Years);
    }

    [Fact]
    public void Few_years_and_typical_years_say_nothing()
    {
        Assert.Null(SeriesStatistics.Of(Hourly(7, new SequenceSettings(7, 5, 0.29, 0.08))));
        Assert.NotNull(SeriesStatistics.Of(Hourly(8, new SequenceSettings(8, 5, 0.29, 0.08))));
        Assert.Null(SeriesStatistics.Of(Hourly(8, new SequenceSettings(8, 5, 0.29, 0.08)) with { Kind = SeriesKind.TypicalYear }));
        Assert.Throws<ArgumentException>(() => SeriesStatistics.Of(Hourly(8, new SequenceSettings(8, 5, 0.29, 0.08)) with { GlobalWhPerM2 = [1, 2, 3] }));
    }

    // By hand: every day of a year alike, January of year y at 1 + 0.1 y about its mean, all other months constant
    [Fact]
    public void A_spread_worked_out_by_hand()
    {
        var days = Enumerable.Range(0, 9 * 365).Select(d => (double?)(d % 365 < 31 ? 4 + 0.4 * (d / 365 - 4) : 5)).ToImmutableArray();
        var found = SeriesStatistics.Of(new DailySeries([.. Enumerable.Range(2001, 9)], 0, 0, days, [], [], [], "invented"))!;
        Assert.Equal(0.1 * Math.Sqrt(60.0 / 8), found.YearSpreadByMonth[0], 1e-9);
        Assert.All(found.YearSpreadByMonth.Skip(1), s => Assert.Equal(0, s, 1e-12));
    }

    [Fact]
    public void The_polar_night_is_left_out()
    {
        var years = SyntheticYears.Generate(Climates.Constant(78, 0.4), new SequenceSettings(10, 5, 0.29, 0.08), 1);
        var found = SeriesStatistics.Of(Series(years, 78))!;
        Assert.Equal(0, found.YearSpreadByMonth[11]);
        Assert.Equal(0.08, found.YearSpreadFraction, 0.01);
        Assert.True(double.IsFinite(found.DayToDayCorrelation) && double.IsFinite(found.MonthToMonthCorrelation) && double.IsFinite(found.DispersionFactor));
    }

    private static HourlySeries Hourly(int count, SequenceSettings settings) =>
        Series(SyntheticYears.Generate(Climates.Constant(-13.5, 0.5), settings with { YearCount = count }, 1), -13.5);

    private static HourlySeries Series(HourlyYears years, double latitude) => new(
        SeriesKind.SatelliteYears, [.. Enumerable.Range(2001, years.YearCount)], latitude, 0, 0, years.GlobalWhPerM2, years.AirC, "invented");
}
