using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>Whole years of days, 365 days a year. Index = year x 365 + day; a missing value is null, a quantity the source does not hold is an empty array.</summary>
/// <param name="Years">Calendar years in their order.</param>
/// <param name="LatitudeDegrees">Latitude, degrees, north positive, -90 to 90.</param>
/// <param name="LongitudeDegrees">Longitude, degrees, east positive, -180 to 180.</param>
/// <param name="GlobalKWhPerM2">Global horizontal irradiation of the day, kWh/m2.</param>
/// <param name="MeanC">Mean air temperature of the day, degC.</param>
/// <param name="MaxC">Highest air temperature of the day, degC.</param>
/// <param name="MinC">Lowest air temperature of the day, degC.</param>
/// <param name="Source">Where it comes from, as printed.</param>
public sealed record DailySeries(
    ImmutableArray<int> Years,
    double LatitudeDegrees,
    double LongitudeDegrees,
    ImmutableArray<double?> GlobalKWhPerM2,
    ImmutableArray<double?> MeanC,
    ImmutableArray<double?> MaxC,
    ImmutableArray<double?> MinC,
    string Source)
{
    /// <summary>Means of the twelve calendar months over all years and days that hold a value; NaN for a month without any, empty where the quantity is not held.</summary>
    public static ImmutableArray<double> MonthMeans(ImmutableArray<double?> days) => days.IsEmpty
        ? []
        : [.. Enumerable.Range(1, 12).Select(m => days.Where((v, i) => v is not null && MonthDays.MonthOf(i % MonthDays.DaysCount) == m).DefaultIfEmpty(double.NaN).Average(v => v!.Value))];
}
