using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Bounds of the search for the widest spacing.</summary>
/// <param name="StepM">Step of the search, m.</param>
/// <param name="MinSpacingToHeight">Least spacing as a multiple of mounting height.</param>
/// <param name="MaxSpacingToHeight">Greatest spacing as a multiple of mounting height.</param>
/// <param name="LeastLevelFraction">Lowest level the driver can be dimmed to, fraction; 1 when it cannot.</param>
public sealed record SpacingBounds(double StepM, double MinSpacingToHeight, double MaxSpacingToHeight, double LeastLevelFraction);

/// <summary>
/// Finds the layout with the fewest poles that meets a target. The luminaire is run at the lowest level that still meets every limit,
/// to the next whole per cent, since every watt is paid for in battery and module. Light is not monotonic in spacing (grid and 5 H cut
/// change in steps), so the search goes from the widest spacing down and takes the first that complies.
/// </summary>
public static class SpacingSearch
{
    /// <summary>Limit named when the bounds of the search, not the light, stop a wider spacing.</summary>
    public const string GreatestSpacingAllowed = "greatest spacing allowed";

    /// <summary>Limit named when one pole does.</summary>
    public const string FewestPolesPossible = "fewest poles possible";

    private const double LeastRoadSpacingM = 2;
    private const double GreatestRoadSpacingM = 120;

    /// <summary>Widest spacing of a road or path that meets every limit of the target.</summary>
    /// <param name="shape">Layout whose spacing is ignored.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bound, length, angle or factor outside its range.</exception>
    public static LightSolution Road(LightDistribution distribution, RoadLayout shape, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Check(bounds);
        LightSolution? wider = null;
        LightSolution? nearest = null;
        var nearestMargin = double.NegativeInfinity;
        foreach (var spacingM in SpacingsFromWidest(shape.MountingHeightM, bounds))
        {
            var (solution, margin) = Trial(distribution, shape with { SpacingM = spacingM }, target, maintenanceFactor, bounds);
            if (solution.Met) return solution with { GoverningLimit = wider?.GoverningLimit ?? GreatestSpacingAllowed };
            wider = solution;
            if (margin <= nearestMargin) continue;
            (nearest, nearestMargin) = (solution, margin);
        }

        return nearest!;
    }

    /// <summary>Fewest poles of a yard that meet every limit of the target, trying one side and both; of equals the lower level, then one side.</summary>
    /// <param name="shape">Layout whose pole counts are ignored.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bound, length, angle or factor outside its range.</exception>
    public static LightSolution Yard(LightDistribution distribution, YardLayout shape, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Check(bounds);
        var least = Math.Max(1, (int)Math.Ceiling((shape.LengthM / (bounds.MaxSpacingToHeight * shape.MountingHeightM)) - 1e-9));
        var most = Math.Max(least, (int)Math.Floor((shape.LengthM / (bounds.MinSpacingToHeight * shape.MountingHeightM)) + 1e-9));
        string? stoppedBy = null;
        LightSolution? nearest = null;
        var nearestMargin = double.NegativeInfinity;
        for (var poles = least; poles <= 2 * most; poles++)
        {
            var trials = YardsOf(shape, poles, least, most).Select(y => Trial(distribution, y, target, maintenanceFactor, bounds)).ToList();
            var met = trials.Select(t => t.Solution).Where(s => s.Met).MinBy(s => s.LevelFraction);
            if (met is not null) return met with { GoverningLimit = stoppedBy ?? (poles == 1 ? FewestPolesPossible : GreatestSpacingAllowed) };
            if (trials.Count == 0) continue;
            var best = trials.MaxBy(t => t.Margin);
            stoppedBy = best.Solution.GoverningLimit;
            if (best.Margin > nearestMargin) (nearest, nearestMargin) = best;
        }

        return nearest!;
    }

    /// <summary>Level of a given road layout that meets the target without passing its ceiling, for a line with a fixed number of poles.</summary>
    /// <returns>The limit named is the tightest one when the target is met, the one missed by most when it is not.</returns>
    public static LightSolution AtSpacing(LightDistribution distribution, RoadLayout layout, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        Check(bounds);
        return Trial(distribution, layout, target, maintenanceFactor, bounds).Solution;
    }

    /// <summary>The same for a line of given length and poles, ends included: the honest answer for few poles and for one alone.</summary>
    /// <param name="shape">Layout whose spacing is ignored.</param>
    public static LightSolution OnLine(
        LightDistribution distribution, RoadLayout shape, double lengthM, int poles, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Check(bounds);
        var layout = shape with { SpacingM = PoleLine.SpacingM(lengthM, poles, shape.Arrangement) };
        var full = Illuminance.OnLine(distribution, layout, lengthM, poles, maintenanceFactor);
        var verdict = Verdict.Of(full, target, bounds.LeastLevelFraction);
        var result = Illuminance.AtLevel(full, verdict.LevelFraction);
        return new LightSolution(layout.SpacingM, layout, null, verdict.LevelFraction, result, verdict.Met, verdict.Limit);
    }

    /// <summary>The same for a yard whose poles are given.</summary>
    public static LightSolution AtPoles(LightDistribution distribution, YardLayout layout, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        Check(bounds);
        return Trial(distribution, layout, target, maintenanceFactor, bounds).Solution;
    }

    private static (LightSolution Solution, double Margin) Trial(
        LightDistribution distribution, RoadLayout layout, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        var full = Illuminance.OnRoad(distribution, layout, maintenanceFactor);
        var verdict = Verdict.Of(full, target, bounds.LeastLevelFraction);
        var result = Illuminance.AtLevel(full, verdict.LevelFraction);
        return (new LightSolution(layout.SpacingM, layout, null, verdict.LevelFraction, result, verdict.Met, verdict.Limit), verdict.Margin);
    }

    private static (LightSolution Solution, double Margin) Trial(
        LightDistribution distribution, YardLayout layout, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        var full = Illuminance.OnYard(distribution, layout, maintenanceFactor);
        var verdict = Verdict.Of(full, target, bounds.LeastLevelFraction);
        var result = Illuminance.AtLevel(full, verdict.LevelFraction);
        var bayM = layout.LengthM / layout.PolesPerSide;
        return (new LightSolution(bayM, null, layout, verdict.LevelFraction, result, verdict.Met, verdict.Limit), verdict.Margin);
    }

    private static IEnumerable<double> SpacingsFromWidest(double heightM, SpacingBounds bounds)
    {
        var least = Math.Max(LeastRoadSpacingM, bounds.MinSpacingToHeight * heightM);
        var greatest = Math.Min(GreatestRoadSpacingM, bounds.MaxSpacingToHeight * heightM);
        var first = (int)Math.Floor((greatest / bounds.StepM) + 1e-9);
        var last = (int)Math.Ceiling((least / bounds.StepM) - 1e-9);
        if (first < last) return [Math.Max(least, greatest)];
        return Enumerable.Range(0, first - last + 1).Select(i => (first - i) * bounds.StepM);
    }

    private static IEnumerable<YardLayout> YardsOf(YardLayout shape, int poles, int least, int most)
    {
        if (poles <= most) yield return shape with { PolesPerSide = poles, BothSides = false };
        if (poles % 2 == 0 && poles / 2 >= least) yield return shape with { PolesPerSide = poles / 2, BothSides = true };
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
