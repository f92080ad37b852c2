using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Maintained horizontal illuminance over areas of any shape.</summary>
public static class AreaLight
{
    /// <summary>
    /// Illuminance over an area from given luminaires, every one of them counted however far. Points lie inside the area only, so the
    /// result holds fewer than its points along times its points across, which describe the upright rectangle round it.
    /// </summary>
    /// <param name="distribution">Luminaire, new.</param>
    /// <param name="area">Lit area.</param>
    /// <param name="luminaires">Luminaires, inside the area or not.</param>
    /// <param name="maintenanceFactor">Maintenance factor, above 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A height or factor outside its range.</exception>
    public static LightResult Of(LightDistribution distribution, Area area, ReadOnlySpan<LuminairePosition> luminaires, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(area);
        var (points, along, across) = area.Grid();
        return Illuminance.Summary(Illuminance.AtPoints(distribution, luminaires, points.AsSpan(), maintenanceFactor), along, across);
    }

    /// <summary>A single pole in the middle of the circle it lights.</summary>
    /// <param name="pole">Luminaire; its photometric centre stands over the middle of the circle.</param>
    /// <param name="radiusM">Radius of the circle, m, 0.5 to 500.</param>
    public static LightResult OfSinglePole(LightDistribution distribution, LuminairePosition pole, double radiusM, double maintenanceFactor) =>
        Of(distribution, Area.Circle(new PlanPoint(pole.XM, pole.YM), radiusM), [pole], maintenanceFactor);

    /// <summary>A single pole and the rectangle round it, from (0, 0) to (length, width).</summary>
    /// <param name="pole">Luminaire, anywhere inside the rectangle or beside it.</param>
    public static LightResult OfSinglePole(
        LightDistribution distribution, LuminairePosition pole, double lengthM, double widthM, double maintenanceFactor) =>
        Of(distribution, Area.Rectangle(lengthM, widthM), [pole], maintenanceFactor);
}

/// <summary>Luminaires spread over an area.</summary>
public static class AreaPlacement
{
    /// <summary>
    /// Luminaires on a rectangular lattice, those inside the area. The lattice stands on the area's centre of gravity, turned and shifted.
    /// </summary>
    /// <param name="stepAlongM">Step of the lattice along its own x, m, 1 or more.</param>
    /// <param name="stepAcrossM">Step along its own y, m, 1 or more.</param>
    /// <param name="turnDegrees">Turn of the lattice, degrees counter-clockwise.</param>
    /// <param name="shiftAlongFraction">Part of a step the lattice is moved along x, 0 to 1; 0 puts a luminaire on the centre.</param>
    /// <param name="shiftAcrossFraction">The same along y.</param>
    /// <param name="facingDegrees">Direction all face, or null to face the centre of the area.</param>
    public static ImmutableArray<LuminairePosition> OnLattice(
        Area area,
        double stepAlongM,
        double stepAcrossM,
        double turnDegrees,
        double shiftAlongFraction,
        double shiftAcrossFraction,
        double heightM,
        double tiltDegrees,
        double? facingDegrees)
    {
        ArgumentNullException.ThrowIfNull(area);
        Require.InRange(stepAlongM, 1, 10_000, nameof(stepAlongM));
        Require.InRange(stepAcrossM, 1, 10_000, nameof(stepAcrossM));
        var (cos, sin) = (Angle.CosDegrees(turnDegrees), Angle.SinDegrees(turnDegrees));
        var reachM = area.LengthM + area.WidthM;
        var (columns, rows) = ((int)(reachM / stepAlongM) + 1, (int)(reachM / stepAcrossM) + 1);
        var positions = ImmutableArray.CreateBuilder<LuminairePosition>();
        for (var j = -rows; j <= rows; j++)
        {
            for (var i = -columns; i <= columns; i++)
            {
                double u = (i + shiftAlongFraction) * stepAlongM, v = (j + shiftAcrossFraction) * stepAcrossM;
                var (x, y) = (area.Centre.XM + (u * cos) - (v * sin), area.Centre.YM + (u * sin) + (v * cos));
                if (area.Contains(x, y)) positions.Add(new LuminairePosition(x, y, heightM, facingDegrees ?? Towards(area.Centre, x, y), tiltDegrees));
            }
        }

        return positions.ToImmutable();
    }

    /// <summary>Foot of a pole that carries a luminaire on an arm of so much reach, m.</summary>
    public static PlanPoint Foot(LuminairePosition luminaire, double reachM) => new(
        luminaire.XM - (reachM * Angle.CosDegrees(luminaire.FacingDegrees)), luminaire.YM - (reachM * Angle.SinDegrees(luminaire.FacingDegrees)));

    /// <summary>
    /// Luminaires on both edges of an area as seen square to an axis, or on one: at even steps along the axis, the first half a step from the end,
    /// where the line across enters the area or leaves it for the last time; each faces across. On a rectangle the rows of a yard.
    /// </summary>
    /// <param name="axisDegrees">Direction of the axis, degrees from +x towards +y.</param>
    /// <param name="steps">Lines across, 1 to 1,000; one that misses the area gives no luminaire.</param>
    /// <param name="near">Luminaires on the right of the axis.</param>
    /// <param name="far">Luminaires on its left.</param>
    /// <param name="overhangM">Photometric centre inside the edge, m; negative when set back.</param>
    public static ImmutableArray<LuminairePosition> AcrossAxis(
        Area area, double axisDegrees, int steps, bool near, bool far, double overhangM, double heightM, double tiltDegrees)
    {
        ArgumentNullException.ThrowIfNull(area);
        Require.InRange(steps, 1, 1000, nameof(steps));
        var (cos, sin) = (Angle.CosDegrees(axisDegrees), Angle.SinDegrees(axisDegrees));
        ImmutableArray<PlanPoint> turned = [.. area.Vertices.Select(v => new PlanPoint((v.XM * cos) + (v.YM * sin), (v.YM * cos) - (v.XM * sin)))];
        var (startM, lengthM) = (turned.Min(v => v.XM), turned.Max(v => v.XM) - turned.Min(v => v.XM));
        var positions = ImmutableArray.CreateBuilder<LuminairePosition>();
        void Add(double u, double v, double facing) => positions.Add(new((u * cos) - (v * sin), (u * sin) + (v * cos), heightM, facing, tiltDegrees));
        for (var i = 0; i < steps; i++)
        {
            var u = startM + ((i + 0.5) * lengthM / steps);
            if (Crossings(turned, u) is not { } edge) continue;
            if (near) Add(u, edge.Low + overhangM, axisDegrees + 90);
            if (far) Add(u, edge.High - overhangM, axisDegrees + 270);
        }

        return positions.ToImmutable();
    }

    /// <summary>Where the line x = u first enters a ring and last leaves it.</summary>
    private static (double Low, double High)? Crossings(ImmutableArray<PlanPoint> ring, double u)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            var (a, b) = (ring[i], ring[j]);
            if (a.XM > u == b.XM > u) continue;
            var v = a.YM + ((u - a.XM) / (b.XM - a.XM) * (b.YM - a.YM));
            (low, high) = (Math.Min(low, v), Math.Max(high, v));
        }

        return low < high ? (low, high) : null;
    }

    /// <summary>Luminaires at equal steps along the boundary, each facing square inwards.</summary>
    /// <param name="count">Luminaires, 1 to 10,000.</param>
    /// <param name="overhangM">Photometric centre inside the boundary, m; negative when set back, -5 to 5.</param>
    /// <param name="startFraction">Where the first stands, part of a step from the first vertex, 0 to 1.</param>
    public static ImmutableArray<LuminairePosition> AlongBoundary(Area area, int count, double overhangM, double heightM, double tiltDegrees, double startFraction = 0.5)
    {
        ArgumentNullException.ThrowIfNull(area);
        Require.InRange(count, 1, 10_000, nameof(count));
        Require.InRange(overhangM, -5, 5, nameof(overhangM));
        var sides = Sides(area);
        var stepM = sides.Sum(s => s.LengthM) / count;
        var positions = ImmutableArray.CreateBuilder<LuminairePosition>(count);
        var (side, passedM) = (0, 0.0);
        for (var i = 0; i < count; i++)
        {
            var atM = (i + startFraction) * stepM;
            while (side < sides.Count - 1 && atM > passedM + sides[side].LengthM) passedM += sides[side++].LengthM;
            positions.Add(sides[side].Luminaire(atM - passedM, overhangM, heightM, tiltDegrees));
        }

        return positions.MoveToImmutable();
    }

    private static double Towards(PlanPoint centre, double xM, double yM) =>
        Math.Abs(centre.XM - xM) + Math.Abs(centre.YM - yM) < 1e-6 ? 90 : Angle.ToDegrees(Math.Atan2(centre.YM - yM, centre.XM - xM));

    private static List<Side> Sides(Area area)
    {
        var signed = 0.0;
        var vertices = area.Vertices;
        for (var i = 0; i < vertices.Length; i++)
        {
            var (a, b) = (vertices[i], vertices[(i + 1) % vertices.Length]);
            signed += (a.XM * b.YM) - (b.XM * a.YM);
        }

        var inwards = signed > 0 ? 90 : -90;
        return [.. vertices.Select((a, i) => Side.Of(a, vertices[(i + 1) % vertices.Length], inwards)).Where(s => s.LengthM > 0)];
    }

    private sealed record Side(PlanPoint From, double LengthM, double DirectionDegrees, double FacingDegrees)
    {
        public static Side Of(PlanPoint from, PlanPoint to, double inwardsDegrees)
        {
            var direction = Angle.ToDegrees(Math.Atan2(to.YM - from.YM, to.XM - from.XM));
            return new Side(from, Math.Sqrt(Squared(to.XM - from.XM) + Squared(to.YM - from.YM)), direction, direction + inwardsDegrees);
        }

        public LuminairePosition Luminaire(double alongM, double overhangM, double heightM, double tiltDegrees) => new(
            From.XM + (alongM * Angle.CosDegrees(DirectionDegrees)) + (overhangM * Angle.CosDegrees(FacingDegrees)),
            From.YM + (alongM * Angle.SinDegrees(DirectionDegrees)) + (overhangM * Angle.SinDegrees(FacingDegrees)),
            heightM,
            FacingDegrees,
            tiltDegrees);

        private static double Squared(double value) => value * value;
    }
}
