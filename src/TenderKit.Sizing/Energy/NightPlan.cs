using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>A stretch of one night with one state of the schedule; hours from the midnight before its evening.</summary>
/// <param name="Levels">Levels with their shares of the time; the shares add up to 1.</param>
internal sealed record NightSpan(double FromH, double ToH, ImmutableArray<(double Level, double Share)> Levels)
{
    public double MeanLevel => Levels.Sum(l => l.Level * l.Share);
}

/// <summary>Cuts one night into spans.</summary>
internal static class NightPlan
{
    public static IEnumerable<NightSpan> Spans(LightingSchedule schedule, NightOfYear evening, NightOfYear morning)
    {
        var (dusk, dawn) = (evening.DuskH, 24 + morning.DawnH);
        if (dawn <= dusk) yield break;
        var parts = Clipped(schedule, dusk, dawn);
        var cuts = new SortedSet<double> { dusk, dawn };
        foreach (var (_, from, to) in parts) cuts.UnionWith([from, to]);
        var start = dusk;
        foreach (var end in cuts.Skip(1))
        {
            var active = parts.Where(p => p.FromH <= start && p.ToH >= end).Select(p => p.Part);
            yield return new NightSpan(start, end, Levels(active, schedule.RestLevelFraction));
            start = end;
        }
    }

    public static bool Overlap(LightingSchedule schedule, NightOfYear evening, NightOfYear morning)
    {
        var parts = Clipped(schedule, evening.DuskH, 24 + morning.DawnH);
        return parts.Where((a, i) => parts.Skip(i + 1).Any(b => Math.Min(a.ToH, b.ToH) - Math.Max(a.FromH, b.FromH) > 1e-9)).Any();
    }

    private static List<(SchedulePart Part, double FromH, double ToH)> Clipped(LightingSchedule schedule, double dusk, double dawn)
    {
        double At(NightAnchor anchor, double offset) => Math.Clamp(
            offset + anchor switch { NightAnchor.Dusk => dusk, NightAnchor.Dawn => dawn, _ => (dusk + dawn) / 2 }, dusk, Math.Max(dusk, dawn));
        return [.. schedule.Parts
            .Select(p => (Part: p, FromH: At(p.FromAnchor, p.FromOffsetH), ToH: At(p.ToAnchor, p.ToOffsetH)))
            .Where(p => p.ToH > p.FromH)];
    }

    /// <summary>Highest level first; what presence detection leaves over goes to the next lower level above rest, then to rest.</summary>
    private static ImmutableArray<(double Level, double Share)> Levels(IEnumerable<SchedulePart> active, double rest)
    {
        var levels = ImmutableArray.CreateBuilder<(double, double)>();
        var left = 1.0;
        foreach (var part in active.Where(p => p.LevelFraction > rest).OrderByDescending(p => p.LevelFraction).ThenByDescending(p => p.PresenceFraction))
        {
            if (left > 0) levels.Add((part.LevelFraction, left * part.PresenceFraction));
            left *= 1 - part.PresenceFraction;
        }

        if (left > 0) levels.Add((rest, left));
        return levels.ToImmutable();
    }
}
