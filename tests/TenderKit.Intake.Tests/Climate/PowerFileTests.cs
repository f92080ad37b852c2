using System.Globalization;
using TenderKit.Intake.Climate;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Intake.Tests.Climate;

/// <summary>Layouts after real answers of the service (read); the numbers are made, but for the row P-33.</summary>
public sealed class PowerFileTests
{
    // the unit depends on the community asked for and stands in the bracket of the header
    [Theory]
    [InlineData("LST", "Wh/m^2", 1)]
    [InlineData("UTC", "W/m^2", 1)]
    [InlineData("LST", "kW-hr/m^2", 0.001)]
    [InlineData("UTC", "MJ/hr", 0.0036)]
    [InlineData("LST", "MJ/m^2", 0.0036)]
    public void Hours_are_read_in_the_unit_and_the_clock_of_the_header(string clock, string unit, double perWh)
    {
        var reading = Read(SamplePower.Hourly(clock, unit, perWh), out var found);
        Assert.Empty(found);
        var series = reading.Series!;
        Assert.Equal((SeriesKind.SatelliteYears, 2001, 2.0), (series.Kind, series.FirstYear, series.UtcOffsetH));
        Assert.Equal((10.0, 30.0), (series.LatitudeDegrees, series.LongitudeDegrees));
        for (var i = 0; i < 8760; i++) Assert.Equal(SampleHours.Wh(i % 24), series.GlobalWhPerM2[i], 0.1);
        Assert.All(reading.Monthly.IrradiationKWhPerM2, h => Assert.Equal(SampleHours.DayKWh, h, 0.001));
        Assert.Equal(26, series.AirC[24 + 13]);
        Assert.Equal(ClimateGrade.MeansWithSource, reading.Monthly.Grade);
        Assert.Contains("NASA", reading.Monthly.Source, StringComparison.Ordinal);
    }

    // row P-33: hourly GHI of 44.76 N 7.64 E, 2 February 2025, universal time, hours 7 to 16, sum 2325.33 Wh/m2 (read in the tests of an open library).
    // The middle of that energy falls on solar noon when an hour is taken as beginning at its label, and half an hour to an hour off when it is not.
    [Fact]
    public void Published_hours_keep_their_sum_and_centre_on_solar_noon()
    {
        double[] published = [50.25, 184.2, 281.55, 368.3, 406.48, 386.45, 316.05, 210.1, 109.05, 12.9];
        string Value(DateTime t) => SampleHours.Text(t.Hour is >= 7 and <= 16 ? published[t.Hour - 7] : 0);
        var text = SamplePower.Hourly("UTC", "Wh/m^2", 1, Value, 2025).Replace("latitude  10.0   longitude 30.0", "latitude  44.76   longitude 7.64", StringComparison.Ordinal);
        var series = Read(text, out _).Series!;
        Assert.Equal(1, series.UtcOffsetH);
        var day = series.GlobalWhPerM2.AsSpan(32 * 24, 24).ToArray();
        Assert.Equal(2325.33, day.Sum(), 0.01);
        Assert.Equal(50.25, day[8]);
        var solar = series.ToYears().GlobalWhPerM2.AsSpan(32 * 24, 24).ToArray();
        Assert.Equal(2325.33, solar.Sum(), 0.02);
        Assert.Equal(12, solar.Select((e, h) => e * (h + 0.5)).Sum() / solar.Sum(), 0.1);
    }

    [Fact]
    public void A_year_with_a_month_of_missing_days_is_left_out_and_the_month_named()
    {
        var text = SamplePower.Hourly("LST", "Wh/m^2", 1, t => t is { Year: 2002, Month: 11, Day: <= 9 } ? "-999" : null, 2001, 2002, 2003);
        var reading = Read(text, out var found);
        Assert.Equal([2001, 2003], reading.Series!.Years.AsEnumerable());
        Assert.Equal(["TK144", "TK148"], found.Select(d => d.Code));
        Assert.Contains("November 2002 (9 of 30)", found[0].Message, StringComparison.Ordinal);
    }

    // west of Greenwich the first local hours lie in the year before, east of it the last in the year after
    [Theory]
    [InlineData(-75, -5)]
    [InlineData(172, 11)]
    [InlineData(-3, 0)]
    public void Universal_time_is_turned_into_local_time_and_no_hour_is_lost(int longitude, int offset)
    {
        string Value(DateTime t) => SampleHours.Text(SampleHours.Wh((t.Hour + offset + 24) % 24));
        var text = SamplePower.Hourly("UTC", "Wh/m^2", 1, Value, 2001, 2002).Replace("longitude 30.0", "longitude " + longitude, StringComparison.Ordinal);
        var series = Read(text, out var found).Series!;
        Assert.Empty(found);
        Assert.Equal((2001, 2, offset), (series.FirstYear, series.YearCount, series.UtcOffsetH));
        for (var i = 0; i < 2 * 8760; i++) Assert.Equal(SampleHours.Wh(i % 24), series.GlobalWhPerM2[i]);
    }

    [Fact]
    public void The_29th_of_February_is_left_out()
    {
        var leap = Enumerable.Range(0, 24).Select(h => $"2004,2,29,{h},700,50\n");
        var days = SamplePower.Hourly("LST", "Wh/m^2", 1, null, 2005).Replace("\n2005,", "\n2004,", StringComparison.Ordinal) + string.Concat(leap);
        var reading = Read(days, out var found);
        Assert.Empty(found);
        Assert.Equal(1, reading.Series!.YearCount);
        Assert.Equal(SampleHours.DayKWh, reading.Monthly.IrradiationKWhPerM2[1], 1e-9);
    }

    [Fact]
    public void Few_missing_hours_are_filled()
    {
        var reading = Read(SamplePower.Hourly("LST", "Wh/m^2", 1, t => t is { Month: 11, Day: <= 3, Hour: 12 } ? "-999.0" : null), out var found);
        Assert.Equal("TK146", Assert.Single(found).Code);
        Assert.Equal(SampleHours.DayKWh, reading.Monthly.IrradiationKWhPerM2[10], 1e-9);
    }

    [Theory]
    [InlineData("kW-hr/m^2/day", 1, false)]
    [InlineData("MJ/m^2/day", 3.6, true)]
    [InlineData("Wh/m^2/day", 1000, false)]
    [InlineData("Wh/m^2", 1000, true)]
    [InlineData("W/m^2", 41.6666667, false)]
    public void Days_are_read_in_the_unit_of_the_header(string unit, double perKWh, bool dayOfYear)
    {
        var reading = Read(SamplePower.Daily(unit, perKWh, dayOfYear), out var found);
        Assert.Empty(found);
        Assert.Null(reading.Series);
        Assert.Equal(5, reading.Days!.GlobalKWhPerM2[0]!.Value, 1e-5);
        Assert.Equal([2001], reading.Days.Years.AsEnumerable());
        Assert.Equal(5, reading.Monthly.IrradiationKWhPerM2[0], 1e-5);
        Assert.Equal((29 * 5 + 1) / 30.0, reading.Monthly.IrradiationKWhPerM2[5], 1e-5);
        Assert.Equal((29 * 27 + 33) / 30.0, reading.Monthly.DailyMaxC[5], 1e-6);
        Assert.Equal((3.0, 33.0), (reading.Monthly.RecordLowC, reading.Monthly.RecordHighC));
        Assert.Equal((10.0, 30.0), (reading.Monthly.LatitudeDegrees, reading.Monthly.LongitudeDegrees));
    }

    [Fact]
    public void Missing_days_are_left_out_of_the_means_and_told()
    {
        var reading = Read(SamplePower.Daily("kW-hr/m^2/day", 1, false, global: t => t is { Month: 4, Day: 7 } ? "-999.0" : null), out var found);
        Assert.Equal("TK146", Assert.Single(found).Code);
        Assert.Equal(5, reading.Monthly.IrradiationKWhPerM2[3], 1e-9);
        Assert.Null(reading.Days!.GlobalKWhPerM2[96]);
    }

    [Fact]
    public void A_year_that_ends_early_is_refused_with_its_months()
    {
        var error = Refused(SamplePower.Daily("kW-hr/m^2/day", 1, false, dayCount: 330));
        Assert.Equal("TK145", error.Code);
        Assert.Contains("November 2001 (4 of 30), December 2001 (31 of 31)", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Days_without_extremes_take_them_from_stations()
    {
        var reading = Read(SamplePower.Daily("kW-hr/m^2/day", 1, false, extremes: false), out var found);
        Assert.Equal(["TK136", "TK138"], found.Select(d => d.Code));
        Assert.Equal(20, reading.Monthly.MeanC[0], 1e-9);
        Assert.True(reading.Monthly.DailyMaxC[0] > 20);
    }

    [Fact]
    public void A_file_saved_by_a_spreadsheet_with_semicolons_is_read()
    {
        var lines = SamplePower.Daily("kW-hr/m^2/day", 1.1, false).Split('\n');
        var end = Array.FindIndex(lines, l => l.StartsWith("-END", StringComparison.Ordinal));
        var text = string.Join("\r\n", lines.Select((l, i) => i > end ? l.Replace(',', ';').Replace('.', ',') : l + ";;;;;;"));
        Assert.Equal(5.5, Read(text, out _).Monthly.IrradiationKWhPerM2[0], 1e-9);
    }

    [Fact]
    public void Months_of_several_years_are_averaged()
    {
        var text = SamplePower.Head("LST", "kW-hr/m^2/day", "T2M_MAX     Temperature at 2 Meters Maximum (C)") + """
            PARAMETER,YEAR,JAN,FEB,MAR,APR,MAY,JUN,JUL,AUG,SEP,OCT,NOV,DEC,ANN
            ALLSKY_SFC_SW_DWN,2001,5,5,5,5,5,5,5,5,5,5,5,5,5
            ALLSKY_SFC_SW_DWN,2002,6,6,6,6,6,6,6,6,6,6,6,-999,-999
            T2M,2001,20,20,20,20,20,20,20,20,20,20,20,20,20
            T2M,2002,22,22,22,22,22,22,22,22,22,22,22,22,22
            T2M_MAX,2001,40,40,40,40,40,40,40,40,40,40,40,40,40
            """;
        var reading = Read(text, out var found);
        Assert.Equal(["TK140", "TK144", "TK136", "TK138"], found.Select(d => d.Code));
        Assert.Contains("December 2002", found[1].Message, StringComparison.Ordinal);
        Assert.Equal((5.5, 5.0, 21.0), (reading.Monthly.IrradiationKWhPerM2[0], reading.Monthly.IrradiationKWhPerM2[11], reading.Monthly.MeanC[0]));
        Assert.True(reading.Monthly.DailyMaxC[0] < 40);
    }

    // layout and values of a real answer: 48.066 N 7.923 E, January 1.0, December 0.81 kWh/m2 a day (read)
    [Fact]
    public void A_climatology_in_json_is_read()
    {
        const string Values = """
            "ALLSKY_SFC_SW_DWN":{"JAN":1.0,"FEB":1.76,"MAR":3.04,"APR":4.46,"MAY":5.21,"JUN":5.87,"JUL":5.67,"AUG":4.83,"SEP":3.72,"OCT":2.2,"NOV":1.15,"DEC":0.81,"ANN":3.32}
            """;
        var text = SamplePower.Json(Values, "kW-hr/m^2/day", "\"range\":\"20-year Meteorological and Solar Monthly & Annual Climatologies (January 2001 - December 2020)\"")
            .Replace("[30.0,10.0,100.0]", "[7.922605494683933,48.066150833174866,702.23]", StringComparison.Ordinal);
        var reading = Read(text, out var found);
        Assert.Equal(["TK136", "TK138"], found.Select(d => d.Code));
        Assert.Equal((1.0, 0.81), (reading.Monthly.IrradiationKWhPerM2[0], reading.Monthly.IrradiationKWhPerM2[11]));
        Assert.Equal(48.0661508, reading.Monthly.LatitudeDegrees, 1e-6);
        Assert.Contains("(January 2001 - December 2020)", reading.Monthly.Source, StringComparison.Ordinal);
        Assert.DoesNotContain(ReferenceClimate.Examine(reading.Monthly, Place.Nowhere), d => d.Severity == Severity.Error);
        var megajoules = text.Replace("kW-hr/m^2/day", "MJ/m^2/day", StringComparison.Ordinal);
        Assert.Equal(1 / 3.6, Read(megajoules, out _).Monthly.IrradiationKWhPerM2[0], 1e-6);
    }

    [Fact]
    public void Days_and_hours_in_json_are_read()
    {
        string Days(string name, double value) => $"\"{name}\":{{" + string.Join(',', Enumerable.Range(0, 365).Select(d => string.Create(CultureInfo.InvariantCulture, $"\"{new DateTime(2001, 1, 1).AddDays(d):yyyyMMdd}\":{value}"))) + "}";
        var days = SamplePower.Json(string.Join(',', Days("ALLSKY_SFC_SW_DWN", 18), Days("T2M", 20), Days("T2M_MAX", 27), Days("T2M_MIN", 14)), "MJ/m^2/day", "\"time_standard\":\"LST\",\"start\":\"20010101\",\"end\":\"20011231\"");
        var daily = Read(days, out var found);
        Assert.Empty(found);
        Assert.All(daily.Monthly.IrradiationKWhPerM2, h => Assert.Equal(5, h, 1e-9));
        Assert.Contains("20010101 to 20011231", daily.Monthly.Source, StringComparison.Ordinal);

        string Hours(string name, Func<DateTime, double> value) => $"\"{name}\":{{" + string.Join(',', SampleHours.Hours(2001).Select(t => string.Create(CultureInfo.InvariantCulture, $"\"{t:yyyyMMddHH}\":{value(t.AddHours(2))}"))) + "}";
        var hours = SamplePower.Json(Hours("ALLSKY_SFC_SW_DWN", t => SampleHours.Wh(t.Hour)) + "," + Hours("T2M", t => SampleHours.AirC(t.Month, t.Hour)), "Wh/m^2", "\"time_standard\":\"UTC\"");
        var series = Read(hours, out _).Series!;
        Assert.Equal(SampleHours.Wh(12), series.GlobalWhPerM2[100 * 24 + 12]);
    }

    [Theory]
    [InlineData("(Wh/m^2)", "(furlongs)", "TK142")]
    [InlineData("(Wh/m^2)", "(kW-hr/m^2/day)", "TK142")]
    [InlineData("Meters (C)", "Meters (K)", "TK142")]
    [InlineData("ALLSKY_SFC_SW_DWN  ", "ALLSKY_SFC_SW_DIFF  ", "TK142")]
    [InlineData("T2M  ", "T2MDEW  ", "TK142")]
    [InlineData("-END HEADER-", "", "TK142")]
    [InlineData("latitude  10.0", "latitude  north", "TK142")]
    [InlineData("YEAR,MO,DY,HR", "YEAR,MO,HR,XX", "TK142")]
    [InlineData("2001,1,1,5,", "2001,13,1,5,", "TK143")]
    [InlineData("2001,1,1,5,", "2001,1,1,24,", "TK143")]
    [InlineData("2001,1,1,5,", "2001,1,1,4,", "TK143")]
    [InlineData("2001,1,1,5,0", "2001,1,1,5,x", "TK143")]
    [InlineData("2001,1,1,5,0,", "2001,1,1,5,0", "TK143")]
    public void What_cannot_be_read_is_refused(string text, string by, string code)
    {
        var error = Refused(SamplePower.Hourly("LST", "Wh/m^2", 1).Replace(text, by, StringComparison.Ordinal));
        Assert.Equal(code, error.Code);
        if (code == "TK143") Assert.Equal(18, error.Place.Row);
    }

    [Theory]
    [InlineData("{\"type\":\"Feature\",\n\"geometry\":{\"coor", "TK143")]
    [InlineData("{\"messages\":[\"too many requests\"]}", "TK142")]
    [InlineData("{\"geometry\":{\"coordinates\":[30,10]},\"properties\":{\"parameter\":{\"WS10M\":{\"JAN\":1}}}}", "TK142")]
    [InlineData("{\"geometry\":{\"coordinates\":[30,10]},\"properties\":{\"parameter\":{\"T2M\":{\"JANUARY\":1}}}}", "TK142")]
    public void Json_that_cannot_be_read_is_refused(string text, string code) => Assert.Equal(code, Refused(text).Code);

    /// <summary>Reads a file; the notes on too few years and on days, which are of the grade, are left to <see cref="ClimateGradeOfFileTests"/>.</summary>
    private static ClimateReading Read(string text, out IReadOnlyList<Diagnostic> found)
    {
        var outcome = ClimateFile.Read("power.dat", SampleHours.Bytes(text), null, null);
        found = [.. outcome.Diagnostics.Where(d => d.Code != "TK130" && !d.Message.StartsWith("days give", StringComparison.Ordinal))];
        Assert.True(outcome.Value is not null, string.Join('\n', found));
        return outcome.Value!;
    }

    private static Diagnostic Refused(string text)
    {
        var outcome = ClimateFile.Read("power.dat", SampleHours.Bytes(text), null, null);
        Assert.Null(outcome.Value);
        Assert.All(outcome.Diagnostics, d => Assert.Equal((outcome.Diagnostics[0].Code, Severity.Error), (d.Code, d.Severity)));
        return outcome.Diagnostics[0];
    }
}
