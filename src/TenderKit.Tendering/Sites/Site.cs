using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Positions;

namespace TenderKit.Tendering.Sites;

/// <summary>What kind of place is to be lit.</summary>
public enum SiteKind
{
    Road,
    Path,
    Yard,
}

/// <summary>One site of the tender, fully resolved: row values over the tender's defaults.</summary>
/// <param name="Id">Site number as written in the list.</param>
/// <param name="Name">Name as written.</param>
/// <param name="Row">Row of the site list.</param>
/// <param name="LengthM">Length of the line, or the long side of a yard, m.</param>
/// <param name="WidthM">Width of the lit strip, or the short side of a yard, m.</param>
/// <param name="FixedPoles">Number of poles asked for, or null to find it.</param>
/// <param name="ShadedFraction">Irradiation lost to obstacles, fraction.</param>
/// <param name="MountingHeightsM">Least and greatest mounting height allowed, m, ascending; one value when only one is.</param>
/// <param name="BasicWindMPerS">Wind speed at 10 m as stated, m/s; what it is stands in <see cref="Ground"/>.</param>
/// <param name="SoilStated">False when the soil was not stated and the worst class was taken.</param>
/// <param name="ClimateFile">Climate of this site: a file, a name under the tender's climates or "estimate"; null for the tender's default.</param>
public sealed record Site(
    string Id,
    string Name,
    int Row,
    double LatitudeDegrees,
    double LongitudeDegrees,
    SiteKind Kind,
    double LengthM,
    double WidthM,
    LightTarget Target,
    LightingSchedule Schedule,
    int? FixedPoles,
    Arrangement Arrangement,
    double ShadedFraction,
    System.Collections.Immutable.ImmutableArray<double> MountingHeightsM,
    double BasicWindMPerS,
    Terrain Terrain,
    SoilClass Soil,
    bool SoilStated,
    string Lot,
    string? ClimateFile,
    string Remark)
{
    /// <summary>What is drawn of the site on a map, or null.</summary>
    public SiteGeometry? Geometry { get; init; }

    /// <summary>District, ward or commune; empty when not stated.</summary>
    public string District { get; init; } = "";

    /// <summary>False when the position was not stated and that of the other sites was taken.</summary>
    public bool IsPositionStated { get; init; } = true;

    /// <summary>Skyline seen from the module, or null for a free one.</summary>
    public HorizonProfile? Horizon { get; init; }

    /// <summary>Direction the module must face, degrees clockwise from north; null for the equator.</summary>
    public double? AzimuthDegrees { get; init; }

    /// <summary>What else it says of wind, air, traffic and ground.</summary>
    public SiteGround Ground { get; init; } = SiteGround.Usual;

    /// <summary>The wind its standard works with, and how the stated speed became it.</summary>
    public (WindCase Wind, ConvertedWind Conversion) Wind =>
        WindCase.Of(Ground.Standard, BasicWindMPerS, Ground.Definition ?? WindCase.Wanted(Ground.Standard), Terrain);

    /// <summary>Side on which a single row stands, seen along the line as drawn; null where it is not stated.</summary>
    public PoleSide? Side { get; init; }

    /// <summary>Direction of the road, degrees clockwise from north; null where it is not known.</summary>
    public double? BearingDegrees { get; init; }

    /// <summary>Whether somebody stood on the site; until then its quantities are provisional.</summary>
    public bool IsSurveyed { get; init; }

    /// <summary>Day of the survey, or null when not stated.</summary>
    public DateOnly? SurveyedOn { get; init; }
}
