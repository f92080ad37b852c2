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
