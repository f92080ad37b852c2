using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>One part of the night: a level, and perhaps a target of its own.</summary>
/// <param name="Name">Name as printed, e.g. "midnight to 5 h".</param>
/// <param name="LevelFraction">Level of the luminaires, fraction of full output, 0 to 1; 0 is dark.</param>
/// <param name="Target">What is asked of this part, or null when nothing is.</param>
public sealed record NightPart(string Name, double LevelFraction, LightTarget? Target);

/// <summary>Light of one part of the night.</summary>
/// <param name="Part">The part.</param>
/// <param name="AverageLx">Maintained average, lx.</param>
/// <param name="MinimumLx">Maintained minimum, lx.</param>
/// <param name="OverallUniformity">Uo; the same at every level above 0.</param>
/// <param name="Met">Whether every limit of the part's target is met, or null without a target.</param>
/// <param name="TightestLimit">Limit with the least margin, or null without a target.</param>
/// <param name="LevelNeededFraction">Lowest level that meets average and minimum, above 1 when full light does not, or null without a target or light.</param>
public sealed record NightPartLight(
    NightPart Part, double AverageLx, double MinimumLx, double OverallUniformity, bool? Met, string? TightestLimit, double? LevelNeededFraction);

/// <summary>Light through the parts of the night.</summary>
public static class PartsOfNight
{
    /// <summary>
    /// Light of each part from the light at full level: illuminance is in proportion to the level of the luminaires, here the level of their
    /// light, not of their power. Source: linearity of light. Check: 10 lx at full level is 3 lx at 0.3.
    /// </summary>
    /// <param name="full">Maintained light at full level.</param>
    /// <param name="parts">Parts in the order of the night.</param>
    /// <exception cref="ArgumentOutOfRangeException">A level outside 0 to 1.</exception>
    public static ImmutableArray<NightPartLight> Of(LightResult full, IEnumerable<NightPart> parts)
    {
        ArgumentNullException.ThrowIfNull(full);
        ArgumentNullException.ThrowIfNull(parts);
        return [.. parts.Select(p => Of(full with { Points = [] }, p))];
    }

    private static NightPartLight Of(LightResult full, NightPart part)
    {
        var lit = Illuminance.AtLevel(full, Require.InRange(part.LevelFraction, 0, 1, nameof(part.LevelFraction)));
        if (part.Target is not { } target) return new NightPartLight(part, lit.AverageLx, lit.MinimumLx, lit.OverallUniformity, null, null, null);
        var verdict = Verdict.Of(lit, target, leastLevel: 1);
        return new NightPartLight(part, lit.AverageLx, lit.MinimumLx, lit.OverallUniformity, verdict.Met, verdict.Limit, Needed(full, target));
    }

    private static double? Needed(LightResult full, LightTarget target)
    {
        if (full.AverageLx <= 0 || (full.MinimumLx <= 0 && target.MinimumLx > 0)) return null;
        return Math.Max(target.AverageLx / full.AverageLx, target.MinimumLx is { } minimum && minimum > 0 ? minimum / full.MinimumLx : 0);
    }
}
