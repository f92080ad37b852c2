using System.Collections.Immutable;
using System.Runtime.InteropServices;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>A light level and how long it burns.</summary>
/// <param name="MeanNightH">Mean hours a night, presence detection included, h.</param>
public sealed record LevelTime(double LevelFraction, double MeanNightH);

/// <summary>
/// Turns a schedule and the nights of a year into lamp hours. A night runs from the dusk of one day to the dawn of the next;
/// midnight is its middle. Parts are clipped to the night; where they overlap the higher level holds. A part with presence detection
/// burns at its level for its expected share of the time and falls back to the next lower part, or to rest, for the remainder.
/// A night belongs to the season of the day it begins on.
/// </summary>
public static class ScheduleHours
{
    /// <summary>Exact within the hour: an hour half dark at full level counts 0.5.</summary>
    public static LampHours For(LightingSchedule schedule, ImmutableArray<NightOfYear> nights)
    {
        RequireInputs(schedule, nights);
        var hours = new double[MonthDays.HoursCount];
        var months = new double[12];
        for (var day = 0; day < MonthDays.DaysCount; day++)
        {
            foreach (var span in SpansOf(schedule, nights, day))
            {
                Spread(hours, day, span.FromH, span.ToH, span.MeanLevel);
                var month = MonthDays.MonthOf(day);
                months[month - 1] += span.MeanLevel * (span.ToH - span.FromH) / MonthDays.Count(month);
            }
        }

        for (var i = 0; i < hours.Length; i++) hours[i] = Math.Min(1, hours[i]);
        return new LampHours(ImmutableCollectionsMarshal.AsImmutableArray(hours), ImmutableCollectionsMarshal.AsImmutableArray(months));
    }

    /// <summary>Distinct levels, highest first, with their mean hours a night in the month of the most full-level hours; darkness without light (level 0) included.</summary>
    public static ImmutableArray<LevelTime> LevelHours(LightingSchedule schedule, ImmutableArray<NightOfYear> nights)
    {
        var monthly = For(schedule, nights).MonthlyFullHours;
        var month = monthly.IndexOf(monthly.Max()) + 1;
        var times = new SortedDictionary<double, double>();
        var first = MonthDays.FirstDayIndex(month);
        for (var day = first; day < first + MonthDays.Count(month); day++)
        {
            foreach (var span in SpansOf(schedule, nights, day))
            {
                foreach (var (level, share) in span.Levels)
                {
                    times[level] = times.GetValueOrDefault(level) + share * (span.ToH - span.FromH) / MonthDays.Count(month);
                }
            }
        }

        return [.. times.Reverse().Where(t => t.Value > 1e-9).Select(t => new LevelTime(t.Key, t.Value))];
    }

    /// <inheritdoc cref="ScheduleFindings.Examine"/>
    public static IReadOnlyList<Diagnostic> Examine(LightingSchedule schedule, ImmutableArray<NightOfYear> nights, Place place) =>
        ScheduleFindings.Examine(schedule, nights, place);

    internal static void RequireInputs(LightingSchedule schedule, ImmutableArray<NightOfYear> nights)
    {
        if (nights.Length != MonthDays.DaysCount) throw new ArgumentException("365 nights are needed", nameof(nights));
        foreach (var season in schedule.Seasons)
        {
            Require.InRange(season.FromDayOfYear, 1, MonthDays.DaysCount, nameof(schedule));
            Require.InRange(season.ToDayOfYear, 1, MonthDays.DaysCount, nameof(schedule));
        }

        foreach (var programme in schedule.Programmes)
        {
            Require.InRange(programme.RestLevelFraction, 0, 1, nameof(schedule));
            foreach (var part in programme.Parts)
            {
                Require.InRange(part.LevelFraction, 0, 1, nameof(schedule));
                Require.InRange(part.PresenceFraction, 0, 1, nameof(schedule));
                Require.InRange(part.FromOffsetH, -24, 24, nameof(schedule));
                Require.InRange(part.ToOffsetH, -24, 24, nameof(schedule));
            }
        }
    }

    /// <summary>The spans of the night that begins on a day, 0 to 364, by the season of that day.</summary>
    private static IEnumerable<NightSpan> SpansOf(LightingSchedule schedule, ImmutableArray<NightOfYear> nights, int day) =>
        NightPlan.Spans(schedule.On(day + 1), nights[day], nights[(day + 1) % MonthDays.DaysCount]);

    /// <summary>Adds a level between two moments (hours from the midnight before the evening of <paramref name="day"/>) to the hours they touch.</summary>
    private static void Spread(double[] hours, int day, double fromH, double toH, double level)
    {
        for (var h = (int)fromH; h < toH; h++)
        {
            var part = Math.Min(toH, h + 1) - Math.Max(fromH, h);
            hours[(day * 24 + h) % MonthDays.HoursCount] += part * level;
        }
    }
}
