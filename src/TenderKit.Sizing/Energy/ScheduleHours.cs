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
            foreach (var span in NightPlan.Spans(schedule, nights[day], nights[(day + 1) % MonthDays.DaysCount]))
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
            foreach (var span in NightPlan.Spans(schedule, nights[day], nights[(day + 1) % MonthDays.DaysCount]))
            {
                foreach (var (level, share) in span.Levels)
                {
                    times[level] = times.GetValueOrDefault(level) + share * (span.ToH - span.FromH) / MonthDays.Count(month);
                }
            }
        }

        return [.. times.Reverse().Where(t => t.Value > 1e-9).Select(t => new LevelTime(t.Key, t.Value))];
    }

    /// <summary>TK311: parts that overlap on some nights; TK312: nights that never come; both are notes.</summary>
    public static IReadOnlyList<Diagnostic> Examine(LightingSchedule schedule, ImmutableArray<NightOfYear> nights, Place place)
    {
        RequireInputs(schedule, nights);
        var found = new List<Diagnostic>();
        var merged = Enumerable.Range(0, MonthDays.DaysCount).Count(d => NightPlan.Overlap(schedule, nights[d], nights[(d + 1) % MonthDays.DaysCount]));
        if (merged > 0)
        {
            found.Add(Diagnostic.Note("TK311", FormattableString.Invariant($"Parts of schedule {schedule.Name} overlap on {merged} of 365 nights, the shortest being {nights.Min(n => n.DarkH):0.0} h: the higher level holds there. Shorten the parts if that is not meant."), place));
        }

        var light = nights.Count(n => n.DarkH <= 0);
        if (light > 0)
        {
            found.Add(Diagnostic.Note("TK312", FormattableString.Invariant($"On {light} of 365 days it does not get dark at the switching elevation: the lamp stays off on those. Check the latitude."), place));
        }

        return found;
    }

    private static void RequireInputs(LightingSchedule schedule, ImmutableArray<NightOfYear> nights)
    {
        if (nights.Length != MonthDays.DaysCount) throw new ArgumentException("365 nights are needed", nameof(nights));
        Require.InRange(schedule.RestLevelFraction, 0, 1, nameof(schedule));
        foreach (var part in schedule.Parts)
        {
            Require.InRange(part.LevelFraction, 0, 1, nameof(schedule));
            Require.InRange(part.PresenceFraction, 0, 1, nameof(schedule));
            Require.InRange(part.FromOffsetH, -24, 24, nameof(schedule));
            Require.InRange(part.ToOffsetH, -24, 24, nameof(schedule));
        }
    }

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
