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
    private const double CoarseTiltDegrees = 5;
    private const double CoarseAzimuthDegrees = 15;

    /// <summary>Mean daily irradiation on the plane for each month, kWh/m2: the sum of <see cref="MonthlyParts"/>.</summary>
    /// <param name="albedo">Ground reflectance, fraction, 0 to 0.9.</param>
    /// <param name="horizon">Line of the surroundings; null for a level horizon.</param>
    public static ImmutableArray<double> MonthlyKWhPerM2(MonthlyClimate climate, PlaneOrientation plane, double albedo, HorizonProfile? horizon = null) =>
        [.. MonthlyParts(climate, plane, albedo, horizon).Select(m => m.TotalKWhPerM2)];

    /// <summary>
    /// Mean daily irradiation on the plane for each month by where it comes from: Klein and Theilacker 1981 with the day's ratio scaled to a whole day, so
    /// that a level plane receives the horizontal. Behind a horizon beam is cut hour by hour of the mean day, and the sky by its view factor.
    /// </summary>
    /// <param name="albedo">Ground reflectance, fraction, 0 to 0.9.</param>
    /// <param name="horizon">Line of the surroundings; null for a level horizon.</param>
    public static ImmutableArray<PlaneMonth> MonthlyParts(MonthlyClimate climate, PlaneOrientation plane, double albedo, HorizonProfile? horizon = null)
    {
        RequirePlane(plane, albedo);
        return new PlaneMonths(climate, horizon).Of(plane, albedo);
    }

    /// <summary>
    /// Hourly irradiation on the plane by HDKR; the beam and sky lost to shading is a fraction of both, the ground part stays.
    /// The sun's path of each of the 365 days is worked out once and serves all years.
    /// </summary>
    /// <remarks>
    /// Behind a horizon line the beam and the part of the sky around the sun are cut while the sun stands below it (steps of 5 minutes), the uniform part of
    /// the sky to <see cref="HorizonProfile.SkyViewFraction"/>, horizon brightening with it; the ground part stays. The obstacles themselves are taken as black.
    /// </remarks>
    /// <param name="albedo">Ground reflectance, fraction, 0 to 0.9.</param>
    /// <param name="shadedFraction">Share of beam and sky lost to shading, on top of the horizon, 0 to 1.</param>
    /// <param name="horizon">Line of the surroundings; null for a level horizon.</param>
    public static PlaneYears Hourly(
        HourlyYears years, PlaneOrientation plane, double albedo, double shadedFraction, DiffuseSplit split = DiffuseSplit.Daily, HorizonProfile? horizon = null)
    {
        RequirePlane(plane, albedo);
        Require.InRange(shadedFraction, 0, 1, nameof(shadedFraction));
        var path = PlanePath.Of(years.LatitudeDegrees, plane, horizon);
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
    /// <param name="horizon">Line of the surroundings; null for a level horizon.</param>
    /// <param name="azimuthDegrees">Where the plane must face, degrees clockwise from north; null for the equator.</param>
    public static PlaneOrientation BestForWorstMonth(
        MonthlyClimate climate, ImmutableArray<double> monthlyDemand, double leastTiltDegrees, double albedo, HorizonProfile? horizon = null, double? azimuthDegrees = null)
    {
        var least = LeastTilt(leastTiltDegrees);
        return new PlaneSearch(climate, monthlyDemand, albedo, horizon).Best(Whole(least, SteepestDegrees), [azimuthDegrees ?? EquatorAzimuth(climate)]);
    }

    /// <summary>
    /// Tilt and azimuth (whole degrees, tilt from <paramref name="leastTiltDegrees"/> to 90) that give the most in the worst month of supply over demand:
    /// every 5 degrees of tilt and 15 of azimuth, then every degree around the best of them. Of equals the one facing the equator, then the flattest.
    /// </summary>
    /// <param name="monthlyDemand">Twelve relative demands, any unit; months without demand are left out.</param>
    /// <param name="horizon">Line of the surroundings; null for a level horizon.</param>
    public static PlaneOrientation Best(
        MonthlyClimate climate, ImmutableArray<double> monthlyDemand, double leastTiltDegrees, double albedo, HorizonProfile? horizon = null)
    {
        var least = LeastTilt(leastTiltDegrees);
        var search = new PlaneSearch(climate, monthlyDemand, albedo, horizon);
        var equator = EquatorAzimuth(climate);
        var coarse = search.Best(Whole(least, SteepestDegrees).Where(t => (t - least) % CoarseTiltDegrees == 0), Around(equator, 180, CoarseAzimuthDegrees));
        return search.Best(
            Whole(Math.Max(least, coarse.TiltDegrees - CoarseTiltDegrees), Math.Min(SteepestDegrees, coarse.TiltDegrees + CoarseTiltDegrees)),
            Around(coarse.AzimuthDegrees, CoarseAzimuthDegrees, 1));
    }

    private static double EquatorAzimuth(MonthlyClimate climate) => climate.LatitudeDegrees >= 0 ? 180 : 0;

    private static double LeastTilt(double leastTiltDegrees) => Math.Ceiling(Require.InRange(leastTiltDegrees, 0, SteepestDegrees, nameof(leastTiltDegrees)));

    private static IEnumerable<double> Whole(double from, double to) => Enumerable.Range(0, (int)(to - from) + 1).Select(i => from + i);

    /// <summary>An azimuth and those to both sides of it, nearest first.</summary>
    private static IEnumerable<double> Around(double azimuth, double farthest, double step) =>
        Enumerable.Range(0, (int)(farthest / step) + 1).SelectMany(i => i == 0 ? new[] { azimuth } : [Angle.Normalised(azimuth + i * step), Angle.Normalised(azimuth - i * step)]).Distinct();

    /// <summary>Tries planes for the worst month of supply over demand.</summary>
    private sealed class PlaneSearch(MonthlyClimate climate, ImmutableArray<double> demand, double albedo, HorizonProfile? horizon)
    {
        private readonly PlaneMonths months = new(climate, horizon);

        public PlaneOrientation Best(IEnumerable<double> tilts, IEnumerable<double> azimuths)
        {
            var (best, most) = (default(PlaneOrientation), double.NegativeInfinity);
            foreach (var azimuth in azimuths)
            {
                foreach (var tilt in tilts)
                {
                    var plane = new PlaneOrientation(tilt, azimuth);
                    RequirePlane(plane, albedo);
                    var worst = WorstRatio([.. months.Of(plane, albedo).Select(m => m.TotalKWhPerM2)], demand);
                    if (best is not null && worst <= most + 1e-12) continue;
                    (best, most) = (plane, worst);
                }
            }

            return best!;
        }
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

    private static void RequirePlane(PlaneOrientation plane, double albedo)
    {
        Require.InRange(plane.TiltDegrees, 0, SteepestDegrees, nameof(plane));
        Require.InRange(plane.AzimuthDegrees, -360, 360, nameof(plane));
        Require.InRange(albedo, 0, 0.9, nameof(albedo));
    }
}
