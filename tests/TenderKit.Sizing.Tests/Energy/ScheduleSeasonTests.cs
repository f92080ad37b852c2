using System.Collections.Immutable;
using CsCheck;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class ScheduleSeasonTests
{
    private static readonly ScheduleSeason Winter = new(YearDay.Of(1, 11), YearDay.Of(31, 3), [], 1);
    private static readonly LightingSchedule Seasonal = new("seasonal", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 1)], 0) { Seasons = [Winter] };

    [Theory]
    [InlineData(1, 1, 1, "1 Jan")]
    [InlineData(28, 2, 59, "28 Feb")]
    [InlineData(29, 2, 59, "28 Feb")]
    [InlineData(1, 3, 60, "1 Mar")]
    [InlineData(1, 11, 305, "1 Nov")]
    [InlineData(31, 12, 365, "31 Dec")]
    public void Days_of_the_year(int day, int month, int dayOfYear, string text)
    {
        Assert.Equal(dayOfYear, YearDay.Of(day, month));
        Assert.Equal(text, YearDay.Text(dayOfYear));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(30, 2)]
    [InlineData(31, 4)]
    [InlineData(1, 13)]
    public void Days_that_do_not_exist(int day, int month) => Assert.Throws<ArgumentOutOfRangeException>(() => YearDay.Of(day, month));

    // by hand: night of 12 h; four hours in summer, twelve from 1 November to 31 March
    [Fact]
    public void A_season_goes_over_the_end_of_the_year()
    {
        var lamp = ScheduleHours.For(Seasonal, Fixed(18, 6));
        Assert.Equal([12.0, 12, 12, 4, 4, 4, 4, 4, 4, 4, 12, 12], lamp.MonthlyFullHours.Select(h => Math.Round(h, 9)));

        // the night of 31 March ends on the morning of 1 April, that of 31 October burns no morning
        Assert.Equal(1, lamp.HourFraction[(YearDay.Of(1, 4) - 1) * 24 + 5]);
        Assert.Equal(0, lamp.HourFraction[(YearDay.Of(2, 4) - 1) * 24 + 5]);
        Assert.Equal(0, lamp.HourFraction[(YearDay.Of(1, 11) - 1) * 24 + 5]);
        Assert.Equal(1, lamp.HourFraction[(YearDay.Of(2, 11) - 1) * 24 + 5]);
        Assert.Equal(1, lamp.HourFraction[5]);
    }

    [Fact]
    public void A_season_of_one_day_is_one_night()
    {
        var festival = Seasonal with { Seasons = [new ScheduleSeason(200, 200, [], 1)] };
        Assert.Equal(365 * 4 + 8, ScheduleHours.For(festival, Fixed(18, 6)).HourFraction.Sum(), 1e-9);
    }

    [Fact]
    public void Levels_of_the_longest_month_are_those_of_its_season() =>
        Assert.Equal([(1.0, 12.0)], ScheduleHours.LevelHours(Seasonal, Fixed(18, 6)).Select(l => (l.LevelFraction, Math.Round(l.MeanNightH, 9))));

    [Fact]
    public void All_programmes_and_levels_are_known()
    {
        Assert.Equal(2, Seasonal.Programmes.Length);
        Assert.All(Seasonal.Programmes, p => Assert.Empty(p.Seasons));
        Assert.Equal([1.0, 0, 1], Seasonal.Levels);
        Assert.Same(LightingSchedule.DuskToDawn, LightingSchedule.DuskToDawn.On(1));
    }

    [Fact]
    public void TK315_overlapping_seasons_and_TK316_dates_of_change()
    {
        Assert.Equal(["TK316"], Codes(Seasonal));
        Assert.Contains("2 dates", ScheduleHours.Examine(Seasonal, Fixed(18, 6), Place.Nowhere)[0].Message, StringComparison.Ordinal);
        var twice = Seasonal with { Seasons = [Winter, new ScheduleSeason(YearDay.Of(1, 3), YearDay.Of(30, 6), [], 0.5)] };
        Assert.Equal(["TK315", "TK316"], Codes(twice));
        var overlap = ScheduleHours.Examine(twice, Fixed(18, 6), Place.Nowhere)[0];
        Assert.Equal(Severity.Warning, overlap.Severity);
        Assert.Contains("31 days, 1 Mar", overlap.Message, StringComparison.Ordinal);
        Assert.Equal(12, ScheduleHours.For(twice, Fixed(18, 6)).MonthlyFullHours[2], 1e-9); // the first holds
    }

    [Fact]
    public void Without_seasons_nothing_changes() =>
        Gen.Select(Gen.Double[-65, 65], Gen.Double[0, 6], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((latitude, hours, level, presence) =>
        {
            var nights = NightCalendar.ForLatitude(latitude, -0.833);
            ImmutableArray<SchedulePart> parts = [new(NightAnchor.Dusk, 0, NightAnchor.Dusk, hours, level, presence)];
            var plain = ScheduleHours.For(new LightingSchedule("a", parts, 0.2), nights);
            var all = ScheduleHours.For(new LightingSchedule("a", [], 0) { Seasons = [new ScheduleSeason(1, 365, parts, 0.2)] }, nights);
            return plain.HourFraction.SequenceEqual(all.HourFraction) && plain.MonthlyFullHours.SequenceEqual(all.MonthlyFullHours);
        }, iter: 20);

    // polar night: the sun stays down, dusk and dawn both at 12: a night of 24 h from noon to noon, its middle at midnight
    [Fact]
    public void Polar_night_burns_day_and_night_and_midnight_is_its_middle()
    {
        var nights = NightCalendar.ForLatitude(75, -0.833);
        Assert.Equal(24, ScheduleHours.For(LightingSchedule.DuskToDawn, nights).MonthlyFullHours[11], 1e-9);
        var middle = new LightingSchedule("middle", [new SchedulePart(NightAnchor.Midnight, -3, NightAnchor.Midnight, 3, 1)], 0);
        var december = ScheduleHours.For(middle, nights).HourFraction.AsSpan(350 * 24, 24).ToArray();
        Assert.Equal([0, 1, 2, 21, 22, 23], Enumerable.Range(0, 24).Where(h => december[h] > 0));
    }

    // night of 2 h about midnight: parts of four hours after dusk and two before dawn cover it all, levels do not add up
    [Fact]
    public void A_night_shorter_than_its_parts_is_lit_once()
    {
        var schedule = new LightingSchedule("village", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 1), new SchedulePart(NightAnchor.Dawn, -2, NightAnchor.Dawn, 0, 0.5)], 0.3);
        Assert.All(ScheduleHours.For(schedule, Fixed(23, 1)).MonthlyFullHours, h => Assert.Equal(2, h, 1e-9));
        var short5 = new LightingSchedule("middle", [new SchedulePart(NightAnchor.Midnight, -5, NightAnchor.Midnight, 5, 1)], 0);
        Assert.All(ScheduleHours.For(short5, Fixed(23, 1)).MonthlyFullHours, h => Assert.Equal(2, h, 1e-9));
    }

    // by hand: two parts with detection over each other, 12 h: 0.3 at 100 %, of the remaining 0.7 half at 60 %, the rest at 20 %
    [Fact]
    public void Detection_falls_through_the_lower_parts()
    {
        var schedule = new LightingSchedule(
            "sensors", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dawn, 0, 1, 0.3), new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dawn, 0, 0.6, 0.5)], 0.2);
        Assert.All(ScheduleHours.For(schedule, Fixed(18, 6)).MonthlyFullHours, h => Assert.Equal(12 * (0.3 + 0.35 * 0.6 + 0.35 * 0.2), h, 1e-9));
    }

    private static string[] Codes(LightingSchedule schedule) => [.. ScheduleHours.Examine(schedule, Fixed(18, 6), Place.Nowhere).Select(d => d.Code)];

    private static ImmutableArray<NightOfYear> Fixed(double dusk, double dawn) => [.. Enumerable.Range(1, 365).Select(d => new NightOfYear(d, dusk, dawn))];
}
