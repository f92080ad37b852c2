using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>The skyline seen from a place.</summary>
/// <param name="Points">Azimuth in degrees clockwise from north, 0 to 360, ascending, and elevation of the skyline there in degrees.</param>
public sealed record HorizonProfile(ImmutableArray<(double AzimuthDegrees, double ElevationDegrees)> Points);
