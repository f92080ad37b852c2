using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>One plane of a heading study.</summary>
/// <param name="PlaneKWhPerM2">Mean daily irradiation on it by month, kWh/m2, as simulated.</param>
public sealed record HeadingResult(PlaneOrientation Plane, ImmutableArray<double> PlaneKWhPerM2, EnergyResult Result);

/// <summary>One power system with its module facing several ways; the worst governs, since every pole of the road must keep its nights.</summary>
/// <param name="Headings">In the order of the planes.</param>
/// <param name="Worst">Most dark nights a year; of equals most energy not served; of equals the lowest state of charge; of equals the first.</param>
public sealed record HeadingStudy(ImmutableArray<HeadingResult> Headings, HeadingResult Worst)
{
    /// <summary>Runs the balance for each plane.</summary>
    /// <param name="years">Hours on the horizontal.</param>
    /// <param name="planes">Planes, one or more.</param>
    /// <param name="albedo">Ground reflectance, fraction.</param>
    /// <param name="shadedFraction">Share of beam and sky lost to shading, fraction.</param>
    public static HeadingStudy Run(
        HourlyYears years, LampHours lamp, PowerSystem system, IReadOnlyList<PlaneOrientation> planes, double albedo = 0.2, double shadedFraction = 0,
        DiffuseSplit split = DiffuseSplit.Daily)
    {
        if (planes.Count == 0) throw new ArgumentException("at least one plane is needed", nameof(planes));
        var results = planes.AsParallel().AsOrdered().Select(plane =>
        {
            var hours = TiltedPlane.Hourly(years, plane, albedo, shadedFraction, split);
            return new HeadingResult(plane, PoleStudy.MonthlyMeanKWh(hours), EnergyBalance.Run(hours, lamp, system));
        }).ToImmutableArray();
        return new HeadingStudy(results, results
            .OrderByDescending(h => h.Result.DarkNightsPerYear)
            .ThenByDescending(h => h.Result.LossOfLoadFraction)
            .ThenBy(h => h.Result.LowestStateByMonth.Min())
            .First());
    }
}
