using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>What the hours of a series are.</summary>
public enum SeriesKind
{
    /// <summary>Whole calendar years measured at the ground.</summary>
    MeasuredYears,

    /// <summary>Whole calendar years from satellites and weather models.</summary>
    SatelliteYears,

    /// <summary>One year put together from typical months of several years: extreme months are left out by construction.</summary>
    TypicalYear,
}

/// <summary>Whole years of hours in local standard time, 365 days a year. Index = (year x 365 + day) x 24 + hour; hour h runs from h to h + 1.</summary>
/// <param name="Years">Calendar years in their order; empty for a typical year.</param>
/// <param name="LatitudeDegrees">Latitude, degrees, north positive, -90 to 90.</param>
/// <param name="LongitudeDegrees">Longitude, degrees, east positive, -180 to 180.</param>
/// <param name="UtcOffsetH">Local standard time less universal time, h, -14 to 14.</param>
/// <param name="GlobalWhPerM2">Global horizontal irradiation of the hour, Wh/m2.</param>
/// <param name="AirC">Air temperature, degC.</param>
/// <param name="Source">Where it comes from, as printed.</param>
public sealed record HourlySeries(
    SeriesKind Kind,
    ImmutableArray<int> Years,
    double LatitudeDegrees,
    double LongitudeDegrees,
    double UtcOffsetH,
    ImmutableArray<double> GlobalWhPerM2,
    ImmutableArray<double> AirC,
    string Source)
{
    /// <summary>First calendar year; null for a typical year.</summary>
    public int? FirstYear => Years.Length > 0 ? Years[0] : null;

    /// <summary>Whole years of hours.</summary>
    public int YearCount => GlobalWhPerM2.Length / MonthDays.HoursCount;

    /// <summary>The same hours in local solar time; the energy of each clock hour is split over the two solar hours it falls in.</summary>
    /// <exception cref="ArgumentException">The arrays are no whole years, or not of one length.</exception>
    public HourlyYears ToYears() => SolarTime.Of(Whole());

    /// <summary>Means of the twelve calendar months over all years.</summary>
    /// <param name="recordMarginK">Taken beyond the lowest and the highest hour for the record temperatures, K.</param>
    /// <exception cref="ArgumentException">The arrays are no whole years, or not of one length.</exception>
    public MonthlyClimate ToMonthly(double recordMarginK = 0) => SeriesMonths.Of(Whole(), Require.NotNegative(recordMarginK, nameof(recordMarginK)));

    private HourlySeries Whole() =>
        YearCount > 0 && GlobalWhPerM2.Length == YearCount * MonthDays.HoursCount && AirC.Length == GlobalWhPerM2.Length
            ? this
            : throw new ArgumentException("a series holds whole years of 8760 hours, as many temperatures as irradiations");
}
