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

    private const int ProbePoints = 4;
    private const double RoundingGuard = 1 - 1e-9;
    private const double LeastRoadSpacingM = 2;
    private const double GreatestRoadSpacingM = 120;

    /// <summary>Widest spacing of a road or path that meets every limit of the target.</summary>
    /// <param name="shape">Layout whose spacing is ignored.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bound, length, angle or factor outside its range.</exception>
    public static LightSolution Road(LightDistribution distribution, RoadLayout shape, LightTarget target, double maintenanceFactor, SpacingBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Check(bounds);
        var spacingsM = SpacingsFromWidest(shape.MountingHeightM, bounds).ToList();
        var field = new RowField();
        var trials = new RoadTrial?[spacingsM.Count];
        var darkest = (X: 0.5, Y: 1.0);
        for (var i = 0; i < spacingsM.Count; i++)
        {
            var layout = shape with { SpacingM = spacingsM[i] };
            if (IsTooDark(distribution, layout, target, maintenanceFactor, field, darkest)) continue;
            var trial = Trial(distribution, layout, target, maintenanceFactor, bounds, field);
            trials[i] = trial;
            if (trial.Verdict.Met)
            {
                var solution = Solution(trial, maintenanceFactor, field);
                if (i == 0) return solution with { GoverningLimit = GreatestSpacingAllowed };
                var wider = trials[i - 1] ?? Trial(distribution, shape with { SpacingM = spacingsM[i - 1] }, target, maintenanceFactor, bounds, field);
                return solution with { GoverningLimit = wider.Verdict.Limit };
            }

            darkest = Darkest(field);
        }

        var all = spacingsM.Select((s, i) => trials[i] ?? Trial(distribution, shape with { SpacingM = s }, target, maintenanceFactor, bounds, field));
        var nearest = all.Aggregate((best, trial) => trial.Verdict.Margin > best.Verdict.Margin ? trial : best);
        return Solution(Trial(distribution, nearest.Layout, target, maintenanceFactor, bounds, field), maintenanceFactor, field);
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
        var field = new RowField();
        return Solution(Trial(distribution, layout, target, maintenanceFactor, bounds, field), maintenanceFactor, field);
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

    /// <summary>
    /// Whether a few points prove that the layout misses the target at any level up to 1, so that the whole grid need not be lit: a point
    /// under the least minimum, or under Uo times the least average, which the minimum of a layout that complies cannot be.
    /// </summary>
    /// <param name="darkest">Where the last whole grid was darkest, fractions of spacing and width.</param>
    private static bool IsTooDark(
        LightDistribution distribution, RoadLayout layout, LightTarget target, double maintenanceFactor, RowField field, (double X, double Y) darkest)
    {
        ArgumentNullException.ThrowIfNull(target);
        var leastLx = Math.Max(target.MinimumLx ?? 0, (target.OverallUniformity ?? 0) * target.AverageLx) * RoundingGuard;
        if (leastLx <= 0) return false;
        Illuminance.Check(layout);
        Illuminance.CheckMaintenance(maintenanceFactor);
        var (along, across) = (RoadGrid.PointsAlong(layout.SpacingM), RoadGrid.PointsAcross(layout.WidthM));
        var row = Math.Min((int)(darkest.Y * across), across - 1) * along;
        Span<int> indexes = stackalloc int[ProbePoints];
        for (var i = 0; i < ProbePoints; i++) indexes[i] = row + (((int)(darkest.X * along) + i + along - 1) % along);
        foreach (var lx in Illuminance.OnSomePoints(distribution, layout, indexes, field))
        {
            if (lx * maintenanceFactor < leastLx) return true;
        }

        return false;
    }

    private static (double X, double Y) Darkest(RowField field)
    {
        var sums = field.SumsLx;
        var least = 0;
        for (var i = 1; i < sums.Length; i++)
        {
            if (sums[i] < sums[least]) least = i;
        }

        return (((least % field.Along) + 0.5) / field.Along, ((least / field.Along) + 0.5) / field.Across);
    }

    private static RoadTrial Trial(
        LightDistribution distribution, RoadLayout layout, LightTarget target, double maintenanceFactor, SpacingBounds bounds, RowField field)
    {
        var summary = Illuminance.OnBay(distribution, layout, maintenanceFactor, field);
        return new RoadTrial(layout, summary, Verdict.Of(summary, target, bounds.LeastLevelFraction));
    }

    /// <summary>The trial done last on the field, as a solution.</summary>
    private static LightSolution Solution(RoadTrial trial, double maintenanceFactor, RowField field)
    {
        var (layout, summary, verdict) = trial;
        var result = Illuminance.AtLevel(field.WithPoints(summary, maintenanceFactor), verdict.LevelFraction);
        return new LightSolution(layout.SpacingM, layout, null, verdict.LevelFraction, result, verdict.Met, verdict.Limit);
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

    private sealed record RoadTrial(RoadLayout Layout, LightResult Summary, Verdict Verdict);
}
