using TenderKit.Documents.Layout;
using TenderKit.Sizing.Energy;

namespace TenderKit.Documents.Schedule;

/// <summary>A lighting schedule in words, as understood.</summary>
public static class ScheduleWords
{
    /// <summary>One sentence; each season with its dates, then the remaining nights.</summary>
    public static string Of(LightingSchedule schedule)
    {
        if (schedule.Seasons.IsEmpty) return Programme(schedule);
        var seasons = schedule.Seasons.Select(s => $"{YearDay.Text(s.FromDayOfYear)} to {YearDay.Text(s.ToDayOfYear)}: {Programme(schedule.On(s))}");
        return string.Join(". ", seasons.Append("Other nights: " + Programme(schedule)));
    }

    private static string Programme(LightingSchedule schedule)
    {
        if (schedule.Parts.IsEmpty && schedule.RestLevelFraction <= 0) return "no light";
        var parts = schedule.Parts.Select(p =>
            $"{Moment(p.FromAnchor, p.FromOffsetH)} to {Moment(p.ToAnchor, p.ToOffsetH)} at {Figures.Percent(p.LevelFraction)}"
            + (p.PresenceFraction < 1 ? $", called for {Figures.Percent(p.PresenceFraction)} of the time" : "")
            + Class(p.ClassName));
        var rest = $"{(schedule.Parts.IsEmpty ? "the whole night" : "rest of the night")} at {Figures.Percent(schedule.RestLevelFraction)}{Class(schedule.RestClassName)}";
        return string.Join("; ", parts.Append(rest));
    }

    private static string Class(string? name) => name is null ? "" : ", class " + name;

    private static string Moment(NightAnchor anchor, double offsetH)
    {
        var name = anchor switch { NightAnchor.Dusk => "dusk", NightAnchor.Midnight => "midnight", _ => "dawn" };
        if (offsetH == 0) return name;
        return $"{name} {(offsetH > 0 ? "+" : "\u2212")} {Figures.Short(Math.Abs(offsetH))} h";
    }
}
