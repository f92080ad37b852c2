using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>A cross-section that meets what is asked of every strip (or the nearest miss when <see cref="Met"/> is false).</summary>
/// <param name="SpacingM">Spacing along one row, m.</param>
/// <param name="Section">The section at that spacing.</param>
/// <param name="LevelFraction">Level the luminaires are run at, fraction of full output.</param>
/// <param name="Quality">Quality at that level.</param>
/// <param name="Met">Whether every limit of every strip is met.</param>
/// <param name="GoverningLimit">What stops a wider spacing, in words, e.g. "longitudinal uniformity of the luminance".</param>
public sealed record RoadSolution(double SpacingM, RoadSection Section, double LevelFraction, RoadQuality Quality, bool Met, string GoverningLimit);

/// <summary>
/// Widest spacing of a cross-section that meets what is asked of every strip. The luminaires run at the lowest whole per cent that meets the
/// averages and minima: luminance and illuminance are linear in the level, uniformities and the edge ratio do not depend on it, and the threshold
/// increment goes with its power 0.2, so dimming never spoils it. Quality is not monotonic in spacing: the search goes from the widest down.
/// </summary>
public static class LuminanceSearch
{
    private const double LeastSpacingM = 2;
    private const double GreatestSpacingM = 120;

    /// <summary>Widest spacing that complies.</summary>
    /// <param name="shape">Section whose spacing is ignored; a strip of it must have a class.</param>
    /// <param name="surface">Surface; null when no class asks for luminance or glare.</param>
    /// <exception cref="ArgumentException">No strip has a class, or a class asks for what was not worked out.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A bound, length, angle or factor outside its range.</exception>
    public static RoadSolution Road(LightDistribution distribution, RoadSection shape, RoadSurface? surface, double maintenanceFactor, SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Check(bounds);
        RoadSolution? wider = null;
        RoadSolution? nearest = null;
        var nearestMargin = double.NegativeInfinity;
        foreach (var spacingM in SpacingsFromWidest(shape.HeightM, bounds))
        {
            var (solution, margin) = Trial(distribution, shape with { SpacingM = spacingM }, surface, maintenanceFactor, bounds);
            if (solution.Met) return solution with { GoverningLimit = wider?.GoverningLimit ?? SpacingSearch.GreatestSpacingAllowed };
            wider = solution;
            if (margin <= nearestMargin) continue;
            (nearest, nearestMargin) = (solution, margin);
        }

        return nearest!;
    }

    /// <summary>The section at its own spacing, at the level that meets its limits.</summary>
    /// <returns>The limit named is the tightest one when all are met, the one missed by most when not.</returns>
    public static RoadSolution AtSpacing(
        LightDistribution distribution, RoadSection section, RoadSurface? surface, double maintenanceFactor, SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(section);
        Check(bounds);
        return Trial(distribution, section, surface, maintenanceFactor, bounds).Solution;
    }

    private static (RoadSolution Solution, double Margin) Trial(
        LightDistribution distribution, RoadSection section, RoadSurface? surface, double maintenanceFactor, SpacingBounds bounds)
    {
        var full = RoadEvaluation.Of(distribution, section, surface, maintenanceFactor);
        var level = Level(full, bounds.LeastLevelFraction);
        var quality = level < 1 ? full.AtLevel(level) : full;
        var (limit, margin, met) = Tightest(quality);
        return (new RoadSolution(section.SpacingM, section, level, quality, met, limit), margin);
    }

    private static (string Limit, double Margin, bool Met) Tightest(RoadQuality quality)
    {
        var verdicts = quality.Verdicts.ToList();
        if (verdicts.Count == 0) throw new ArgumentException("no strip has a class", nameof(quality));
        var tightest = verdicts.MinBy(v => v.Governing.MarginRatio)!;
        var limit = verdicts.Count == 1 ? tightest.Governing.Limit : $"{tightest.Strip}: {tightest.Governing.Limit}";
        return (limit, tightest.Governing.MarginRatio, verdicts.All(v => v.Met));
    }

    private static double Level(RoadQuality full, double leastLevel)
    {
        var checks = full.Verdicts.SelectMany(v => v.Checks).Where(c => c.GrowsWithLevel).ToList();
        var needed = checks.Where(c => c.Comparison == Comparison.AtLeast).Select(LevelFor).DefaultIfEmpty(1).Max();
        var exact = Math.Clamp(needed, leastLevel, 1);
        var wholePercent = Math.Clamp(Math.Ceiling((exact * 100) - 1e-9) / 100, exact, 1);
        var ceilings = checks.Where(c => c.Comparison == Comparison.AtMost);
        return ceilings.All(c => c.Reached * wholePercent <= c.Required) ? wholePercent : exact;
    }

    private static double LevelFor(LimitCheck check)
    {
        if (check.Reached <= 0) return 1;
        var level = check.Required / check.Reached;
        return level * check.Reached < check.Required ? Math.BitIncrement(level) : level;
    }

    private static IEnumerable<double> SpacingsFromWidest(double heightM, SpacingBounds bounds)
    {
        var least = Math.Max(LeastSpacingM, bounds.MinSpacingToHeight * heightM);
        var greatest = Math.Min(GreatestSpacingM, bounds.MaxSpacingToHeight * heightM);
        var first = (int)Math.Floor((greatest / bounds.StepM) + 1e-9);
        var last = (int)Math.Ceiling((least / bounds.StepM) - 1e-9);
        return first < last ? [Math.Max(least, greatest)] : Enumerable.Range(0, first - last + 1).Select(i => (first - i) * bounds.StepM);
    }

    private static void Check(SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(bounds);
        Require.InRange(bounds.StepM, 0.05, 20, nameof(bounds.StepM));
        Require.InRange(bounds.MaxSpacingToHeight, 0.5, 20, nameof(bounds.MaxSpacingToHeight));
        Require.InRange(bounds.MinSpacingToHeight, 0.1, bounds.MaxSpacingToHeight, nameof(bounds.MinSpacingToHeight));
        Require.InRange(bounds.LeastLevelFraction, 0.01, 1, nameof(bounds.LeastLevelFraction));
    }
}
