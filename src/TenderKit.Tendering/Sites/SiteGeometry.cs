using System.Collections.Immutable;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Tendering.Sites;

/// <summary>What is drawn of a site: its line, or its area.</summary>
/// <param name="Parts">Lines, or outer rings without their closing points.</param>
public sealed record SiteGeometry(MapShape Shape, ImmutableArray<ImmutableArray<GeoPoint>> Parts)
{
    /// <summary>Poles drawn on the map, which are kept; empty when they are to be placed.</summary>
    public ImmutableArray<GeoPoint> Poles { get; init; } = [];

    /// <summary>The area that is lit as drawn, in metres; null for a line, and for an area whose outline crosses itself or is beyond the light calculation.</summary>
    public DrawnArea? Lit { get; init; }

    /// <summary>Bends of the line, as parts of its length in ascending order; empty for an area.</summary>
    public ImmutableArray<double> BendFractions { get; init; } = [];

    /// <summary>Direction of a road drawn as one line, from its first to its last point, degrees clockwise from north; null for an area, for several lines, and where both ends meet.</summary>
    public double? BearingDegrees => Shape == MapShape.Line && Parts is [[var first, .., var last]] && first != last ? Geodesic.Between(first, last).AzimuthDegrees : null;

    /// <summary>Length as drawn, m.</summary>
    public double LengthM => Parts.Sum(p => MapMeasure.LengthM(p, Shape == MapShape.Area));
}

/// <summary>An area drawn on a map, in metres east and north.</summary>
/// <param name="Frame">Back to the ground.</param>
public sealed record DrawnArea(Area Area, PlanFrame Frame)
{
    /// <summary>Widest area lit as drawn, m: a place of one lighting layout. Common practice, no source.</summary>
    private const double GreatestExtentM = 1000;

    /// <summary>The area of a ring and its openings, or null when the ring crosses itself, encloses nothing or is wider than a kilometre.</summary>
    /// <param name="holes">Openings; those that do not lie inside the ring are no concern of it.</param>
    public static DrawnArea? Of(ImmutableArray<GeoPoint> ring, ImmutableArray<ImmutableArray<GeoPoint>> holes)
    {
        if (ring.Length < 3 || MapMeasure.CrossesItself(ring)) return null;
        var frame = new PlanFrame(ring);
        ImmutableArray<PlanPoint> outline = [.. ring.Select(frame.ToPlan)];
        if (outline.Any(p => Math.Abs(p.XM) > GreatestExtentM || Math.Abs(p.YM) > GreatestExtentM)) return null;
        var inside = holes.Where(h => !MapMeasure.CrossesItself(h) && h.All(p => MapMeasure.Holds(ring, p))).Select(h => h.Select(frame.ToPlan).ToImmutableArray()).ToImmutableArray();
        const double leastM2 = 4;
        var enclosedM2 = MapMeasure.AreaM2(ring) - holes.Sum(MapMeasure.AreaM2);
        return enclosedM2 < leastM2 ? null : new DrawnArea(new Area(outline, inside), frame);
    }
}
