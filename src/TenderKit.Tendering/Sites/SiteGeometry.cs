using System.Collections.Immutable;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Tendering.Sites;

/// <summary>What is drawn of a site: its line, or its area.</summary>
/// <param name="Parts">Lines, or outer rings without their closing points.</param>
public sealed record SiteGeometry(MapShape Shape, ImmutableArray<ImmutableArray<GeoPoint>> Parts)
{
    /// <summary>Poles drawn on the map, which are kept; empty when they are to be placed.</summary>
    public ImmutableArray<GeoPoint> Poles { get; init; } = [];

    /// <summary>Direction of a road drawn as one line, from its first to its last point, degrees clockwise from north; null for an area, for several lines, and where both ends meet.</summary>
    public double? BearingDegrees => Shape == MapShape.Line && Parts is [[var first, .., var last]] && first != last ? Geodesic.Between(first, last).AzimuthDegrees : null;

    /// <summary>Length as drawn, m.</summary>
    public double LengthM => Parts.Sum(p => MapMeasure.LengthM(p, Shape == MapShape.Area));
}
