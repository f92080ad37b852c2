using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Maintained horizontal illuminance, point by point.</summary>
public static class Illuminance
{
    /// <summary>Points done at once by <see cref="AtPoints"/>: their coordinates and sums stay in the nearest memory of the processor.</summary>
    private const int PointsAtOnce = 256;

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
        var field = new RowField();
        return field.WithPoints(OnBay(distribution, layout, maintenanceFactor, field), maintenanceFactor);
    }

    /// <summary>
    /// Illuminance over a rectangular yard lit by the poles of the layout only, every one of them counted. Along and across the
    /// grid is the finer of that of a road (<see cref="RoadGrid"/> with the long side for the spacing) and that of an area (EN 12464-2, from
    /// memory, <see cref="Area.StepM"/>): a coarse grid would miss the dark corners.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle, count or factor outside its range.</exception>
    public static LightResult OnYard(LightDistribution distribution, YardLayout layout, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Require.InRange(layout.LengthM, 1, 1000, nameof(layout));
        Require.InRange(layout.WidthM, 0.5, 500, nameof(layout));
        var stepM = Area.StepM(layout.LengthM, layout.WidthM);
        var along = Math.Max(RoadGrid.PointsAlong(layout.LengthM), (int)Math.Ceiling((layout.LengthM / stepM) - 1e-9));
        var across = Math.Max(RoadGrid.PointsAcross(layout.WidthM), (int)Math.Ceiling((layout.WidthM / stepM) - 1e-9));
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
        Span<double> xs = stackalloc double[PointsAtOnce], ys = stackalloc double[PointsAtOnce], sums = stackalloc double[PointsAtOnce];
        for (var from = 0; from < points.Length; from += PointsAtOnce)
        {
            var some = points.Slice(from, Math.Min(PointsAtOnce, points.Length - from));
            var padded = LightKernel.Padded(some.Length);
            for (var i = 0; i < padded; i++)
            {
                var point = some[Math.Min(i, some.Length - 1)];
                (xs[i], ys[i], sums[i]) = (point.XM, point.YM, 0);
            }

            for (var i = 0; i < mountings.Length; i++)
            {
                LightKernel.Add(distribution, mountings[i], luminaires[i].XM, luminaires[i].YM, xs[..padded], ys[..padded], sums[..padded]);
            }

            for (var i = 0; i < some.Length; i++) lit.Add(some[i] with { IlluminanceLx = sums[i] * maintenanceFactor });
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

    /// <summary>The same on a field whose memory is used again; the result lacks its points.</summary>
    internal static LightResult OnBay(LightDistribution distribution, RoadLayout layout, double maintenanceFactor, RowField field)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        Check(layout);
        CheckMaintenance(maintenanceFactor);
        field.Lay(layout.SpacingM, 0, layout.WidthM);
        field.AddRow(distribution, new Mounting(layout.MountingHeightM, 90, layout.TiltDegrees), layout.OverhangM, 0, layout.SpacingM);
        if (layout.Arrangement == Arrangement.Opposite) field.AddTurned(0);
        if (layout.Arrangement == Arrangement.Staggered && field.Along % 2 == 0) field.AddTurned(field.Along / 2);
        else if (layout.Arrangement == Arrangement.Staggered) AddFarRow(distribution, layout, field);
        return field.Summary(maintenanceFactor);
    }

    /// <summary>Light of the layout on some points of its grid only, lx, new.</summary>
    internal static ReadOnlySpan<double> OnSomePoints(LightDistribution distribution, RoadLayout layout, ReadOnlySpan<int> indexes, RowField field)
    {
        field.Lay(layout.SpacingM, 0, layout.WidthM);
        field.Keep(indexes);
        field.AddRow(distribution, new Mounting(layout.MountingHeightM, 90, layout.TiltDegrees), layout.OverhangM, 0, layout.SpacingM);
        if (layout.Arrangement != Arrangement.SingleSided) AddFarRow(distribution, layout, field);
        return field.SumsLx;
    }

    internal static void CheckMaintenance(double maintenanceFactor)
    {
        Require.Positive(maintenanceFactor, nameof(maintenanceFactor));
        Require.InRange(maintenanceFactor, 0, 1, nameof(maintenanceFactor));
    }

    internal static LightResult Summary(ImmutableArray<LightPoint> points, int along, int across)
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

    internal static void Check(RoadLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Require.InRange(layout.WidthM, 0.5, 40, nameof(layout.WidthM));
        Require.InRange(layout.SpacingM, 2, 120, nameof(layout.SpacingM));
        Require.InRange(layout.MountingHeightM, 2, 20, nameof(layout.MountingHeightM));
        Require.InRange(layout.OverhangM, -5, 5, nameof(layout.OverhangM));
        Require.InRange(layout.TiltDegrees, 0, 45, nameof(layout.TiltDegrees));
    }

    private static void AddFarRow(LightDistribution distribution, RoadLayout layout, RowField field)
    {
        var offsetM = layout.Arrangement == Arrangement.Staggered ? layout.SpacingM / 2 : 0;
        var far = new Mounting(layout.MountingHeightM, 270, layout.TiltDegrees);
        field.AddRow(distribution, far, layout.WidthM - layout.OverhangM, offsetM, layout.SpacingM);
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
}
