using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class ClimateGradesTests
{
    [Fact]
    public void Each_grade_has_a_rule_and_words_of_its_own()
    {
        Assert.Equal(7, ClimateGrades.All.Count);
        Assert.Equal(7, ClimateGrades.All.Select(ClimateGrades.RuleId).Distinct().Count());
        Assert.Equal(7, ClimateGrades.All.Select(ClimateGrades.Words).Distinct().Count());
        Assert.Equal("climate.factor.satellite_series", ClimateGrades.RuleId(ClimateGrade.SatelliteSeries));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClimateGrades.Words((ClimateGrade)99));
        Assert.Equal([ClimateGrade.EstimateNear, ClimateGrade.EstimateFar], ClimateGrades.All.Where(ClimateGrades.IsEstimate));
    }

    [Theory]
    [InlineData(SeriesKind.TypicalYear, 1, false, ClimateGrade.TypicalYear)]
    [InlineData(SeriesKind.SatelliteYears, 3, false, ClimateGrade.SatelliteSeries)]
    [InlineData(SeriesKind.SatelliteYears, 2, false, ClimateGrade.MeansWithSource)]
    [InlineData(SeriesKind.MeasuredYears, 10, true, ClimateGrade.MeasuredRecord)]
    [InlineData(SeriesKind.MeasuredYears, 9, true, ClimateGrade.MeansWithSource)]
    [InlineData(SeriesKind.MeasuredYears, 30, false, ClimateGrade.MeansWithSource)]
    public void A_series_is_graded_by_kind_and_years(SeriesKind kind, int years, bool stated, ClimateGrade grade) =>
        Assert.Equal(grade, ClimateGrades.OfSeries(kind, years, stated));

    // by hand: eight years alternating 0.9 and 1.1 of the mean: sqrt(8 x 0.01 / 7) = 0.106904
    [Fact]
    public void The_spread_between_years_is_the_standard_deviation_over_the_mean()
    {
        double[][] years = [.. Enumerable.Range(0, 8).Select(y => Enumerable.Range(0, 12).Select(m => (m + 1) * (y % 2 == 0 ? 0.9 : 1.1)).ToArray())];
        Assert.Equal(0.106904, YearSpread.Of(years)!.Value, 1e-6);
        Assert.Null(YearSpread.Of(years[..7]));
        double?[] days = [.. Enumerable.Range(0, 8 * 365).Select(d => (double?)(d / 365 % 2 == 0 ? 4.5 : 5.5))];
        Assert.Equal(0.106904, YearSpread.Of([.. days])!.Value, 1e-6);
        days[3] = null;
        Assert.Equal(0.106904, YearSpread.Of([.. days])!.Value, 1e-6);
    }

    // clearness 0.5 at 14 S in every month, in each wrong unit
    [Theory]
    [InlineData(3.6, "TK302", "MJ/m2 a day where kWh/m2 a day is meant")]
    [InlineData(1000, "TK302", "Wh/m2 a day where")]
    [InlineData(30.4, "TK309", "totals of a month where the mean of one day is meant. State the unit kWh/m2/month, or divide each value by the days of its month, 31 for January.")]
    [InlineData(109.5, "TK309", "totals of a month in MJ/m2")]
    [InlineData(1 / 3.6, "TK302", "kWh/m2 a day where MJ/m2 a day is stated")]
    [InlineData(1 / 30.4, "TK309", "means of one day where totals of the month are stated")]
    [InlineData(0.001, "TK302", "kWh/m2 a day where Wh/m2 a day is stated")]
    public void The_unit_a_slip_is_in_is_named(double factor, string code, string words)
    {
        var climate = Climates.Of(-14, [.. Climates.Constant(-14, 0.5).IrradiationKWhPerM2.Select(h => h * factor)]);
        var found = Assert.Single(ReferenceClimate.Examine(climate, Place.Nowhere));
        Assert.Equal(code, found.Code);
        Assert.Contains(words, found.Message, StringComparison.Ordinal);
    }
}
