using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Distances on the earth taken as a sphere of 6371 km.</summary>
public static class GreatCircle
{
    private const double EarthRadiusKm = 6371.0;

    /// <summary>Great-circle distance, km, by the haversine formula. Check value: one degree of a meridian is 111.2 km.</summary>
    public static double DistanceKm(double latitude1Degrees, double longitude1Degrees, double latitude2Degrees, double longitude2Degrees)
    {
        var half = Angle.SinDegrees((latitude2Degrees - latitude1Degrees) / 2);
        var across = Angle.SinDegrees((longitude2Degrees - longitude1Degrees) / 2);
        var h = half * half + Angle.CosDegrees(latitude1Degrees) * Angle.CosDegrees(latitude2Degrees) * across * across;
        return 2 * EarthRadiusKm * Math.Asin(Math.Min(1, Math.Sqrt(h)));
    }
}
