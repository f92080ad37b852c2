using System.Collections.Immutable;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Intake.Maps;

/// <summary>The smallest rectangle around an area.</summary>
/// <param name="Corner">Corner from which the two sides run.</param>
/// <param name="LongSideM">Length of the long side, m.</param>
/// <param name="ShortSideM">Length of the short side, m.</param>
/// <param name="LongAzimuthDegrees">Direction of the long side from the corner, clockwise from north.</param>
/// <param name="ShortAzimuthDegrees">Direction of the short side from the corner.</param>
public sealed record BoundingRectangle(GeoPoint Corner, double LongSideM, double ShortSideM, double LongAzimuthDegrees, double ShortAzimuthDegrees);

/// <summary>Measures on the ground of what is drawn.</summary>
public static class MapMeasure
{
    /// <summary>Length of a line, m on WGS84.</summary>
    public static double LengthM(ImmutableArray<GeoPoint> line, bool isClosed = false)
    {
        double sum = 0;
        for (var i = 1; i < line.Length; i++) sum += Geodesic.Between(line[i - 1], line[i]).LengthM;
        return isClosed && line.Length > 1 ? sum + Geodesic.Between(line[^1], line[0]).LengthM : sum;
    }

    /// <summary>The point in the middle of a line.</summary>
    public static GeoPoint Middle(ImmutableArray<GeoPoint> line) => PointAt(line, LengthM(line) / 2).Point;

    /// <summary>The point at a distance along a line, with the direction of the line there; beyond its ends the ends.</summary>
    public static (GeoPoint Point, double AzimuthDegrees) PointAt(ImmutableArray<GeoPoint> line, double distanceM)
    {
        var left = Math.Max(0, distanceM);
        var azimuth = 0.0;
        for (var i = 1; i < line.Length; i++)
        {
            var piece = Geodesic.Between(line[i - 1], line[i]);
            if (piece.LengthM == 0) continue;
            azimuth = piece.AzimuthDegrees;
            if (left <= piece.LengthM) return (Geodesic.Along(line[i - 1], azimuth, left), azimuth);
            left -= piece.LengthM;
        }

        return (line[^1], azimuth);
    }

    /// <summary>Area inside a ring, m2: the plane area in the frame at its middle, right to 0.01 % for places smaller than a few kilometres.</summary>
    public static double AreaM2(ImmutableArray<GeoPoint> ring) => new PlanFrame(ring).PolygonOf(ring).Area;

    /// <summary>A point inside a ring.</summary>
    public static GeoPoint Inside(ImmutableArray<GeoPoint> ring)
    {
        var frame = new PlanFrame(ring);
        return frame.Back(frame.PolygonOf(ring).InteriorPoint.Coordinate);
    }

    /// <summary>Whether a ring crosses or touches itself, so that its inside is not known.</summary>
    public static bool CrossesItself(ImmutableArray<GeoPoint> ring) => !new PlanFrame(ring).PolygonOf(ring).ExteriorRing.IsSimple;

    /// <summary>Whether a point lies in a ring or within a distance of it.</summary>
    public static bool Holds(ImmutableArray<GeoPoint> ring, GeoPoint point, double withinM = 0)
    {
        var frame = new PlanFrame(ring);
        return frame.PolygonOf(ring).Distance(new Point(frame.Forth(point))) <= withinM;
    }

    /// <summary>Distance of a point from a line, m.</summary>
    public static double DistanceM(ImmutableArray<GeoPoint> line, GeoPoint point)
    {
        if (line.Length == 1) return Geodesic.Between(line[0], point).LengthM;
        var frame = new PlanFrame([point]);
        return new LineString([.. line.Select(frame.Forth)]).Distance(new Point(frame.Forth(point)));
    }

    /// <summary>Distances along a line at which another line meets it, m.</summary>
    public static ImmutableArray<double> Junctions(ImmutableArray<GeoPoint> line, ImmutableArray<GeoPoint> other, double withinM)
    {
        if (line.Length < 2 || other.Length < 2) return [];
        var frame = new PlanFrame(line);
        var (own, second) = (new LineString([.. line.Select(frame.Forth)]), new LineString([.. other.Select(frame.Forth)]));
        if (own.Distance(second) > withinM) return [];
        var index = new NetTopologySuite.LinearReferencing.LengthIndexedLine(own);
        var crossing = own.Intersection(second);
        var met = crossing.IsEmpty ? new[] { second.StartPoint, second.EndPoint }.Where(p => own.Distance(p) <= withinM).Select(p => p.Coordinate) : crossing.Coordinates;
        var scale = LengthM(line) / Math.Max(own.Length, 1e-9);
        return [.. met.Select(c => index.Project(c) * scale).Order()];
    }

    /// <summary>The smallest rectangle around a ring.</summary>
    public static BoundingRectangle Rectangle(ImmutableArray<GeoPoint> ring)
    {
        var frame = new PlanFrame(ring);
        var corners = MinimumAreaRectangle.GetMinimumRectangle(frame.PolygonOf(ring)).Coordinates;
        if (corners.Length < 4) return new(ring[0], 0, 0, 0, 90);
        var (a, b, d) = (corners[0], corners[1], corners[3]);
        var (first, second) = (a.Distance(b), a.Distance(d));
        var (longEnd, shortEnd) = first >= second ? (b, d) : (d, b);
        return new(frame.Back(a), Math.Max(first, second), Math.Min(first, second), Bearing(a, longEnd), Bearing(a, shortEnd));
    }

    private static double Bearing(Coordinate from, Coordinate to)
    {
        var degrees = Math.Atan2(to.X - from.X, to.Y - from.Y) * 180 / Math.PI;
        return degrees < 0 ? degrees + 360 : degrees;
    }
}
