using System.Text;
using TenderKit.Intake.Climate;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Intake.Tests.Climate;

public sealed class MonthlyClimateFileTests
{
    private const string Good = """
        # source: national weather service, station 12, 1991-2020
        # record_low_c: 4
        # record_high_c: 41
        month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c
        Jan,5.20,22.5,27.4,18.1
        Feb,5.31,22.4,27.3,18.0
        Mar,5.44,22.2,27.5,17.4
        Apr,5.62,21.1,27.1,15.6
        May,5.51,18.9,26.0,12.0
        Jun,5.20,16.8,24.3,9.4
        Jul,5.24,16.5,24.2,9.0
        Aug,5.90,18.4,26.3,10.5
        Sep,6.51,21.6,29.3,13.9
        Oct,6.72,24.1,31.0,17.0
        Nov,6.21,24.2,30.1,18.4
        Dec,5.43,23.0,28.1,18.4
        Year,5.69,21.0,27.4,14.8
        """;

    [Fact]
    public void A_good_file_is_read_whole()
    {
        var outcome = Read(Good);
        Assert.Empty(outcome.Diagnostics);
        var climate = outcome.Value!;
        Assert.Equal(5.20, climate.IrradiationKWhPerM2[0]);
        Assert.Equal(5.43, climate.IrradiationKWhPerM2[11]);
        Assert.Equal(24.1, climate.MeanC[9]);
        Assert.Equal(31.0, climate.DailyMaxC[9]);
        Assert.Equal(9.0, climate.DailyMinC[6]);
        Assert.Equal((4.0, 41.0), (climate.RecordLowC, climate.RecordHighC));
        Assert.Equal("national weather service, station 12, 1991-2020", climate.Source);
        Assert.Equal(ClimateGrade.MeansWithSource, climate.Grade);
        Assert.Empty(ReferenceClimate.Examine(climate, Place.Nowhere));
    }

    [Theory]
    [InlineData("irradiation_wh_m2_day", 1000)]
    [InlineData("GHI (MJ/m\u00B2/day)", 3.6)]
    [InlineData("Global irradiation [kWh/m2/d]", 1)]
    public void Units_of_the_heading_are_followed(string heading, double factor)
    {
        var text = string.Join('\n', Good.Split('\n').Select(l => Scaled(l, factor))).Replace("irradiation_kwh_m2_day", heading, StringComparison.Ordinal);
        var climate = Read(text).Value!;
        Assert.Equal(5.20, climate.IrradiationKWhPerM2[0], 1e-6);
        Assert.Equal(6.72, climate.IrradiationKWhPerM2[9], 1e-6);
    }

    // by hand: 161.2 kWh/m2 in January is 5.2 a day; 148.68 in February is 5.31 over 28 days
    [Fact]
    public void Month_totals_are_divided_by_their_days()
    {
        var text = Good.Replace("irradiation_kwh_m2_day", "irradiation_kwh_m2_month", StringComparison.Ordinal)
            .Replace("Jan,5.20", "Jan,161.2", StringComparison.Ordinal).Replace("Feb,5.31", "Feb,148.68", StringComparison.Ordinal);
        Assert.Equal([5.2, 5.31], Read(text).Value!.IrradiationKWhPerM2.Take(2).Select(h => Math.Round(h, 9)));
    }

    [Fact]
    public void Months_may_stand_across_and_decimals_have_commas()
    {
        const string Text = """
            source;service m\u00E9t\u00E9o
            mesure;janv;f\u00E9vr;mars;avr;mai;juin;juil;ao\u00FBt;sept;oct;nov;d\u00E9c;ann\u00E9e
            irradiation (kWh/m2/jour);5,2;5,3;5,4;5,6;5,5;5,2;5,2;5,9;6,5;6,7;6,2;5,4;5,7
            t max;27,4;27,3;27,5;27,1;26;24,3;24,2;26,3;29,3;31;30,1;28,1;27,4
            t min;18,1;18;17,4;15,6;12;9,4;9;10,5;13,9;17;18,4;18,4;14,8
            """;
        var outcome = Read(System.Text.RegularExpressions.Regex.Unescape(Text));
        Assert.Equal(["TK138"], outcome.Diagnostics.Select(d => d.Code));
        Assert.Equal(5.9, outcome.Value!.IrradiationKWhPerM2[7]);
        Assert.Equal((27.4 + 18.1) / 2, outcome.Value.MeanC[0], 1e-9);
        Assert.Equal(-1, outcome.Value.RecordLowC, 1e-9);
    }

    [Fact]
    public void A_missing_month_is_refused_by_name()
    {
        var text = string.Join('\n', Good.Split('\n').Where(l => !l.StartsWith("Jun", StringComparison.Ordinal)));
        var outcome = Read(text);
        Assert.Null(outcome.Value);
        Assert.All(outcome.Diagnostics, d => Assert.Equal("TK133", d.Code));
        Assert.Contains("June", outcome.Diagnostics[0].Message, StringComparison.Ordinal);
        Assert.Equal(("own.csv", 4), (outcome.Diagnostics[0].Place.File, outcome.Diagnostics[0].Place.Row));
    }

    [Theory]
    [InlineData("Apr,5.62", "Apr,n/a", "TK134", 8)]
    [InlineData("Apr,5.62", "Apr,-999", "TK134", 8)]
    [InlineData("Apr,5.62", "Apr,-0.2", "TK134", 8)]
    [InlineData("Apr,5.62", "Mar,5.62", "TK135", 8)]
    [InlineData("irradiation_kwh_m2_day", "irradiation", "TK132", 4)]
    [InlineData("irradiation_kwh_m2_day", "sunshine", "TK132", null)]
    [InlineData("# record_low_c: 4", "# record_low_c: cold", "TK134", 2)]
    [InlineData("month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c", "a,b,c,d,e", "TK131", null)]
    public void Refusals_name_code_and_row(string was, string becomes, string code, int? row)
    {
        var outcome = Read(Good.Replace(was, becomes, StringComparison.Ordinal));
        Assert.Null(outcome.Value);
        var found = outcome.Diagnostics.First(d => d.Code == code);
        Assert.Equal(Severity.Error, found.Severity);
        Assert.Equal(row, found.Place.Row);
    }

    [Fact]
    public void Without_temperatures_they_come_from_the_stations_and_a_note_says_so()
    {
        var text = string.Join('\n', Good.Split('\n').Select(l => l.StartsWith('#') ? l : string.Join(',', l.Split(',').Take(2))));
        var outcome = Read(text);
        Assert.Equal(["TK136"], outcome.Diagnostics.Select(d => d.Code));
        Assert.Equal(12, outcome.Value!.MeanC.Length);
        Assert.NotNull(outcome.Value.TemperatureStationKm);
        for (var m = 0; m < 12; m++) Assert.InRange(outcome.Value.MeanC[m], outcome.Value.DailyMinC[m], outcome.Value.DailyMaxC[m]);
    }

    [Fact]
    public void Without_temperatures_and_place_the_file_is_refused_until_it_names_its_place()
    {
        var bare = string.Join('\n', Good.Split('\n').Select(l => l.StartsWith('#') ? l : string.Join(',', l.Split(',').Take(2))));
        Assert.Equal("TK139", Assert.Single(MonthlyClimateFile.Read(TableOf(bare)).Diagnostics).Code);
        var placed = MonthlyClimateFile.Read(TableOf("# latitude: -13.97\n# longitude: 33.79\n" + bare)).Value!;
        Assert.Equal((-13.97, 33.79), (placed.LatitudeDegrees, placed.LongitudeDegrees));
        Assert.Equal(Read(bare).Value!.MeanC.ToArray(), placed.MeanC.ToArray());
        Assert.Equal(["TK134"], MonthlyClimateFile.Read(TableOf("# latitude: 1397\n" + Good)).Diagnostics.Select(d => d.Code));
        Assert.NotNull(MonthlyClimateFile.Read(TableOf(Good)).Value);
    }

    // Layout of a csv answer of the NASA POWER service (read); the figures are invented
    [Theory]
    [InlineData("kW-hr/m^2/day", 1)]
    [InlineData("MJ/m^2/day", 3.6)]
    public void A_power_climatology_is_read_with_its_unit_and_place(string unit, double factor)
    {
        var sun = string.Join(',', new[] { 5.2, 5.3, 5.4, 5.6, 5.5, 5.2, 5.2, 5.9, 6.5, 6.7, 6.2, 5.4, 5.7 }.Select(h => (h * factor).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)));
        var text = $"""
            -BEGIN HEADER-
            NASA/POWER Source Native Resolution Climatology in LST
            20-year Meteorological and Solar Monthly & Annual Climatologies (January 2001 - December 2020)
            Location: Latitude  -13.97   Longitude 33.79
            The value for missing source data that cannot be computed or is outside of the sources availability range: -999
            Parameter(s):
            ALLSKY_SFC_SW_DWN     CERES SYN1deg All Sky Surface Shortwave Downward Irradiance ({unit})
            T2M                   MERRA-2 Temperature at 2 Meters (C)
            T2M_MAX               MERRA-2 Temperature at 2 Meters Maximum (C)
            -END HEADER-
            PARAMETER,JAN,FEB,MAR,APR,MAY,JUN,JUL,AUG,SEP,OCT,NOV,DEC,ANN
            ALLSKY_SFC_SW_DWN,{sun}
            T2M,22.5,22.4,22.2,21.1,18.9,16.8,16.5,18.4,21.6,24.1,24.2,23.0,21.0
            T2M_MAX,31,31,31,30,29,28,28,31,34,36,35,32,36
            """;
        var outcome = MonthlyClimateFile.Read(TableOf(text));
        Assert.Equal(["TK140", "TK136", "TK138"], outcome.Diagnostics.Select(d => d.Code));
        var climate = outcome.Value!;
        Assert.Equal(5.2, climate.IrradiationKWhPerM2[0], 0.002);
        Assert.Equal(22.5, climate.MeanC[0]);
        Assert.Equal((-13.97, 33.79), (climate.LatitudeDegrees, climate.LongitudeDegrees));
        Assert.Equal(ClimateGrade.SatelliteSeries, climate.Grade);
        Assert.Contains("NASA POWER", climate.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Mean_temperatures_alone_keep_the_daily_range_of_the_stations()
    {
        var text = string.Join('\n', Good.Split('\n').Select(l => l.StartsWith('#') ? l : string.Join(',', l.Split(',').Take(3))));
        var climate = Read(text).Value!;
        Assert.Equal(22.5, climate.MeanC[0]);
        for (var m = 0; m < 12; m++) Assert.InRange(climate.MeanC[m], climate.DailyMinC[m], climate.DailyMaxC[m]);
    }

    [Fact]
    public void Without_a_source_the_grade_falls()
    {
        var outcome = Read(Good.Replace("# source: national weather service, station 12, 1991-2020\n", "", StringComparison.Ordinal));
        Assert.Equal(["TK137"], outcome.Diagnostics.Select(d => d.Code));
        Assert.Equal(ClimateGrade.Unsourced, outcome.Value!.Grade);
    }

    private static Outcome<MonthlyClimate> Read(string text) => MonthlyClimateFile.Read(TableOf(text), -13.97, 33.79);

    private static Table TableOf(string text) =>
        Assert.Single(TableReader.Read(Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n")), "own.csv").Value!.Tables);

    private static string Scaled(string line, double factor)
    {
        var cells = line.Split(',');
        if (line.StartsWith('#') || cells[0] == "month") return line;
        cells[1] = (double.Parse(cells[1], System.Globalization.CultureInfo.InvariantCulture) * factor).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);
        return string.Join(',', cells);
    }
}
