using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Findings about a schedule on the nights of a place.</summary>
internal static class ScheduleFindings
{
    /// <summary>
    /// TK311: parts that overlap on some nights; TK312: nights that never come; TK315: seasons that overlap, a warning; TK316: a seasonal schedule
    /// has to be set by hand, a note.
    /// </summary>
    public static IReadOnlyList<Diagnostic> Examine(LightingSchedule schedule, ImmutableArray<NightOfYear> nights, Place place)
    {
        ScheduleHours.RequireInputs(schedule, nights);
        return [.. Parts(schedule, nights, place), .. Light(nights, place), .. Seasons(schedule, place)];
    }

    private static IEnumerable<Diagnostic> Parts(LightingSchedule schedule, ImmutableArray<NightOfYear> nights, Place place)
    {
        var merged = Enumerable.Range(0, MonthDays.DaysCount)
            .Where(d => NightPlan.Overlap(schedule.On(d + 1), nights[d], nights[(d + 1) % MonthDays.DaysCount]))
            .ToList();
        if (merged.Count == 0) yield break;
        yield return Diagnostic.Note(
            "TK311", FormattableString.Invariant($"Parts of schedule {schedule.Name} overlap on {merged.Count} of 365 nights, the shortest being {merged.Min(d => nights[d].DarkH):0.0} h: the higher level holds there. Shorten the parts if that is not meant."), place);
    }

    private static IEnumerable<Diagnostic> Light(ImmutableArray<NightOfYear> nights, Place place)
    {
        var light = nights.Count(n => n.DarkH <= 0);
        if (light == 0) yield break;
        yield return Diagnostic.Note(
            "TK312", FormattableString.Invariant($"On {light} of 365 days it does not get dark at the switching elevation: the lamp stays off on those. Check the latitude."), place);
    }

    private static IEnumerable<Diagnostic> Seasons(LightingSchedule schedule, Place place)
    {
        if (schedule.Seasons.IsEmpty) yield break;
        var days = Enumerable.Range(1, MonthDays.DaysCount).Where(d => schedule.Seasons.Count(s => s.Holds(d)) > 1).ToList();
        if (days.Count > 0)
        {
            yield return Diagnostic.Warning(
                "TK315", FormattableString.Invariant($"Seasons of schedule {schedule.Name} overlap on {days.Count} days, {YearDay.Text(days[0])} among them: the season written first holds there. End one where the next begins."), place);
        }

        yield return Diagnostic.Note(
            "TK316", FormattableString.Invariant($"Schedule {schedule.Name} changes with the season, at {ChangesAYear(schedule)} dates a year: few controllers hold a calendar, so somebody has to set every pole again on those dates, or the controller must be one that can. Say in the offer who does it."), place);
    }

    private static int ChangesAYear(LightingSchedule schedule)
    {
        var programmes = Enumerable.Range(1, MonthDays.DaysCount).Select(d => schedule.Seasons.FirstOrDefault(s => s.Holds(d))).ToList();
        return programmes.Where((s, i) => !ReferenceEquals(s, programmes[(i + programmes.Count - 1) % programmes.Count])).Count();
    }
}
