using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>The line of hills, walls and trees around a place: elevation over azimuth, straight between the points and from the last round to the first.</summary>
/// <param name="Points">
/// Azimuth, degrees clockwise from north, 0 to 360, and elevation above the level horizon, degrees, 0 to 90, in any order; none for a level horizon.
/// One azimuth has one elevation: a sharp edge takes two points a little apart.
/// </param>
/// <exception cref="ArgumentException">Two elevations at one azimuth.</exception>
/// <exception cref="ArgumentOutOfRangeException">A point outside its range.</exception>
public sealed record HorizonProfile(ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> Points)
{
    private const int Steps = 720;

    private readonly double[] lineRad = Line(Ordered(Points));

    /// <summary>A level horizon: nothing in the way.</summary>
    public static HorizonProfile Flat { get; } = new([]);

    /// <summary>The points in the order of their azimuths, 0 to below 360.</summary>
    public ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> Points { get; } = Ordered(Points);

    /// <summary>Whether nothing stands above the level horizon.</summary>
    public bool IsFlat => Points.All(p => p.ElevationDegrees == 0);

    /// <summary>The same elevation all round.</summary>
    public static HorizonProfile Uniform(double elevationDegrees) => new([(0, elevationDegrees)]);

    /// <summary>Elevation of the line at an azimuth, degrees.</summary>
    /// <param name="azimuthDegrees">Any angle, degrees clockwise from north.</param>
    public double ElevationDegreesAt(double azimuthDegrees) => ElevationAt(Points, azimuthDegrees);

    /// <summary>
    /// Share of a uniform sky's irradiation that a plane still receives, over what falls on the horizontal under an open sky: the integral of cos(incidence)
    /// over the sky above the line and in front of the plane, over pi. Known results: open sky (1 + cos tilt) / 2 (Liu and Jordan); a horizontal plane
    /// within a uniform line of elevation e cos^2 e. Closed form over elevation, steps of half a degree over azimuth, scaled to the open sky's known result.
    /// Check value: uniform 20 degrees, horizontal plane: 0.8830.
    /// </summary>
    public double SkyViewFraction(PlaneOrientation plane)
    {
        Require.InRange(plane.TiltDegrees, 0, 90, nameof(plane));
        var (seen, open) = (0.0, 0.0);
        for (var i = 0; i < Steps; i++)
        {
            open += Slice(0, AzimuthOf(i), plane);
            seen += Slice(lineRad[i], AzimuthOf(i), plane);
        }

        return seen / open * (1 + Angle.CosDegrees(plane.TiltDegrees)) / 2;
    }

    public bool Equals(HorizonProfile? other) => other is not null && Points.SequenceEqual(other.Points);

    public override int GetHashCode() => Points.Aggregate(0, (hash, point) => HashCode.Combine(hash, point));

    private static double AzimuthOf(int step) => (step + 0.5) * 360 / Steps;

    private static double[] Line(ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> points) =>
        [.. Enumerable.Range(0, Steps).Select(i => Angle.ToRad(ElevationAt(points, AzimuthOf(i))))];

    private static double ElevationAt(ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> points, double azimuthDegrees)
    {
        if (points.Length == 0) return 0;
        var azimuth = Angle.Normalised(azimuthDegrees);
        var after = 0;
        while (after < points.Length && points[after].AzimuthDegrees <= azimuth) after++;
        var (from, to) = (points[(after + points.Length - 1) % points.Length], points[after % points.Length]);
        var width = points.Length == 1 ? 360 : Angle.Normalised(to.AzimuthDegrees - from.AzimuthDegrees);
        var way = Angle.Normalised(azimuth - from.AzimuthDegrees) / width;
        return from.ElevationDegrees + way * (to.ElevationDegrees - from.ElevationDegrees);
    }

    /// <summary>Integral of cos(incidence) cos(elevation) from the line, or from where the plane first sees the sky, to the zenith, at one azimuth.</summary>
    private static double Slice(double lineRad, double azimuthDegrees, PlaneOrientation plane)
    {
        var flat = Angle.CosDegrees(plane.TiltDegrees);
        var steep = Angle.SinDegrees(plane.TiltDegrees) * Angle.CosDegrees(azimuthDegrees - plane.AzimuthDegrees);
        var from = Math.Max(lineRad, steep < 0 ? Math.Atan2(-steep, flat) : 0);
        var (sin, cos) = (Math.Sin(from), Math.Cos(from));
        return Math.Max(0, flat * cos * cos / 2 + steep * ((Math.PI / 2 - from) / 2 - sin * cos / 2));
    }

    /// <summary>The points, so that two lines that differ read differently.</summary>
    public override string ToString() => "horizon " + string.Join(' ', Points.Select(p => FormattableString.Invariant($"{p.AzimuthDegrees}:{p.ElevationDegrees}")));

    private static ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> Ordered(ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> points)
    {
        if (points.IsDefault) throw new ArgumentException("a horizon holds its points, or none", nameof(points));
        foreach (var (azimuth, elevation) in points)
        {
            Require.InRange(azimuth, 0, 360, nameof(points));
            Require.InRange(elevation, 0, 90, nameof(points));
        }

        var ordered = points.Select(p => (AzimuthDegrees: p.AzimuthDegrees % 360, p.ElevationDegrees)).Distinct().OrderBy(p => p.AzimuthDegrees).ToImmutableArray();
        for (var i = 1; i < ordered.Length; i++)
        {
            if (ordered[i].AzimuthDegrees == ordered[i - 1].AzimuthDegrees) throw new ArgumentException("a horizon has one elevation at one azimuth", nameof(points));
        }

        return ordered;
    }
}
