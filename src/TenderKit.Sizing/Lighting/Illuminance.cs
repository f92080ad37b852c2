using System.Collections.Immutable;
using System.Runtime.InteropServices;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Maintained horizontal illuminance, point by point.</summary>
public static class Illuminance
{
    /// <summary>Luminaires counted lie within this many mounting heights of the point (EN 13201-3:2015, 7.1.4; rule from memory).</summary>
    private const double ReachInHeights = 5;

    /// <summary>
    /// Illuminance over one spacing of an endless road, on the grid of <see cref="RoadGrid"/>. x = 0 is a luminaire of the near side,
    /// y = 0 the near edge. Opposite: a second row at the far edge facing back. Staggered: that row moved by half a spacing.
    /// Source: EN 13201-3:2015, clause 7 (rules from memory). Check: Lambertian 3000 lm, H 8, S 25, W 7, single sided: Eav 5.627 lx.
    /// </summary>
    /// <param name="distribution">Luminaire, new.</param>
    /// <param name="layout">Road; ranges at <see cref="RoadLayout"/>.</param>
    /// <param name="maintenanceFactor">Maintenance factor, above 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle or factor outside its range.</exception>
    public static LightResult OnRoad(LightDistribution distribution, RoadLayout layout, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        Check(layout);
        CheckMaintenance(maintenanceFactor);
        var near = new Row(new Mounting(layout.MountingHeightM, 90, layout.TiltDegrees), layout.OverhangM, 0);
        if (layout.Arrangement == Arrangement.SingleSided) return OverRoad(distribution, layout, [near], maintenanceFactor);

        var offsetM = layout.Arrangement == Arrangement.Staggered ? layout.SpacingM / 2 : 0;
        var far = new Row(new Mounting(layout.MountingHeightM, 270, layout.TiltDegrees), layout.WidthM - layout.OverhangM, offsetM);
        return OverRoad(distribution, layout, [near, far], maintenanceFactor);
    }

    /// <summary>
    /// Illuminance over a rectangular yard lit by the poles of the layout only, every one of them counted. The grid is that of a road
    /// (<see cref="RoadGrid"/> with the long side for the spacing), which is finer than EN 12464-2 asks for: our choice.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle, count or factor outside its range.</exception>
    public static LightResult OnYard(LightDistribution distribution, YardLayout layout, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Require.InRange(layout.LengthM, 1, 1000, nameof(layout));
        Require.InRange(layout.WidthM, 0.5, 500, nameof(layout));
        var along = RoadGrid.PointsAlong(layout.LengthM);
        var across = RoadGrid.PointsAcross(layout.WidthM);
        var points = GridPoints(layout.LengthM, layout.WidthM, along, across);
        return Summary(AtPoints(distribution, PositionsOf(layout).AsSpan(), points, maintenanceFactor), along, across);
    }

    /// <summary>
    /// Illuminance over a whole line with the poles of <see cref="PoleLine.Positions"/> only, every one of them counted: what an endless road
    /// hides, the dark half-step at either end and the light that a single pole lacks. Grid of <see cref="RoadGrid"/> over the whole length.
    /// </summary>
    /// <param name="layout">Shape of the road; its spacing is ignored.</param>
    /// <param name="lengthM">Length of the line, m, 1 to 5000.</param>
    /// <param name="poles">Poles on the line.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle, count or factor outside its range.</exception>
    public static LightResult OnLine(LightDistribution distribution, RoadLayout layout, double lengthM, int poles, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Check(layout with { SpacingM = 10 });
        Require.InRange(lengthM, 1, 5000, nameof(lengthM));
        var along = RoadGrid.PointsAlong(lengthM);
        var across = RoadGrid.PointsAcross(layout.WidthM);
        var points = GridPoints(lengthM, layout.WidthM, along, across);
        return Summary(AtPoints(distribution, PoleLine.Positions(layout, lengthM, poles).AsSpan(), points, maintenanceFactor), along, across);
    }

    /// <summary>Luminaires of a yard: the first pole half a bay from the end, the second side facing back.</summary>
    public static ImmutableArray<LuminairePosition> PositionsOf(YardLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Require.InRange(layout.PolesPerSide, 1, 1000, nameof(layout));
        var bayM = layout.LengthM / layout.PolesPerSide;
        var positions = ImmutableArray.CreateBuilder<LuminairePosition>();
        for (var side = 0; side < (layout.BothSides ? 2 : 1); side++)
        {
            var (yM, facing) = side == 0 ? (layout.OverhangM, 90) : (layout.WidthM - layout.OverhangM, 270);
            for (var i = 0; i < layout.PolesPerSide; i++)
            {
                positions.Add(new LuminairePosition((i + 0.5) * bayM, yM, layout.MountingHeightM, facing, layout.TiltDegrees));
            }
        }

        return positions.ToImmutable();
    }

    /// <summary>Illuminance at points of the lit plane from any set of equal luminaires, each counted however far.</summary>
    /// <param name="points">Points; their illuminance is ignored.</param>
    public static ImmutableArray<LightPoint> AtPoints(
        LightDistribution distribution, ReadOnlySpan<LuminairePosition> luminaires, ReadOnlySpan<LightPoint> points, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        CheckMaintenance(maintenanceFactor);
        var mountings = new Mounting[luminaires.Length];
        for (var i = 0; i < mountings.Length; i++)
        {
            var at = luminaires[i];
            mountings[i] = new Mounting(Require.InRange(at.HeightM, 0.1, 50, nameof(luminaires)), at.FacingDegrees, at.TiltDegrees);
        }

        var lit = ImmutableArray.CreateBuilder<LightPoint>(points.Length);
        foreach (var point in points)
        {
            var sum = 0.0;
            for (var i = 0; i < mountings.Length; i++)
            {
                sum += mountings[i].IlluminanceLx(distribution, point.XM - luminaires[i].XM, point.YM - luminaires[i].YM);
            }

            lit.Add(point with { IlluminanceLx = sum * maintenanceFactor });
        }

        return lit.MoveToImmutable();
    }

    /// <summary>The result with every illuminance multiplied: light is linear in the level of the luminaires.</summary>
    public static LightResult AtLevel(LightResult result, double levelFraction)
    {
        ArgumentNullException.ThrowIfNull(result);
        Require.InRange(levelFraction, 0, 1, nameof(levelFraction));
        return result with
        {
            AverageLx = result.AverageLx * levelFraction,
            MinimumLx = result.MinimumLx * levelFraction,
            MaximumLx = result.MaximumLx * levelFraction,
            Points = [.. result.Points.Select(p => p with { IlluminanceLx = p.IlluminanceLx * levelFraction })],
        };
    }

    internal static void Check(RoadLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Require.InRange(layout.WidthM, 0.5, 40, nameof(layout.WidthM));
        Require.InRange(layout.SpacingM, 2, 120, nameof(layout.SpacingM));
        Require.InRange(layout.MountingHeightM, 2, 20, nameof(layout.MountingHeightM));
        Require.InRange(layout.OverhangM, -5, 5, nameof(layout.OverhangM));
        Require.InRange(layout.TiltDegrees, 0, 45, nameof(layout.TiltDegrees));
    }

    private static void CheckMaintenance(double maintenanceFactor)
    {
        Require.Positive(maintenanceFactor, nameof(maintenanceFactor));
        Require.InRange(maintenanceFactor, 0, 1, nameof(maintenanceFactor));
    }

    private static LightResult OverRoad(LightDistribution distribution, RoadLayout layout, ReadOnlySpan<Row> rows, double maintenanceFactor)
    {
        var along = RoadGrid.PointsAlong(layout.SpacingM);
        var across = RoadGrid.PointsAcross(layout.WidthM);
        var points = GridPoints(layout.SpacingM, layout.WidthM, along, across);
        for (var i = 0; i < points.Length; i++)
        {
            var sum = 0.0;
            foreach (var row in rows) sum += FromRow(distribution, row, layout, points[i]);
            points[i] = points[i] with { IlluminanceLx = sum * maintenanceFactor };
        }

        return Summary(ImmutableCollectionsMarshal.AsImmutableArray(points), along, across);
    }

    private static double FromRow(LightDistribution distribution, in Row row, RoadLayout layout, LightPoint point)
    {
        var reachM = ReachInHeights * layout.MountingHeightM;
        var dy = point.YM - row.YM;
        if (Math.Abs(dy) > reachM) return 0;
        var reachAlongM = Math.Sqrt((reachM * reachM) - (dy * dy));
        var first = (int)Math.Ceiling((point.XM - row.OffsetM - reachAlongM) / layout.SpacingM);
        var last = (int)Math.Floor((point.XM - row.OffsetM + reachAlongM) / layout.SpacingM);
        var sum = 0.0;
        for (var k = first; k <= last; k++)
        {
            sum += row.Mounting.IlluminanceLx(distribution, point.XM - row.OffsetM - (k * layout.SpacingM), dy);
        }

        return sum;
    }

    private static LightPoint[] GridPoints(double lengthM, double widthM, int along, int across)
    {
        var points = new LightPoint[along * across];
        for (var j = 0; j < across; j++)
        {
            for (var i = 0; i < along; i++)
            {
                points[(j * along) + i] = new LightPoint((i + 0.5) * lengthM / along, (j + 0.5) * widthM / across, 0);
            }
        }

        return points;
    }

    private static LightResult Summary(ImmutableArray<LightPoint> points, int along, int across)
    {
        double sum = 0, least = double.PositiveInfinity, greatest = 0;
        foreach (var point in points)
        {
            sum += point.IlluminanceLx;
            least = Math.Min(least, point.IlluminanceLx);
            greatest = Math.Max(greatest, point.IlluminanceLx);
        }

        return new LightResult(sum / points.Length, least, greatest, along, across, points);
    }

    /// <summary>An endless row of luminaires at equal spacing.</summary>
    private readonly record struct Row(Mounting Mounting, double YM, double OffsetM);
}
