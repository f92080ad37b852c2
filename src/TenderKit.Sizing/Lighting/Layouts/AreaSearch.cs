using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>How the poles of an area may stand.</summary>
/// <param name="HeightM">Mounting height, m, 2 to 20.</param>
/// <param name="TiltDegrees">Tilt, degrees, 0 to 45.</param>
/// <param name="FacingDegrees">Direction all luminaires face, or null to face the centre of the area.</param>
/// <param name="LeastStepM">Least distance between two poles of the lattice, m, 2 to 100.</param>
/// <param name="LeastLevelFraction">Lowest level the driver can be dimmed to, fraction; 1 when it cannot.</param>
public sealed record AreaShape(double HeightM, double TiltDegrees, double? FacingDegrees, double LeastStepM, double LeastLevelFraction)
{
    /// <summary>Photometric centre inside the edge where poles stand along it, m, -5 to 5; null when no pole may.</summary>
    public double? EdgeOverhangM { get; init; }

    /// <summary>Arm of the poles, m: with it, a pole inside the area must stand on the area too, not in an opening.</summary>
    public double ReachM { get; init; }
}

/// <summary>Poles of an area.</summary>
/// <param name="Poles">Where they stand.</param>
/// <param name="LevelFraction">Level the luminaires are run at, fraction.</param>
/// <param name="Result">Maintained illuminance at that level.</param>
/// <param name="Met">Whether every limit of the target is met; if not, this is the nearest miss of those tried.</param>
/// <param name="TightestLimit">Limit with the least margin, in words.</param>
/// <param name="LeastPolesByFlux">No placement with fewer poles can reach the average: maintained downward flux against average times area.</param>
/// <param name="PlacementsTried">How many placements were lit.</param>
public sealed record AreaSolution(
    ImmutableArray<LuminairePosition> Poles, double LevelFraction, LightResult Result, bool Met, string TightestLimit, int LeastPolesByFlux, int PlacementsTried);

/// <summary>
/// Fewest poles for an area. A heuristic: where poles may stand along the edge, rows facing each other across the longest side and across its
/// normal, then poles at even steps round the edge; and rectangular lattices of every pair of steps that divides the area's two extents, square to the axes
/// and to the longest side, in four shifts, by rising number of poles; the first that complies is thinned, taking away one pole after
/// another while the target is still met. Proven: no placement of those families with fewer poles complies, and the search gives up at twice the poles that reach the average (12 at least), and no placement at all can do with
/// fewer than the flux bound (to the error of the grid as an average). Not proven: that no other placement with fewer poles does.
/// </summary>
public static class AreaSearch
{
    private const int MostDivisions = 12;
    private const int MostPoles = 150;

    /// <summary>With so many times the poles that first reached the average the other limits are given up. Common practice, no source.</summary>
    private const int Hopeless = 2;

    /// <summary>So many poles are tried at least before that. Common practice, no source.</summary>
    private const int Few = 12;

    private static readonly (double X, double Y)[] Shifts = [(0, 0), (0.5, 0), (0, 0.5), (0.5, 0.5)];

    /// <param name="distribution">Luminaire, new.</param>
    /// <param name="area">Lit area.</param>
    /// <param name="target">What is asked.</param>
    /// <param name="maintenanceFactor">Maintenance factor, above 0 to 1.</param>
    /// <param name="shape">How the poles may stand.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle, level or factor outside its range.</exception>
    public static AreaSolution FewestPoles(LightDistribution distribution, Area area, LightTarget target, double maintenanceFactor, AreaShape shape)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        ArgumentNullException.ThrowIfNull(area);
        ArgumentNullException.ThrowIfNull(target);
        Check(shape);
        var problem = new Problem(distribution, area.Grid(), target, maintenanceFactor, shape.LeastLevelFraction);
        var leastPoles = PolesByFlux(distribution, area, target, maintenanceFactor, shape.TiltDegrees);
        var tried = 0;
        var enough = int.MaxValue;
        Trial? nearest = null;
        foreach (var poles in Candidates(area, shape, leastPoles))
        {
            tried++;
            var trial = problem.Light(poles);
            if (trial.Verdict.Met) return Solution(Thinned(trial, problem, ref tried), leastPoles, tried);
            if (nearest is null || trial.Verdict.Margin > nearest.Verdict.Margin) nearest = trial;
            if (trial.Full.AverageLx >= target.AverageLx) enough = Math.Min(enough, poles.Length);
            if (poles.Length > Math.Max(Few, Hopeless * (double)enough)) break;
        }

        return Solution(nearest ?? problem.Light([Single(area, shape)]), leastPoles, tried);
    }

    /// <summary>The best placement of exactly so many poles: the lowest level that meets the target, or the nearest miss.</summary>
    /// <inheritdoc cref="FewestPoles" path="/param"/>
    /// <param name="poles">Poles, 1 or more.</param>
    public static AreaSolution OfPoles(LightDistribution distribution, Area area, LightTarget target, double maintenanceFactor, AreaShape shape, int poles) =>
        Best(distribution, area, target, maintenanceFactor, shape, Candidates(area, shape, 1).Where(c => c.Length == poles));

    /// <summary>Light of given luminaires at the level that meets the target.</summary>
    /// <inheritdoc cref="FewestPoles" path="/param"/>
    /// <param name="luminaires">Where they are.</param>
    public static AreaSolution OfPositions(LightDistribution distribution, Area area, LightTarget target, double maintenanceFactor, AreaShape shape, ImmutableArray<LuminairePosition> luminaires) =>
        Best(distribution, area, target, maintenanceFactor, shape, [luminaires]);

    private static AreaSolution Best(
        LightDistribution distribution, Area area, LightTarget target, double maintenanceFactor, AreaShape shape, IEnumerable<ImmutableArray<LuminairePosition>> placements)
    {
        ArgumentNullException.ThrowIfNull(area);
        Check(shape);
        var problem = new Problem(distribution, area.Grid(), target, maintenanceFactor, shape.LeastLevelFraction);
        var trials = placements.Select(problem.Light).ToList();
        var met = trials.Where(t => t.Verdict.Met).MinBy(t => t.Verdict.LevelFraction);
        return Solution(
            met ?? trials.MaxBy(t => t.Verdict.Margin) ?? problem.Light([Single(area, shape)]), PolesByFlux(distribution, area, target, maintenanceFactor, shape.TiltDegrees), trials.Count);
    }

    /// <summary>Placements worth trying, by rising number of poles; of equals in the order they are made.</summary>
    private static IEnumerable<ImmutableArray<LuminairePosition>> Candidates(Area area, AreaShape shape, int leastPoles)
    {
        var found = new List<ImmutableArray<LuminairePosition>>();
        if (shape.EdgeOverhangM is { } overhangM) found.AddRange(OnEdge(area, shape, overhangM).Where(p => p.Length >= leastPoles && p.Length <= MostPoles));
        foreach (var turn in new[] { 0, LongestSideDegrees(area) }.Distinct())
        {
            var (lengthM, widthM) = Extents(area, turn);
            var lattices = from x in Divisions(lengthM, shape) from y in Divisions(widthM, shape) from shift in Shifts select (x, y, shift);
            foreach (var (x, y, shift) in lattices)
            {
                var poles = AreaPlacement.OnLattice(area, x, y, turn, shift.X, shift.Y, shape.HeightM, shape.TiltDegrees, shape.FacingDegrees);
                if (shape.ReachM > 0) poles = poles.RemoveAll(p => AreaPlacement.Foot(p, shape.ReachM) is var foot && !area.Contains(foot.XM, foot.YM));
                if (poles.Length >= leastPoles && poles.Length <= MostPoles) found.Add(poles);
            }
        }

        return found.OrderBy(p => p.Length);
    }

    /// <summary>Rows across the longest side and across its normal, on both edges or one, then even steps round the edge from four starts.</summary>
    private static IEnumerable<ImmutableArray<LuminairePosition>> OnEdge(Area area, AreaShape shape, double overhangM)
    {
        var longest = LongestSideDegrees(area);
        foreach (var axis in new[] { longest, longest + 90 })
        {
            var most = Math.Min(MostPoles, Math.Max(1, (int)(Extents(area, axis).LengthM / shape.LeastStepM)));
            for (var steps = 1; steps <= most; steps++)
            {
                yield return AreaPlacement.AcrossAxis(area, axis, steps, true, true, overhangM, shape.HeightM, shape.TiltDegrees);
                yield return AreaPlacement.AcrossAxis(area, axis, steps, true, false, overhangM, shape.HeightM, shape.TiltDegrees);
                yield return AreaPlacement.AcrossAxis(area, axis, steps, false, true, overhangM, shape.HeightM, shape.TiltDegrees);
            }
        }

        var round = Math.Clamp((int)(area.PerimeterM / shape.LeastStepM), 1, MostPoles);
        for (var count = 1; count <= round; count++)
        {
            foreach (var start in new[] { 0.5, 0, 0.25, 0.75 })
                yield return AreaPlacement.AlongBoundary(area, count, overhangM, shape.HeightM, shape.TiltDegrees, start);
        }
    }

    private static IEnumerable<double> Divisions(double extentM, AreaShape shape) =>
        Enumerable.Range(1, MostDivisions).Select(n => extentM / n).Where(step => step >= shape.LeastStepM).DefaultIfEmpty(Math.Max(extentM, shape.LeastStepM));

    /// <summary>Takes poles away one by one, the one whose loss leaves the greatest margin first, while the target is met.</summary>
    private static Trial Thinned(Trial trial, Problem problem, ref int tried)
    {
        while (trial.Poles.Length > 1)
        {
            Trial? best = null;
            for (var i = 0; i < trial.Poles.Length; i++)
            {
                tried++;
                var thinner = problem.Light(trial.Poles.RemoveAt(i));
                if (best is null || thinner.Verdict.Margin > best.Verdict.Margin) best = thinner;
            }

            if (!best!.Verdict.Met) return trial;
            trial = best;
        }

        return trial;
    }

    /// <summary>
    /// Poles below which the average cannot be reached: what falls on the area is at most what leaves the luminaire towards the ground.
    /// A tilted luminaire may send down what its own frame counts as upward, so then the whole flux is taken.
    /// </summary>
    private static int PolesByFlux(LightDistribution distribution, Area area, LightTarget target, double maintenanceFactor, double tiltDegrees)
    {
        var downLm = distribution.FluxLm * (tiltDegrees == 0 ? 1 - distribution.UpwardFraction : 1);
        if (downLm <= 0) return 1;
        return (int)Math.Clamp(Math.Ceiling(target.AverageLx * area.AreaM2 / (downLm * maintenanceFactor)), 1, MostPoles);
    }

    private static AreaSolution Solution(Trial trial, int leastPoles, int tried) => new(
        trial.Poles,
        trial.Verdict.LevelFraction,
        Illuminance.AtLevel(trial.Full, trial.Verdict.LevelFraction),
        trial.Verdict.Met,
        trial.Verdict.Limit,
        leastPoles,
        tried);

    private static LuminairePosition Single(Area area, AreaShape shape) =>
        new(area.Centre.XM, area.Centre.YM, shape.HeightM, shape.FacingDegrees ?? 90, shape.TiltDegrees);

    private static double LongestSideDegrees(Area area)
    {
        var (longest, direction) = (0.0, 0.0);
        for (var i = 0; i < area.Vertices.Length; i++)
        {
            var (a, b) = (area.Vertices[i], area.Vertices[(i + 1) % area.Vertices.Length]);
            var (dx, dy) = (b.XM - a.XM, b.YM - a.YM);
            if ((dx * dx) + (dy * dy) <= longest * (1 + 1e-9)) continue;
            (longest, direction) = ((dx * dx) + (dy * dy), Angle.ToDegrees(Math.Atan2(dy, dx)));
        }

        return Math.Round(Angle.Normalised(direction), 6) % 90;
    }

    private static (double LengthM, double WidthM) Extents(Area area, double turnDegrees)
    {
        var (cos, sin) = (Angle.CosDegrees(turnDegrees), Angle.SinDegrees(turnDegrees));
        var along = area.Vertices.Select(v => (v.XM * cos) + (v.YM * sin)).ToList();
        var across = area.Vertices.Select(v => (v.YM * cos) - (v.XM * sin)).ToList();
        return (along.Max() - along.Min(), across.Max() - across.Min());
    }

    private static void Check(AreaShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Require.InRange(shape.HeightM, 2, 20, nameof(shape.HeightM));
        Require.InRange(shape.TiltDegrees, 0, 45, nameof(shape.TiltDegrees));
        Require.InRange(shape.LeastStepM, 2, 100, nameof(shape.LeastStepM));
        Require.InRange(shape.EdgeOverhangM ?? 0, -5, 5, nameof(shape.EdgeOverhangM));
        Require.InRange(shape.LeastLevelFraction, 0.01, 1, nameof(shape.LeastLevelFraction));
    }

    /// <summary>What stays the same from one placement to the next.</summary>
    private sealed record Problem(
        LightDistribution Distribution,
        (ImmutableArray<LightPoint> Points, int Along, int Across) Grid,
        LightTarget Target,
        double MaintenanceFactor,
        double LeastLevelFraction)
    {
        public Trial Light(ImmutableArray<LuminairePosition> poles)
        {
            var lit = Illuminance.AtPoints(Distribution, poles.AsSpan(), Grid.Points.AsSpan(), MaintenanceFactor);
            var full = Illuminance.Summary(lit, Grid.Along, Grid.Across);
            return new Trial(poles, full, Verdict.Of(full, Target, LeastLevelFraction));
        }
    }

    private sealed record Trial(ImmutableArray<LuminairePosition> Poles, LightResult Full, Verdict Verdict);
}
