using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Tendering.Settings;

/// <summary>
/// Reads lighting schedules. A row is <c>{ from: dusk, for: 4 h }</c>, <c>{ until: dawn, for: 2 h }</c>, <c>{ around: midnight, for: 3 h }</c>,
/// <c>{ from: dusk + 1 h, until: midnight }</c>, each with <c>level</c> and, for presence detection, <c>presence</c>; or <c>{ rest: 30 % }</c>.
/// A schedule is a list of such rows, or a section of <c>parts</c> (the list) and <c>seasons</c>, each <c>{ from: 1 Nov, to: 31 Mar, parts: [...] }</c>.
/// </summary>
internal static class ScheduleReader
{
    private const double LongestH = 24;

    public static ImmutableSortedDictionary<string, LightingSchedule> Read(YamlSection? schedules)
    {
        var found = ImmutableSortedDictionary.CreateBuilder<string, LightingSchedule>(StringComparer.Ordinal);
        found[LightingSchedule.DuskToDawn.Name] = LightingSchedule.DuskToDawn;
        if (schedules is null) return found.ToImmutable();
        foreach (var name in schedules.Keys) found[name] = ScheduleOf(schedules, name);
        return found.ToImmutable();
    }

    /// <summary>A schedule under its name: a list of parts, or a section with <c>parts</c> and <c>seasons</c>.</summary>
    private static LightingSchedule ScheduleOf(YamlSection schedules, string name)
    {
        if (schedules.HoldsKeys(name)) return Read(name, schedules.Section(name)!);
        var rows = schedules.Sections(name);
        var schedule = ProgrammeOf(name, rows);
        if (rows.Count > 0) RequireLight(schedule, rows[0]);
        return schedule;
    }

    /// <summary>The section form: <c>parts</c>, and <c>seasons</c> of <c>{ from: 1 Nov, to: 31 Mar, parts: [...] }</c>.</summary>
    public static LightingSchedule Read(string name, YamlSection section)
    {
        if (!section.Has("parts")) section.RequiredText("parts");
        var own = ProgrammeOf(name, section.Sections("parts"));
        var schedule = own with { Seasons = [.. section.Sections("seasons").Select(s => SeasonOf(name, s)).OfType<ScheduleSeason>()] };
        section.ReportUnknownKeys();
        RequireLight(schedule, section);
        return schedule;
    }

    private static ScheduleSeason? SeasonOf(string name, YamlSection season)
    {
        var (from, to) = (DayOf(season, "from"), DayOf(season, "to"));
        if (!season.Has("parts")) season.RequiredText("parts");
        var programme = ProgrammeOf(name, season.Sections("parts"));
        season.ReportUnknownKeys();
        return from is { } first && to is { } last
            ? new ScheduleSeason(first, last, programme.Parts, programme.RestLevelFraction, programme.RestClassName)
            : null;
    }

    /// <summary>Day of the year, or null with an error.</summary>
    private static int? DayOf(YamlSection season, string key)
    {
        if (season.RequiredText(key) is not { Length: > 0 } text) return null;
        var reading = DayMonth.Read(text);
        if (reading.Problem is { } problem) season.AddError("TK115", $"'{season.Path}.{key}' is '{text}', which {problem}", season.Scalar(key)!.Line);
        return reading.DayOfYear;
    }

    private static LightingSchedule ProgrammeOf(string name, IReadOnlyList<YamlSection> rows)
    {
        var rest = 0.0;
        string? restClass = null;
        var parts = ImmutableArray.CreateBuilder<SchedulePart>();
        foreach (var row in rows)
        {
            if (row.Has("rest")) (rest, restClass) = (Level(row, "rest", 0), ClassOf(row));
            else if (PartOf(row) is { } part) parts.Add(part);
            row.ReportUnknownKeys();
        }

        return new LightingSchedule(name, parts.ToImmutable(), rest, restClass);
    }

    private static void RequireLight(LightingSchedule schedule, YamlSection at)
    {
        if (schedule.Programmes.Any(p => p.RestLevelFraction > 0 || p.Parts.Any(q => q.LevelFraction * q.PresenceFraction > 0))) return;
        at.AddError("TK115", $"schedule '{schedule.Name}' never asks for light; give a part of it a level above 0", at.Line);
    }

    /// <summary>A part of the night, or null with an error: hours beyond a day are a slip of the pen.</summary>
    private static SchedulePart? PartOf(YamlSection row)
    {
        if (AnyPartOf(row) is not { } part) return null;
        if (Math.Abs(part.FromOffsetH) <= LongestH && Math.Abs(part.ToOffsetH) <= LongestH && Duration(row) >= 0) return part;
        row.AddError("TK115", FormattableString.Invariant($"hours of a part of the night must lie between 0 and {LongestH}"), row.Line);
        return null;
    }

    private static double Duration(YamlSection row) => row.Has("for") ? row.Number("for", QuantityKind.Hours, 0) : 0;

    private static SchedulePart? AnyPartOf(YamlSection row)
    {
        var level = Level(row, "level", 1);
        var presence = Level(row, "presence", 1);
        var className = ClassOf(row);
        var from = MomentOf(row, "from");
        var until = MomentOf(row, "until");
        var around = MomentOf(row, "around");
        double? hours = row.Has("for") ? row.Number("for", QuantityKind.Hours, 0) : null;
        switch (from, until, around, hours)
        {
            case ({ } a, { } b, null, null):
                return new SchedulePart(a.Anchor, a.OffsetH, b.Anchor, b.OffsetH, level, presence, className);
            case ({ } a, null, null, { } h):
                return new SchedulePart(a.Anchor, a.OffsetH, a.Anchor, a.OffsetH + h, level, presence, className);
            case (null, { } b, null, { } h):
                return new SchedulePart(b.Anchor, b.OffsetH - h, b.Anchor, b.OffsetH, level, presence, className);
            case (null, null, { } c, { } h):
                return new SchedulePart(c.Anchor, c.OffsetH - (h / 2), c.Anchor, c.OffsetH + (h / 2), level, presence, className);
            default:
                row.AddError("TK115", "a part of the night needs two of: from, until, for (or around with for, or rest)", row.Line);
                return null;
        }
    }

    /// <summary>The class asked of a part; only classes of illuminance scale with the level alone.</summary>
    private static string? ClassOf(YamlSection row)
    {
        if (row.Scalar("class") is not { } scalar) return null;
        if (LightClasses.Find(scalar.Text) is { } target) return target.Name;
        row.AddError("TK117", $"class '{scalar.Text}' is no illuminance class known here; a part of the night may ask for: {string.Join(", ", LightClasses.Names)}", scalar.Line);
        return null;
    }

    private static double Level(YamlSection row, string key, double fallback)
    {
        var level = row.Number(key, QuantityKind.Fraction, fallback);
        if (level is >= 0 and <= 1) return level;
        row.AddError("TK115", $"'{key}' must lie between 0 and 100 %", row.Line);
        return fallback;
    }

    /// <summary>"dusk", "dawn", "midnight", with "+ 1 h" or "- 30 min" behind it.</summary>
    private static (NightAnchor Anchor, double OffsetH)? MomentOf(YamlSection row, string key)
    {
        if (row.Scalar(key) is not { } scalar) return null;
        var sign = scalar.Text.IndexOfAny(['+', '-']);
        var word = (sign < 0 ? scalar.Text : scalar.Text[..sign]).Trim();
        if (!Enum.TryParse<NightAnchor>(word, ignoreCase: true, out var anchor) || int.TryParse(word, out _))
        {
            row.AddError("TK115", $"'{scalar.Path}' must begin with dusk, midnight or dawn, not '{word}'", scalar.Line);
            return null;
        }

        if (sign < 0) return (anchor, 0);
        var offset = SectionNumbers.NumberOf(row, scalar with { Text = scalar.Text[(sign + 1)..].Trim() }, QuantityKind.Hours) ?? 0;
        return (anchor, scalar.Text[sign] == '-' ? -offset : offset);
    }
}
