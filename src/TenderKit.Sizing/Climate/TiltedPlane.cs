using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>Irradiation on a tilted plane.</summary>
public static class TiltedPlane
{
    /// <summary>Mean daily irradiation on the plane for each month, kWh/m2 (Klein and Theilacker 1981).</summary>
    public static ImmutableArray<double> MonthlyKWhPerM2(MonthlyClimate climate, PlaneOrientation plane, double albedo) => throw new NotImplementedException();

    /// <summary>Hourly irradiation on the plane; the beam and sky lost to shading is a fraction of both.</summary>
    public static PlaneYears Hourly(HourlyYears years, PlaneOrientation plane, double albedo, double shadedFraction) => throw new NotImplementedException();

    /// <summary>Tilt (whole degrees, from <paramref name="leastTiltDegrees"/>) facing the equator that gives the most in the worst month of supply over demand.</summary>
    /// <param name="monthlyDemand">Twelve relative demands, any unit.</param>
    public static PlaneOrientation BestForWorstMonth(MonthlyClimate climate, ImmutableArray<double> monthlyDemand, double leastTiltDegrees, double albedo) => throw new NotImplementedException();
}
