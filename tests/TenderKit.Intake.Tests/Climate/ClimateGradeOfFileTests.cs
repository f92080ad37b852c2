using System.Globalization;
using TenderKit.Intake.Climate;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Intake.Tests.Climate;

/// <summary>The kind of file sets the grade; only what is stated counts.</summary>
public sealed class ClimateGradeOfFileTests
{
    private const string Months = "month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c\n1,5,20,27,14\n2,5,20,27,14\n3,5,20,27,14\n4,5,20,27,14\n5,5,20,27,14\n6,5,20,27,14\n7,5,20,27,14\n8,5,20,27,14\n9,5,20,27,14\n10,5,20,27,14\n11,5,20,27,14\n12,5,20,27,14\n";

    [Theory]
    [InlineData("# source: station 12\n# kind: measured record\n# years: 2005-2019\n", ClimateGrade.MeasuredRecord, 15)]
    [InlineData("# source: station 12\n# kind: ground measured\n# years: 2005 to 2014\n", ClimateGrade.MeasuredRecord, 10)]
    [InlineData("# source: station 12\n# kind: satellite\n# years: 20\n", ClimateGrade.SatelliteSeries, 20)]
    [InlineData("# source: station 12\n# kind: satellite\n", ClimateGrade.SatelliteSeries, null)]
    [InlineData("# source: station 12\n# kind: typical year\n", ClimateGrade.TypicalYear, null)]
    [InlineData("# source: station 12\n", ClimateGrade.MeansWithSource, null)]
    [InlineData("# kind: measured record\n# years: 2005-2019\n", ClimateGrade.Unsourced, 15)]
    public void A_table_may_state_its_kind(string head, ClimateGrade grade, int? years)
    {
        var reading = Value("own.csv", head + Months, out var found);
        Assert.Equal((grade, years), (reading.Monthly.Grade, reading.Monthly.YearCount));
        Assert.DoesNotContain(found, d => d.Code == "TK130");
    }

    [Theory]
    [InlineData("# source: s\n# kind: measured record\n# years: 2005-2013\n", "the means are of 9 years, a measured record needs at least 10: graded as 'means with source'")]
    [InlineData("# source: s\n# kind: measured record\n", "the means are of years that are not stated, a measured record needs at least 10")]
    [InlineData("# source: s\n# kind: satellite\n# years: 2019\n", "the means are of 1 year, a satellite series needs at least 3")]
    public void TK130_a_record_too_short_is_graded_lower_and_told(string head, string words)
    {
        var reading = Value("own.csv", head + Months, out var found);
        Assert.Equal(ClimateGrade.MeansWithSource, reading.Monthly.Grade);
        Assert.Contains(words, Assert.Single(found, d => d.Code == "TK130").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# source: s\n# kind: guessed\n", "kind 'guessed' is not known; write measured record, satellite or typical year")]
    [InlineData("# source: s\n# years: many\n", "years 'many' is neither")]
    public void A_kind_that_is_not_known_is_refused(string head, string words)
    {
        var outcome = ClimateFile.Read("own.csv", SampleHours.Bytes(head + Months), null, null);
        Assert.Null(outcome.Value);
        Assert.Contains(words, Assert.Single(outcome.Diagnostics, d => d.Code == "TK134").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Typical_years_and_single_years_of_hours_are_told_apart()
    {
        Assert.Equal(ClimateGrade.TypicalYear, Value("a.epw", SampleHours.Epw(), out _).Monthly.Grade);
        Assert.Equal(ClimateGrade.TypicalYear, Value("a.csv", SampleHours.Tmy3(), out _).Monthly.Grade);
        var one = Value("a.csv", SamplePower.Hourly("LST", "Wh/m^2", 1), out var found).Monthly;
        Assert.Equal((ClimateGrade.MeansWithSource, 1), (one.Grade, one.YearCount));
        Assert.Contains(found, d => d.Code == "TK130");
        var three = Value("a.csv", SamplePower.Hourly("LST", "Wh/m^2", 1, null, 2001, 2002, 2003), out found).Monthly;
        Assert.Equal((ClimateGrade.SatelliteSeries, 3, null), (three.Grade, three.YearCount, three.YearSpreadFraction));
        Assert.DoesNotContain(found, d => d.Code == "TK130");
    }

    // by hand: eight years alternating 4.5 and 5.5 kWh/m2 in every month: sqrt(8 x 0.01 / 7) = 0.106904
    [Fact]
    public void Months_of_eight_years_carry_their_own_spread()
    {
        string Row(string name, int year, double value) => string.Create(CultureInfo.InvariantCulture, $"{name},{year},{string.Join(',', Enumerable.Repeat(value.ToString(CultureInfo.InvariantCulture), 13))}\n");
        var text = SamplePower.Head("LST", "kW-hr/m^2/day") + "PARAMETER,YEAR,JAN,FEB,MAR,APR,MAY,JUN,JUL,AUG,SEP,OCT,NOV,DEC,ANN\n"
            + string.Concat(Enumerable.Range(2001, 8).Select(y => Row("ALLSKY_SFC_SW_DWN", y, y % 2 == 0 ? 4.5 : 5.5) + Row("T2M", y, 20)));
        var monthly = Value("m.csv", text, out _).Monthly;
        Assert.Equal((ClimateGrade.SatelliteSeries, 8), (monthly.Grade, monthly.YearCount));
        Assert.Equal(0.106904, monthly.YearSpreadFraction!.Value, 1e-6);
    }

    [Fact]
    public void Days_say_that_they_give_statistics_only()
    {
        var reading = Value("d.csv", SamplePower.Daily("kW-hr/m^2/day", 1, false), out var found);
        Assert.Null(reading.Series);
        Assert.Contains(found, d => d.Code == "TK148" && d.Message.StartsWith("days give the monthly means and, from eight years on, their spread", StringComparison.Ordinal));
    }

    [Fact]
    public void Temperatures_may_be_taken_for_the_place_of_use()
    {
        const string Bare = "# source: s\nmonth,irradiation_kwh_m2_day\n1,5\n2,5\n3,5\n4,5\n5,5\n6,5\n7,5\n8,5\n9,5\n10,5\n11,5\n12,5\n";
        Assert.Contains(ClimateFile.Read("own.csv", SampleHours.Bytes(Bare), null, null).Diagnostics, d => d.Code == "TK139");
        var outcome = ClimateFile.Read("own.csv", SampleHours.Bytes(Bare), null, null, airPlace: (9.0, 38.8));
        Assert.Equal((0.0, 0.0), (outcome.Value!.Monthly.LatitudeDegrees, outcome.Value.Monthly.LongitudeDegrees));
        Assert.InRange(outcome.Value.Monthly.MeanC[0], 10, 22);
    }

    // single hours of a typical year hold glitches: the record is taken from what 0.4 % of the hours pass, 35 of 8760
    [Fact]
    public void A_glitch_in_a_typical_year_is_no_record()
    {
        var text = SampleHours.Epw(air: t => t is { Month: 7, Day: <= 30, Hour: 2 } ? "54.0" : "25.0");
        var monthly = Value("a.epw", text, out _).Monthly;
        Assert.Equal((20.0, 30.0), (monthly.RecordLowC, monthly.RecordHighC));
    }

    private static ClimateReading Value(string name, string text, out IReadOnlyList<Diagnostic> found)
    {
        var outcome = ClimateFile.Read(name, SampleHours.Bytes(text), null, null);
        found = outcome.Diagnostics;
        return outcome.Value!;
    }
}
