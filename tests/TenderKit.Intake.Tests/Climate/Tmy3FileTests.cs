using TenderKit.Intake.Climate;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Intake.Tests.Climate;

public sealed class Tmy3FileTests
{
    // in the head of a TMY3 file the offset stands before the coordinates, in an EPW file after them
    [Fact]
    public void A_year_is_read_and_the_head_in_its_own_order()
    {
        var outcome = Tmy3File.Read("made.csv", SampleHours.Bytes(SampleHours.Tmy3()));
        Assert.Empty(outcome.Diagnostics);
        var series = outcome.Value!;
        Assert.Equal((10.0, 30.0, 2.0), (series.LatitudeDegrees, series.LongitudeDegrees, series.UtcOffsetH));
        Assert.Equal(SeriesKind.TypicalYear, series.Kind);
        Assert.Equal(SampleHours.Wh(11), series.GlobalWhPerM2[11]);
        Assert.Equal(26, series.AirC[13]);
        Assert.Equal("typical year TMY3 of Made, by hand, XX, station 123456", series.Source);
    }

    // the heads are those of a public file, Honolulu: -10.0 h, 21.317 N, 157.933 W (read)
    [Fact]
    public void Offset_and_coordinates_of_a_real_head_are_told_apart()
    {
        var text = SampleHours.Tmy3().Replace("123456,\"Made, by hand\",XX,2.0,10.0,30.0,100", "911820,\"HONOLULU INTL ARPT\",HI,-10.0,21.317,-157.933,2", StringComparison.Ordinal);
        var series = Tmy3File.Read("made.csv", SampleHours.Bytes(text)).Value!;
        Assert.Equal((21.317, -157.933, -10.0), (series.LatitudeDegrees, series.LongitudeDegrees, series.UtcOffsetH));
    }

    // the 68 headings and the hour ending 12:00 of 1 January of a public file, Honolulu: 707 Wh/m2, 28.3 degC (read)
    [Fact]
    public void The_columns_of_a_real_file_are_found_by_their_headings()
    {
        const string Headings = "Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),ETRN (W/m^2),GHI (W/m^2),GHI source,GHI uncert (%),DNI (W/m^2),DNI source,DNI uncert (%),DHI (W/m^2),DHI source,DHI uncert (%),GH illum (lx),GH illum source,Global illum uncert (%),DN illum (lx),DN illum source,DN illum uncert (%),DH illum (lx),DH illum source,DH illum uncert (%),Zenith lum (cd/m^2),Zenith lum source,Zenith lum uncert (%),TotCld (tenths),TotCld source,TotCld uncert (code),OpqCld (tenths),OpqCld source,OpqCld uncert (code),Dry-bulb (C),Dry-bulb source,Dry-bulb uncert (code),Dew-point (C),Dew-point source,Dew-point uncert (code),RHum (%),RHum source,RHum uncert (code),Pressure (mbar),Pressure source,Pressure uncert (code),Wdir (degrees),Wdir source,Wdir uncert (code),Wspd (m/s),Wspd source,Wspd uncert (code),Hvis (m),Hvis source,Hvis uncert (code),CeilHgt (m),CeilHgt source,CeilHgt uncert (code),Pwat (cm),Pwat source,Pwat uncert (code),AOD (unitless),AOD source,AOD uncert (code),Alb (unitless),Alb source,Alb uncert (code),Lprecip depth (mm),Lprecip quantity (hr),Lprecip source,Lprecip uncert (code),PresWth (METAR code),PresWth source,PresWth uncert (code)";
        const string Noon = "01/01/1987,12:00,961,1415,707,1,9,935,1,9,39,1,13,721,1,9,935,1,9,84,1,13,132,1,18,1,A,7,1,A,7,28.3,A,7,20.0,A,7,61,A,7,1017,A,7,200,A,7,3.6,A,7,40200,B,7,77777,A,7,3.6,E,8,0.000,F,8,0.00,?,0,0,1,D,9,00,C,8";
        var night = Noon.Split(',');
        var lines = SampleHours.Tmy3().Split('\n').Select((l, i) => i < 2 ? (i == 0 ? l : Headings) : l.Length == 0 ? l : l.StartsWith("01/01/1991,12:00", StringComparison.Ordinal) ? Noon : Row(l.Split(','), night));
        var series = Tmy3File.Read("made.csv", SampleHours.Bytes(string.Join('\n', lines))).Value!;
        Assert.Equal((707, 28.3), (series.GlobalWhPerM2[11], series.AirC[11]));
        Assert.Equal((0, 21), (series.GlobalWhPerM2[0], series.AirC[0]));
        static string Row(string[] own, string[] like) => string.Join(',', like.Select((f, i) => i switch { 0 => own[0], 1 => own[1], 4 => own[3], 31 => own[5], _ => f }));
    }

    [Fact]
    public void Missing_hours_are_filled_and_told()
    {
        var text = SampleHours.Tmy3(t => t is { Month: 1, Day: 2, Hour: 9 } ? "-9900" : SampleHours.Text(SampleHours.Wh(t.Hour)));
        var outcome = Tmy3File.Read("made.csv", SampleHours.Bytes(text));
        Assert.Equal("TK146", Assert.Single(outcome.Diagnostics).Code);
        Assert.Equal(SampleHours.Wh(9), outcome.Value!.GlobalWhPerM2[24 + 9]);
    }

    [Theory]
    [InlineData("01/01/1991,03:00", "01/01/1991,03:30", "TK143", 5)]
    [InlineData("01/01/1991,03:00", "01.01.1991,03:00", "TK143", 5)]
    [InlineData("01/01/1991,03:00", "01/01/1991,04:00", "TK143", 5)]
    [InlineData("GHI (W/m^2)", "GHI (kJ/m^2)", "TK142", 2)]
    [InlineData("Dry-bulb (C)", "Dry-bulb (F)", "TK142", 2)]
    [InlineData(",2.0,10.0,", ",2.0,100.0,", "TK142", 1)]
    public void What_cannot_be_read_is_refused_by_its_line(string text, string by, string code, int line)
    {
        var outcome = Tmy3File.Read("made.csv", SampleHours.Bytes(SampleHours.Tmy3().Replace(text, by, StringComparison.Ordinal)));
        Assert.Null(outcome.Value);
        var error = Assert.Single(outcome.Diagnostics);
        Assert.Equal((code, line), (error.Code, error.Place.Row));
    }
}
