using System.Collections.Immutable;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Positions;

/// <summary>One pole on the ground.</summary>
/// <param name="Point">Where the pole stands.</param>
/// <param name="FacingDegrees">Direction in which the lamp looks, clockwise from north.</param>
/// <param name="AlongM">Distance along the line, or along the long side of an area, m.</param>
/// <param name="Side">Side of the line in the direction in which it is drawn, or of the area.</param>
/// <param name="Remark">What to look at, or empty.</param>
public readonly record struct PolePosition(GeoPoint Point, double FacingDegrees, double AlongM, PoleSide Side, string Remark);

/// <summary>Where a pole stands.</summary>
public enum PoleSide
{
    Left,
    Right,
    FirstLongSide,
    SecondLongSide,

    /// <summary>On an area lit as it is drawn.</summary>
    Area,

    /// <summary>As drawn on the map.</summary>
    Drawn,
}

/// <summary>A pole of the schedule.</summary>
/// <param name="Id">Site id and number of the pole on it, such as S1-P03.</param>
/// <param name="HeightM">Mounting height of the lamp, m.</param>
public sealed record ScheduledPole(string Id, string SiteId, string SiteName, string KitId, double HeightM, PolePosition Position);

/// <summary>Poles of every site that is drawn.</summary>
public sealed record PoleSchedule(ImmutableArray<ScheduledPole> Poles, ImmutableArray<Diagnostic> Diagnostics);
