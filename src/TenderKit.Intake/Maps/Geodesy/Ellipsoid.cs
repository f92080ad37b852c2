namespace TenderKit.Intake.Maps.Geodesy;

/// <summary>An ellipsoid of revolution.</summary>
/// <param name="SemiMajorM">Equatorial radius a, m.</param>
/// <param name="Flattening">f = (a - b)/a.</param>
public sealed record Ellipsoid(double SemiMajorM, double Flattening)
{
    /// <summary>WGS84 (NIMA TR8350.2, table 3.1): a = 6 378 137 m, 1/f = 298.257 223 563. From memory.</summary>
    public static readonly Ellipsoid Wgs84 = new(6378137, 1 / 298.257223563);

    public double SemiMinorM => SemiMajorM * (1 - Flattening);
}

/// <summary>A point of the earth, degrees.</summary>
public readonly record struct GeoPoint(double LatitudeDegrees, double LongitudeDegrees);
