using CsCheck;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class NightCalendarTests
{
    // Derived from sunrise and sunset of NREL SPA at Golden, 2 January 2015 (read): 24 h less 9 h 25 min 48 s; tolerance 2 min
    [Fact]
    public void Night_of_Golden() => Assert.Equal(14 + 34 / 60.0 + 12 / 3600.0, NightCalendar.ForLatitude(39.742476, -0.833)[1].DarkH, 2 / 60.0);

    // Night lengths of 21 December derived for the two places of the street light example of SAND87-7023, with refraction (elevation -0.833 degrees); tolerance 0.1 h
    [Theory]
    [InlineData(32.7, 14.0)]
    [InlineData(47.6, 15.6)]
    public void Longest_night(double latitude, double hours) => Assert.Equal(hours, NightCalendar.ForLatitude(latitude, -0.833).Max(n => n.DarkH), 0.1);

    // Lighting guide, coarse: winter solstice, New York about 14.5 h, Florida about 13.25 h; read; tolerance 0.5 h
    [Theory]
    [InlineData(40.7, 14.5)]
    [InlineData(26, 13.25)]
    public void Longest_night_quoted(double latitude, double hours) => Assert.Equal(hours, NightCalendar.ForLatitude(latitude, 0).Max(n => n.DarkH), 0.5);

    [Fact]
    public void Polar_day_has_no_darkness_and_polar_night_no_end()
    {
        var north = NightCalendar.ForLatitude(90, -0.833);
        Assert.Equal(0, north[171].DarkH);
        Assert.Equal(24, north[354].DarkH);
        Assert.Equal((24.0, 0.0), (north[171].DuskH, north[171].DawnH));
        Assert.Equal((12.0, 12.0), (north[354].DuskH, north[354].DawnH));
    }

    [Fact]
    public void Every_latitude_and_elevation_gives_365_plain_nights() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-6, 3]).Sample((latitude, elevation) =>
        {
            var nights = NightCalendar.ForLatitude(latitude, elevation);
            return nights.Length == 365 && nights.All(n => n.DarkH is >= 0 and <= 24 && n.DuskH is >= 12 and <= 24 && n.DawnH is >= 0 and <= 12);
        });

    [Fact]
    public void A_lower_switching_elevation_shortens_the_night() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[-6, 2]).Sample((latitude, elevation) =>
            NightCalendar.ForLatitude(latitude, elevation).Zip(NightCalendar.ForLatitude(latitude, elevation + 1)).All(p => p.First.DarkH <= p.Second.DarkH));

    [Fact]
    public void Monthly_means_average_to_the_year()
    {
        var nights = NightCalendar.ForLatitude(-13.5, -0.833);
        var months = NightCalendar.MonthlyMeanDarkH(nights);
        Assert.Equal(nights.Sum(n => n.DarkH), Enumerable.Range(1, 12).Sum(m => months[m - 1] * MonthDays.Count(m)), 1e-9);
        Assert.Equal(5, months.IndexOf(months.Max()));
    }
}
