using System.Collections.Immutable;
using System.Runtime.InteropServices;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>How the diffuse share of an hour is found.</summary>
public enum DiffuseSplit
{
    /// <summary>Erbs for the day, spread by Liu and Jordan: for hours that were themselves spread from daily totals.</summary>
    Daily,

    /// <summary>Erbs for each hour: for measured or modelled hourly series.</summary>
    Hourly,
}

/// <summary>Irradiation on a tilted plane.</summary>
public static class TiltedPlane
{
    private const double SteepestDegrees = 90;

    /// <summary>Mean daily irradiation on the plane for each month, kWh/m2 (Klein and Theilacker 1981).</summary>
    /// <param name="albedo">Ground reflectance, fraction, 0 to 0.9.</param>
    public static ImmutableArray<double> MonthlyKWhPerM2(MonthlyClimate climate, PlaneOrientation plane, double albedo)
    {
        RequirePlane(plane, albedo);
        return [.. Enumerable.Range(1, 12).Select(m => MonthKWhPerM2(climate, m, plane, albedo))];
    }

    /// <summary>
    /// Hourly irradiation on the plane by HDKR; the beam and sky lost to shading is a fraction of both, the ground part stays.
    /// The sun's path of each of the 365 days is worked out once and serves all years.
    /// </summary>
    /// <param name="albedo">Ground reflectance, fraction, 0 to 0.9.</param>
    /// <param name="shadedFraction">Share of beam and sky lost to shading, 0 to 1.</param>
    public static PlaneYears Hourly(
        HourlyYears years, PlaneOrientation plane, double albedo, double shadedFraction, DiffuseSplit split = DiffuseSplit.Daily)
    {
        RequirePlane(plane, albedo);
        Require.InRange(shadedFraction, 0, 1, nameof(shadedFraction));
        var path = PlanePath.Of(years.LatitudeDegrees, plane);
        var output = new double[years.GlobalWhPerM2.Length];
        var input = years.GlobalWhPerM2.AsSpan();
        var open = 1 - shadedFraction;
        for (var start = 0; start < output.Length; start += 24)
        {
            var day = start / 24 % MonthDays.DaysCount;
            path.Day(day, input.Slice(start, 24), output.AsSpan(start, 24), albedo, open, split);
        }

        return new PlaneYears(plane, years, ImmutableCollectionsMarshal.AsImmutableArray(output));
    }

    /// <summary>
    /// Tilt (whole degrees, from <paramref name="leastTiltDegrees"/> to 90) facing the equator that gives the most in the worst month of
    /// supply over demand; of equals the flattest. On the equator the plane faces south.
    /// </summary>
    /// <param name="monthlyDemand">Twelve relative demands, any unit; months without demand are left out.</param>
    public static PlaneOrientation BestForWorstMonth(MonthlyClimate climate, ImmutableArray<double> monthlyDemand, double leastTiltDegrees, double albedo)
    {
        Require.InRange(leastTiltDegrees, 0, SteepestDegrees, nameof(leastTiltDegrees));
        var azimuth = climate.LatitudeDegrees >= 0 ? 180.0 : 0.0;
        var best = new PlaneOrientation(Math.Ceiling(leastTiltDegrees), azimuth);
        var most = double.NegativeInfinity;
        for (var tilt = best.TiltDegrees; tilt <= SteepestDegrees; tilt++)
        {
            var plane = new PlaneOrientation(tilt, azimuth);
            var worst = WorstRatio(MonthlyKWhPerM2(climate, plane, albedo), monthlyDemand);
            if (worst <= most + 1e-12) continue;
            (best, most) = (plane, worst);
        }

        return best;
    }

    private static double WorstRatio(ImmutableArray<double> supply, ImmutableArray<double> demand)
    {
        var worst = double.PositiveInfinity;
        for (var m = 0; m < 12; m++)
        {
            if (demand[m] > 0) worst = Math.Min(worst, supply[m] / demand[m]);
        }

        return worst;
    }

    private static double MonthKWhPerM2(MonthlyClimate climate, int month, PlaneOrientation plane, double albedo)
    {
        var global = climate.IrradiationKWhPerM2[month - 1];
        var delta = SunGeometry.DeclinationRad(SunGeometry.MeanDayOfMonth(month));
        var clearness = SunGeometry.MonthlyClearness(climate.LatitudeDegrees, month, global);
        if (double.IsNaN(clearness)) return 0;
        var diffuse = DiffuseFraction.Monthly(clearness, SunGeometry.SunsetHourAngleRad(climate.LatitudeDegrees, delta));
        return global * KleinTheilacker.Ratio(climate.LatitudeDegrees, delta, plane, diffuse, albedo);
    }

    private static void RequirePlane(PlaneOrientation plane, double albedo)
    {
        Require.InRange(plane.TiltDegrees, 0, SteepestDegrees, nameof(plane));
        Require.InRange(plane.AzimuthDegrees, -360, 360, nameof(plane));
        Require.InRange(albedo, 0, 0.9, nameof(albedo));
    }
}
