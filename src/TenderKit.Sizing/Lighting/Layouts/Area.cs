using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>A point of the lit plane, m.</summary>
public readonly record struct PlanPoint(double XM, double YM);

/// <summary>
/// A lit area of any shape, bounded by one closed line that does not cross itself, with openings that are not lit; either sense of turning, last
/// vertex not repeated.
/// </summary>
public sealed class Area
{
    private const int LeastPoints = 12;
    private const int MostHalvings = 6;
    private const int CircleVertices = 72;
    private const double GreatestStepM = 10;

    /// <param name="vertices">Three or more, coordinates within 5 km of 0.</param>
    /// <param name="holes">Openings inside it, apart from each other.</param>
    /// <exception cref="ArgumentException">Fewer than three vertices, or nothing enclosed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate outside its range.</exception>
    public Area(ImmutableArray<PlanPoint> vertices, ImmutableArray<ImmutableArray<PlanPoint>> holes = default)
    {
        if (vertices.IsDefault || vertices.Length < 3) throw new ArgumentException("must hold three vertices or more", nameof(vertices));
        foreach (var vertex in vertices)
        {
            Require.InRange(vertex.XM, -5000, 5000, nameof(vertices));
            Require.InRange(vertex.YM, -5000, 5000, nameof(vertices));
        }

        Vertices = vertices;
        (LeftM, BottomM) = (vertices.Min(v => v.XM), vertices.Min(v => v.YM));
        (LengthM, WidthM) = (vertices.Max(v => v.XM) - LeftM, vertices.Max(v => v.YM) - BottomM);
        var (signedM2, centre) = Shoelace(vertices);
        Holes = holes.IsDefault ? [] : holes;
        AreaM2 = Math.Abs(signedM2) - Holes.Sum(h => Math.Abs(Shoelace(h).SignedM2));
        if (AreaM2 < 0.25) throw new ArgumentException("must enclose 0.25 m2 or more", nameof(vertices));
        Centre = centre;
    }

    public ImmutableArray<PlanPoint> Vertices { get; }

    /// <summary>Openings that are not lit.</summary>
    public ImmutableArray<ImmutableArray<PlanPoint>> Holes { get; }

    /// <summary>Enclosed area without the openings, m2 (Gauss's area formula).</summary>
    public double AreaM2 { get; }

    /// <summary>Centre of gravity of what the outer line encloses.</summary>
    public PlanPoint Centre { get; }

    /// <summary>Length of the outer line, m.</summary>
    public double PerimeterM => Vertices.Select((v, i) => (v, Next: Vertices[(i + 1) % Vertices.Length])).Sum(s => Math.Sqrt(Math.Pow(s.Next.XM - s.v.XM, 2) + Math.Pow(s.Next.YM - s.v.YM, 2)));

    /// <summary>Corner and sides of the upright rectangle round the area, m.</summary>
    public double LeftM { get; }

    public double BottomM { get; }

    public double LengthM { get; }

    public double WidthM { get; }

    /// <summary>A rectangle from (0, 0).</summary>
    public static Area Rectangle(double lengthM, double widthM) =>
        new([new(0, 0), new(Require.Positive(lengthM, nameof(lengthM)), 0), new(lengthM, Require.Positive(widthM, nameof(widthM))), new(0, widthM)]);

    /// <summary>A circle as the polygon of 72 corners that has its area.</summary>
    public static Area Circle(PlanPoint centre, double radiusM)
    {
        Require.InRange(radiusM, 0.5, 500, nameof(radiusM));
        const double sector = 2 * Math.PI / CircleVertices;
        var corner = radiusM * Math.Sqrt(sector / Math.Sin(sector));
        return new Area(
            [.. Enumerable.Range(0, CircleVertices).Select(i => new PlanPoint(centre.XM + (corner * Math.Cos(i * sector)), centre.YM + (corner * Math.Sin(i * sector))))]);
    }

    /// <summary>Whether a point lies inside, by the even-odd rule: a ray from it crosses the boundary an odd number of times.</summary>
    public bool Contains(double xM, double yM) => Holds(Vertices, xM, yM) && !Holes.Any(h => Holds(h, xM, yM));

    private static bool Holds(ImmutableArray<PlanPoint> ring, double xM, double yM)
    {
        var inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            var (a, b) = (ring[i], ring[j]);
            if (a.YM > yM != b.YM > yM && xM < a.XM + ((yM - a.YM) / (b.YM - a.YM) * (b.XM - a.XM))) inside = !inside;
        }

        return inside;
    }

    /// <summary>
    /// Calculation points: a grid over the upright rectangle with steps of at most p = 0.2 x 5^(log10 d) m, d the longer side, or the shorter
    /// one where it is less than half of the longer; those inside are kept, and the steps halved until twelve are. Source: EN 12464-2, grid of
    /// outdoor work places (from memory). Check: d 24 m gives p 1.84 m, 14 points.
    /// </summary>
    /// <returns>Points with no light yet, and the points along and across of the rectangle.</returns>
    internal (ImmutableArray<LightPoint> Points, int Along, int Across) Grid()
    {
        var stepM = StepM(LengthM, WidthM);
        var along = Math.Max(1, (int)Math.Ceiling((LengthM / stepM) - 1e-9));
        var across = Math.Max(1, (int)Math.Ceiling((WidthM / stepM) - 1e-9));
        for (var halving = 0; ; halving++, along *= 2, across *= 2)
        {
            var points = Inside(along, across);
            if (points.Length >= LeastPoints || halving == MostHalvings) return (points.Length > 0 ? points : [new(Centre.XM, Centre.YM, 0)], along, across);
        }
    }

    /// <summary>Greatest step of the grid of an area, m; formula at <see cref="Grid"/>.</summary>
    internal static double StepM(double lengthM, double widthM)
    {
        var (longM, shortM) = (Math.Max(lengthM, widthM), Math.Min(lengthM, widthM));
        return Math.Min(GreatestStepM, 0.2 * Math.Pow(5, Math.Log10(Math.Max(1, shortM < longM / 2 ? shortM : longM))));
    }

    private ImmutableArray<LightPoint> Inside(int along, int across)
    {
        var points = ImmutableArray.CreateBuilder<LightPoint>();
        for (var j = 0; j < across; j++)
        {
            for (var i = 0; i < along; i++)
            {
                var (x, y) = (LeftM + ((i + 0.5) * LengthM / along), BottomM + ((j + 0.5) * WidthM / across));
                if (Contains(x, y)) points.Add(new LightPoint(x, y, 0));
            }
        }

        return points.ToImmutable();
    }

    private static (double SignedM2, PlanPoint Centre) Shoelace(ImmutableArray<PlanPoint> vertices)
    {
        var origin = vertices[0];
        double twice = 0, x = 0, y = 0;
        for (var i = 1; i + 1 < vertices.Length; i++)
        {
            double ax = vertices[i].XM - origin.XM, ay = vertices[i].YM - origin.YM;
            double bx = vertices[i + 1].XM - origin.XM, by = vertices[i + 1].YM - origin.YM;
            var cross = (ax * by) - (ay * bx);
            twice += cross;
            x += cross * (ax + bx);
            y += cross * (ay + by);
        }

        var centre = twice == 0 ? origin : new PlanPoint(origin.XM + (x / (3 * twice)), origin.YM + (y / (3 * twice)));
        return (twice / 2, centre);
    }
}
