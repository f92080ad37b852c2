using System.Collections.Immutable;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Regions;

/// <summary>A place of a region.</summary>
/// <param name="Climate">Climate of the place as a site row would name it, or null for the built-in estimate.</param>
public sealed record RegionPlace(string Name, GeoPoint Point, string? Climate);

/// <summary>A box of a region, degrees, and the distance between the places it is sampled at.</summary>
public sealed record RegionBox(double SouthDegrees, double NorthDegrees, double WestDegrees, double EastDegrees, double StepKm);

/// <summary>What a tender asks for before its sites are known: a quantity of light somewhere in a region.</summary>
/// <param name="Kind">Road or path.</param>
/// <param name="Poles">Poles asked for, or null.</param>
/// <param name="LengthM">Length to be lit, m, or null.</param>
/// <param name="SpacingM">Spacing asked for beside the poles, m, or null to find it.</param>
public sealed record RegionAsk(string Name, SiteKind Kind, int? Poles, double? LengthM, double? SpacingM, ImmutableArray<RegionPlace> Places, RegionBox? Box);
