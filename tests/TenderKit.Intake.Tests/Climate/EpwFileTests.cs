using TenderKit.Intake.Climate;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Intake.Tests.Climate;

public sealed class EpwFileTests
{
    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    public void A_year_is_read_with_its_place_and_its_hours_beginning(string lineEnd)
    {
        var series = Read(SampleHours.Epw(lineEnd: lineEnd), out var found);
        Assert.Empty(found);
        Assert.Equal((10.0, 30.0, 2.0), (series.LatitudeDegrees, series.LongitudeDegrees, series.UtcOffsetH));
        Assert.Equal((SeriesKind.TypicalYear, 1), (series.Kind, series.YearCount));
        Assert.Null(series.FirstYear);
        Assert.Equal(SampleHours.Wh(11), series.GlobalWhPerM2[11]);
        Assert.Equal(0, series.GlobalWhPerM2[5]);
        Assert.Equal(26, series.AirC[13]);
        Assert.Contains("Made", series.Source, StringComparison.Ordinal);
        var monthly = series.ToMonthly();
        Assert.All(monthly.IrradiationKWhPerM2, h => Assert.Equal(SampleHours.DayKWh, h, 1e-9));
        Assert.Equal(37, monthly.DailyMaxC[11], 1e-9);
        Assert.Equal(32, monthly.DailyMinC[11], 1e-9);
    }

    // missing global irradiation is 9999, missing dry bulb 99.9; typical-year files hold air above 55 degC
    [Fact]
    public void Missing_and_impossible_hours_are_filled_from_the_nearest_day_and_told()
    {
        var series = Read(
            SampleHours.Epw(
                global: t => t is { Month: 3, Day: 5, Hour: 12 } ? "9999" : SampleHours.Text(t is { Month: 3, Day: 4, Hour: 12 } ? 777 : SampleHours.Wh(t.Hour)),
                air: t => t is { Month: 5, Day: 1, Hour: 3 } ? "61.0" : t is { Month: 6, Day: 1, Hour: 3 } ? "99.9" : SampleHours.Text(SampleHours.AirC(t.Month, t.Hour))),
            out var found);
        var warning = Assert.Single(found);
        Assert.Equal(("TK146", Severity.Warning), (warning.Code, warning.Severity));
        Assert.StartsWith("1 hours of irradiation and 2 of air temperature", warning.Message, StringComparison.Ordinal);
        Assert.Equal(3 + (31 + 28 + 4) * 24 + 13, warning.Place.Row);
        Assert.Equal(777, series.GlobalWhPerM2[(31 + 28 + 4) * 24 + 12]);
        Assert.Equal(24, series.AirC[120 * 24 + 3]);
        Assert.Equal(25, series.AirC[151 * 24 + 3]);
        Assert.Equal(36, series.ToMonthly().RecordHighC); // 31 of 8760 hours reach 37, fewer than 0.4 %
    }

    [Fact]
    public void A_month_that_lacks_more_days_than_allowed_is_refused_by_name()
    {
        string Gaps(int days) => SampleHours.Epw(global: t => t.Month == 8 && t.Day <= days && t.Hour == 10 ? "9999" : SampleHours.Text(SampleHours.Wh(t.Hour)));
        Read(Gaps(3), out _);
        var error = Refused(Gaps(4));
        Assert.Equal("TK145", error.Code);
        Assert.Contains("August (4 of 31)", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_out_of_order_is_refused_by_its_number()
    {
        var lines = SampleHours.Epw().Split("\r\n").ToList();
        lines.RemoveAt(100);
        var error = Refused(string.Join('\n', lines));
        Assert.Equal(("TK143", 101), (error.Code, error.Place.Row));
        Assert.Contains("hour 3 of 5 January stands where hour 2 of 5 January should", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TK143", "2001-like", "x")]
    [InlineData("TK143", "short", null)]
    public void An_unreadable_line_is_refused_by_its_number(string code, string what, string? air)
    {
        var lines = SampleHours.Epw().Split("\r\n");
        lines[50] = air is null ? "1991,1,3,1" : string.Join(',', lines[50].Split(',').Select((f, i) => i == 6 ? air : f));
        var error = Refused(string.Join('\n', lines));
        Assert.True((code, 51) == (error.Code, error.Place.Row), what);
    }

    [Theory]
    [InlineData("LOCATION,Made,-,XXX,own,0,10.0,30.0")]
    [InlineData("LOCATION,Made,-,XXX,own,0,100.0,30.0,2.0,0")]
    [InlineData("LOCATION,Made,-,XXX,own,0,10.0,30.0,20.0,0")]
    [InlineData("LOCATION,Made,-,XXX,own,0,10.0,,2.0,0")]
    public void A_head_without_place_or_clock_is_refused(string location)
    {
        var error = Refused(SampleHours.Epw(location: location));
        Assert.Equal(("TK142", 1), (error.Code, error.Place.Row));
    }

    [Fact]
    public void An_end_before_December_is_refused_and_a_file_without_hours_too()
    {
        var half = string.Join('\n', SampleHours.Epw().Split("\r\n").Take(3 + 190 * 24));
        var error = Refused(half);
        Assert.Equal("TK145", error.Code);
        Assert.Contains("August (31 of 31), September (30 of 30)", error.Message, StringComparison.Ordinal);
        Assert.Equal("TK145", Refused("LOCATION,Made,-,XXX,own,0,10.0,30.0,2.0,100.0\nDATA PERIODS").Code);
    }

    [Fact]
    public void Two_years_that_follow_one_another_are_measured_years()
    {
        var one = SampleHours.Epw(lineEnd: "\n").Split('\n').Where(l => l.Length > 0 && char.IsAsciiDigit(l[0])).Select(l => l[(l.IndexOf(',', StringComparison.Ordinal) + 1)..]).ToList();
        var text = "LOCATION,Made,-,XXX,own,0,10.0,30.0,2.0,100.0\n" + string.Join('\n', one.Select(l => "2010," + l).Concat(one.Select(l => "2011," + l)));
        var series = Read(text, out _);
        Assert.Equal((SeriesKind.MeasuredYears, 2010, 2), (series.Kind, series.FirstYear, series.YearCount));
    }

    [Fact]
    public void The_29th_of_February_is_left_out()
    {
        var lines = SampleHours.Epw().Split("\r\n").ToList();
        lines.InsertRange(3 + 59 * 24, Enumerable.Range(1, 24).Select(h => $"1992,2,29,{h},60,?9,50,10,60,90000,0,0,0,700,0"));
        var series = Read(string.Join('\n', lines), out var found);
        Assert.Empty(found);
        Assert.Equal(Read(SampleHours.Epw(), out _).GlobalWhPerM2.AsEnumerable(), series.GlobalWhPerM2.AsEnumerable());
    }

    private static HourlySeries Read(string text, out IReadOnlyList<Diagnostic> found)
    {
        var outcome = EpwFile.Read("made.epw", SampleHours.Bytes(text));
        found = outcome.Diagnostics;
        Assert.False(outcome.HasErrors, string.Join('\n', found));
        return outcome.Value!;
    }

    private static Diagnostic Refused(string text)
    {
        var outcome = EpwFile.Read("made.epw", SampleHours.Bytes(text));
        Assert.Null(outcome.Value);
        return Assert.Single(outcome.Diagnostics);
    }
}
