using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Luminance seen by one observer at one grid point.</summary>
public readonly record struct LuminancePoint(double XM, double YM, double LuminanceCdM2);

/// <summary>What the driver of one lane sees of the whole carriageway.</summary>
/// <param name="Lane">Lane, 1 at the near edge.</param>
/// <param name="Against">Whether the driver looks against x.</param>
/// <param name="AverageCdM2">Average of the field, cd/m2.</param>
/// <param name="MinimumCdM2">Least of the field, cd/m2.</param>
/// <param name="LongitudinalUniformity">Least over greatest on the centre line of the own lane, fraction.</param>
/// <param name="Points">Field, row by row (y outer, x inner), three rows a lane.</param>
public sealed record ObserverLuminance(
    int Lane, bool Against, double AverageCdM2, double MinimumCdM2, double LongitudinalUniformity, ImmutableArray<LuminancePoint> Points)
{
    /// <summary>Uo = Lmin / Lav, fraction.</summary>
    public double OverallUniformity => AverageCdM2 > 0 ? MinimumCdM2 / AverageCdM2 : 0;
}

/// <summary>Maintained luminance of a carriageway; every figure is that of the observer it is worst for.</summary>
public sealed record LuminanceResult(ImmutableArray<ObserverLuminance> Observers)
{
    public double AverageCdM2 => Observers.Min(o => o.AverageCdM2);

    public double OverallUniformity => Observers.Min(o => o.OverallUniformity);

    public double LongitudinalUniformity => Observers.Min(o => o.LongitudinalUniformity);

    /// <summary>The same at another level: luminance is linear in the level, uniformities do not change.</summary>
    public LuminanceResult AtLevel(double levelFraction) => new([.. Observers.Select(o => o with
    {
        AverageCdM2 = o.AverageCdM2 * levelFraction,
        MinimumCdM2 = o.MinimumCdM2 * levelFraction,
        Points = [.. o.Points.Select(p => p with { LuminanceCdM2 = p.LuminanceCdM2 * levelFraction })],
    })]);
}

/// <summary>
/// Luminance field of a carriageway for the drivers of its lanes. Source: EN 13201-3:2015, clause 8; CIE 140:2000 (rules from memory): the field
/// lies between two luminaires of the first row; the eye is 1.5 m up, 60 m before the field, on the centre line of each lane in turn; points as
/// for illuminance along, three a lane across; luminaires count up to 5 H towards the observer, 12 H away from him and 5 H to either side.
/// </summary>
internal static class RoadLuminance
{
    private const double ObserverBeforeFieldM = 60;
    private const double ReachAheadInHeights = 12;
    private const double ReachBackInHeights = 5;
    private const double ReachAcrossInHeights = 5;

    /// <summary>
    /// Luminance that one luminaire lends a point, L = I r(tan e, beta) / H^2, cd/m2. Source: EN 13201-3:2015, 8.1 (from memory).
    /// Check: 1000 cd, H 10 m, right above the point, R3: 1000 x 0.0294 / 100 = 0.294 cd/m2.
    /// </summary>
    public static double OfLuminaireCdM2(double intensityCd, double heightM, double coefficient) => intensityCd * coefficient / (heightM * heightM);

    public static LuminanceResult OnRoad(RoadField field, RoadSection section, RoadSurface surface, double maintenanceFactor)
    {
        var along = Seen(field, section, surface, maintenanceFactor, against: false);
        return new LuminanceResult(section.BothDirections ? [.. along, .. Seen(field, section, surface, maintenanceFactor, against: true)] : along);
    }

    private static ImmutableArray<ObserverLuminance> Seen(
        RoadField field, RoadSection section, RoadSurface surface, double maintenanceFactor, bool against)
    {
        var along = RoadGrid.PointsAlong(section.SpacingM);
        var grid = RoadGrid.Points(section.SpacingM, 0, section.WidthM, along, RoadGrid.PointsAcrossLane * section.Lanes);
        var luminances = new double[section.Lanes][];
        for (var lane = 0; lane < section.Lanes; lane++) luminances[lane] = new double[grid.Length];
        var seen = new double[section.Lanes];
        for (var i = 0; i < grid.Length; i++)
        {
            AtPoint(field, section, surface, grid[i].XM, grid[i].YM, against, seen);
            for (var lane = 0; lane < seen.Length; lane++) luminances[lane][i] = seen[lane] * maintenanceFactor;
        }

        return [.. luminances.Select((l, lane) => Summary(lane, against, l, grid, along))];
    }

    private static ObserverLuminance Summary(int lane, bool against, double[] luminances, LightPoint[] grid, int along)
    {
        var centre = luminances.AsSpan(((RoadGrid.PointsAcrossLane * lane) + (RoadGrid.PointsAcrossLane / 2)) * along, along).ToArray();
        var greatest = centre.Max();
        var points = grid.Select((p, i) => new LuminancePoint(p.XM, p.YM, luminances[i])).ToImmutableArray();
        return new ObserverLuminance(lane + 1, against, luminances.Average(), luminances.Min(), greatest > 0 ? centre.Min() / greatest : 0, points);
    }

    private static void AtPoint(RoadField field, RoadSection section, RoadSurface surface, double x, double y, bool against, double[] seen)
    {
        Array.Clear(seen);
        foreach (var (mounting, row) in field.Rows)
        {
            var dy = row.YM - y;
            if (Math.Abs(dy) > ReachAcrossInHeights * row.HeightM) continue;
            double ahead = ReachAheadInHeights * row.HeightM, back = ReachBackInHeights * row.HeightM;
            var (first, last) = against ? field.Between(row, x - ahead, x + back) : field.Between(row, x - back, x + ahead);
            for (var k = first; k <= last; k++)
            {
                var dx = field.XOf(row, k) - x;
                var intensity = field.IntensityCd(mounting, -dx, -dy, row.HeightM);
                if (intensity > 0) AddSeen(section, surface, row.HeightM, intensity, (x, y), (dx, dy), against, seen);
            }
        }
    }

    private static void AddSeen(
        RoadSection section,
        RoadSurface surface,
        double heightM,
        double intensityCd,
        (double X, double Y) point,
        (double X, double Y) toLuminaire,
        bool against,
        double[] seen)
    {
        var tangent = Math.Sqrt((toLuminaire.X * toLuminaire.X) + (toLuminaire.Y * toLuminaire.Y)) / heightM;
        var sightX = against ? point.X - section.SpacingM - ObserverBeforeFieldM : point.X + ObserverBeforeFieldM;
        for (var lane = 0; lane < seen.Length; lane++)
        {
            var beta = BetaDegrees(sightX, point.Y - ((lane + 0.5) * section.LaneWidthM), toLuminaire.X, toLuminaire.Y);
            seen[lane] += OfLuminaireCdM2(intensityCd, heightM, surface.Coefficient(tangent, beta));
        }
    }

    /// <summary>Angle in plan between the line of sight carried on beyond the point and the direction to the luminaire, degrees, 0 to 180.</summary>
    private static double BetaDegrees(double sightX, double sightY, double toX, double toY)
    {
        var cross = (sightX * toY) - (sightY * toX);
        var dot = (sightX * toX) + (sightY * toY);
        return Angle.ToDegrees(Math.Atan2(Math.Abs(cross), dot));
    }
}
