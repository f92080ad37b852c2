using CsCheck;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class ScheduleHoursTests
{
    private static readonly LightingSchedule Village = new(
        "village",
        [
            new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 1),
            new SchedulePart(NightAnchor.Dawn, -2, NightAnchor.Dawn, 0, 1),
        ],
        0.3);

    [Fact]
    public void Dusk_to_dawn_is_the_whole_night()
    {
        var nights = NightCalendar.ForLatitude(-13.5, -0.833);
        var lamp = ScheduleHours.For(LightingSchedule.DuskToDawn, nights);
        Assert.Equal(nights.Sum(n => n.DarkH), lamp.HourFraction.Sum(), 1e-6);
        Assert.All(nights, n => Assert.Equal(n.DarkH, lamp.HourFraction.AsSpan((n.DayOfYear - 1) * 24, 24).ToArray().Sum(), 1e-9));
    }

    // by hand: night 18:15 to 5:45, 11.5 h: 4 h and 2 h full, 5.5 h at 0.3 = 7.65 h
    [Fact]
    public void Parts_and_rest()
    {
        var nights = Fixed(18.25, 5.75);
        var lamp = ScheduleHours.For(Village, nights);
        Assert.All(lamp.MonthlyFullHours, h => Assert.Equal(7.65, h, 1e-9));
        var day = lamp.HourFraction.AsSpan(24, 24).ToArray();
        Assert.Equal(0, day[17]);
        Assert.Equal(0.75, day[18], 1e-12);
        Assert.Equal(1, day[21], 1e-12);
        Assert.Equal(0.25 + 0.75 * 0.3, day[22], 1e-12);
        Assert.Equal(0.3, day[1], 1e-12);
        Assert.Equal(0.75 * 0.3 + 0.25, day[3], 1e-12);
        Assert.Equal(0.75, day[5], 1e-12);
        Assert.Equal(0, day[6]);
    }

    // by hand: an hour half dark at full level counts 0.5
    [Fact]
    public void Half_an_hour_counts_half() =>
        Assert.Equal(0.5, ScheduleHours.For(LightingSchedule.DuskToDawn, Fixed(18.5, 6)).HourFraction[18], 1e-12);

    // by hand: midnight is the middle of 18:00 to 8:00 = 1:00; two hours either side, 23:00 to 3:00
    [Fact]
    public void Midnight_is_the_middle_of_the_night()
    {
        var schedule = new LightingSchedule("late", [new SchedulePart(NightAnchor.Midnight, -2, NightAnchor.Midnight, 2, 1)], 0);
        var day = ScheduleHours.For(schedule, Fixed(18, 8)).HourFraction.AsSpan(24, 24).ToArray();
        Assert.Equal([23.0, 0, 1, 2], new[] { 23, 0, 1, 2 }.Where(h => day[h] == 1).Select(h => (double)h));
        Assert.Equal(4, day.Sum(), 1e-12);
    }

    [Fact]
    public void Short_nights_merge_and_the_higher_level_holds()
    {
        var schedule = new LightingSchedule(
            "short", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 0.5), new SchedulePart(NightAnchor.Dawn, -4, NightAnchor.Dawn, 0, 1)], 0);
        var nights = Fixed(22, 3);

        // 22:00 to 3:00: the second part covers all but the first hour
        Assert.All(ScheduleHours.For(schedule, nights).MonthlyFullHours, h => Assert.Equal(1 * 0.5 + 4 * 1, h, 1e-9));
        Assert.Equal("TK311", Assert.Single(ScheduleHours.Examine(schedule, nights, Place.Nowhere)).Code);
        Assert.Empty(ScheduleHours.Examine(schedule, Fixed(18, 6), Place.Nowhere));
    }

    // by hand: 12 h at full level called for a quarter of the time over rest 0.2: 12 (0.25 + 0.75 x 0.2) = 4.8 h
    [Fact]
    public void Presence_falls_back_to_rest()
    {
        var schedule = new LightingSchedule("sensor", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dawn, 0, 1, 0.25)], 0.2);
        Assert.All(ScheduleHours.For(schedule, Fixed(18, 6)).MonthlyFullHours, h => Assert.Equal(4.8, h, 1e-9));
        Assert.Equal([(1.0, 3.0), (0.2, 9.0)], ScheduleHours.LevelHours(schedule, Fixed(18, 6)).Select(l => (l.LevelFraction, Math.Round(l.MeanNightH, 9))));
    }

    [Fact]
    public void Level_hours_add_up_to_the_longest_month()
    {
        var nights = NightCalendar.ForLatitude(-13.5, -0.833);
        var levels = ScheduleHours.LevelHours(Village, nights);
        Assert.Equal([1.0, 0.3], levels.Select(l => l.LevelFraction));
        Assert.Equal(ScheduleHours.For(Village, nights).LongestMonthFullHours, levels.Sum(l => l.LevelFraction * l.MeanNightH), 1e-9);
    }

    [Fact]
    public void Polar_summer_burns_nothing_and_says_so()
    {
        var nights = NightCalendar.ForLatitude(75, -0.833);
        var lamp = ScheduleHours.For(Village, nights);
        Assert.Equal(0, lamp.MonthlyFullHours[5]);
        Assert.Contains("TK312", ScheduleHours.Examine(Village, nights, Place.Nowhere).Select(d => d.Code));
    }

    [Fact]
    public void Every_schedule_stays_between_rest_and_full() =>
        Gen.Select(Gen.Double[-80, 80], Gen.Enum<NightAnchor>(), Gen.Double[-12, 12], Gen.Enum<NightAnchor>(), Gen.Double[-12, 12], Gen.Double[0, 1], Gen.Double[0, 1]).Sample(
            (latitude, from, fromH, to, toH, level, rest) =>
            {
                var nights = NightCalendar.ForLatitude(latitude, -0.833);
                var lamp = ScheduleHours.For(new LightingSchedule("any", [new SchedulePart(from, fromH, to, toH, level)], rest), nights);
                var dark = nights.Sum(n => n.DarkH);
                return lamp.HourFraction.All(f => f is >= 0 and <= 1)
                    && lamp.HourFraction.Sum() >= rest * dark - 1e-6 && lamp.HourFraction.Sum() <= Math.Max(rest, level) * dark + 1e-6;
            });

    private static System.Collections.Immutable.ImmutableArray<NightOfYear> Fixed(double dusk, double dawn) =>
        [.. Enumerable.Range(1, 365).Select(d => new NightOfYear(d, dusk, dawn))];
}
