using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Maps;

/// <summary>
/// A plane of metres that touches the ellipsoid in the middle of a few points: metres east and north by the radii of curvature of meridian
/// and prime vertical there. Within 2 km of its origin and 60 degrees of the equator lengths are right to 0.1 %.
/// </summary>
public sealed class PlanFrame
{
    private readonly GeoPoint origin;
    private readonly double northM;
    private readonly double eastM;

    /// <param name="points">One or more; the frame touches at their mean latitude and at the longitude of the first.</param>
    public PlanFrame(ImmutableArray<GeoPoint> points)
    {
        origin = new(points.Average(p => p.LatitudeDegrees), points[0].LongitudeDegrees);
        var (sin, cos) = Math.SinCos(origin.LatitudeDegrees * Math.PI / 180);
        var e2 = Ellipsoid.Wgs84.Flattening * (2 - Ellipsoid.Wgs84.Flattening);
        var w = 1 - (e2 * sin * sin);
        northM = Ellipsoid.Wgs84.SemiMajorM * (1 - e2) / (w * Math.Sqrt(w)) * Math.PI / 180;
        eastM = Math.Max(1e-9, Ellipsoid.Wgs84.SemiMajorM / Math.Sqrt(w) * cos * Math.PI / 180);
    }

    /// <summary>Metres east (x) and north (y) of a point on the ground.</summary>
    public PlanPoint ToPlan(GeoPoint point)
    {
        var c = Forth(point);
        return new(c.X, c.Y);
    }

    /// <summary>The point on the ground of metres east and north.</summary>
    public GeoPoint ToGround(PlanPoint plan) => Back(new(plan.XM, plan.YM));

    internal Coordinate Forth(GeoPoint p) =>
        new(Math.IEEERemainder(p.LongitudeDegrees - origin.LongitudeDegrees, 360) * eastM, (p.LatitudeDegrees - origin.LatitudeDegrees) * northM);

    internal GeoPoint Back(Coordinate c) => new(origin.LatitudeDegrees + (c.Y / northM), Math.IEEERemainder(origin.LongitudeDegrees + (c.X / eastM), 360));

    internal Polygon PolygonOf(ImmutableArray<GeoPoint> ring)
    {
        var shell = ring.Select(Forth).ToList();
        while (shell.Count < 3) shell.Add(shell[^1].Copy());
        shell.Add(shell[0].Copy());
        return new Polygon(new LinearRing([.. shell]));
    }
}
