using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>How far the monthly irradiation can be trusted, best first. Each has its own cautious factor in the design rules; see <see cref="ClimateGrades"/>.</summary>
public enum ClimateGrade
{
    /// <summary>Means of at least ten years measured at the ground, stated with their years.</summary>
    MeasuredRecord,

    /// <summary>Means of several years from satellites and weather models.</summary>
    SatelliteSeries,

    /// <summary>Means of a year put together from typical months.</summary>
    TypicalYear,

    /// <summary>Twelve monthly means with a named source, of a kind or a length that is not stated.</summary>
    MeansWithSource,

    /// <summary>Twelve monthly means typed or supplied without a source.</summary>
    Unsourced,

    /// <summary>Interpolated from the built-in reference table, nearest station within 300 km.</summary>
    EstimateNear,

    /// <summary>Interpolated from the built-in reference table, nearest station farther than 300 km.</summary>
    EstimateFar,
}

/// <summary>Monthly climate of one place. Arrays hold twelve values, January first.</summary>
/// <param name="LatitudeDegrees">Latitude, degrees, north positive, -90 to 90.</param>
/// <param name="LongitudeDegrees">Longitude, degrees, east positive, -180 to 180.</param>
/// <param name="IrradiationKWhPerM2">Mean daily global horizontal irradiation, kWh/m2 a day.</param>
/// <param name="MeanC">Mean air temperature, degC.</param>
/// <param name="DailyMaxC">Mean daily maximum air temperature, degC.</param>
/// <param name="DailyMinC">Mean daily minimum air temperature, degC.</param>
/// <param name="RecordLowC">Lowest temperature to design for, degC.</param>
/// <param name="RecordHighC">Highest temperature to design for, degC.</param>
/// <param name="Grade">How far it can be trusted.</param>
/// <param name="Source">Where it comes from, as printed.</param>
/// <param name="NearestStationKm">Distance to the nearest station of an estimate, km, or null.</param>
/// <param name="TemperatureStationKm">Distance to the nearest station of estimated temperatures, km, or null.</param>
public sealed record MonthlyClimate(
    double LatitudeDegrees,
    double LongitudeDegrees,
    ImmutableArray<double> IrradiationKWhPerM2,
    ImmutableArray<double> MeanC,
    ImmutableArray<double> DailyMaxC,
    ImmutableArray<double> DailyMinC,
    double RecordLowC,
    double RecordHighC,
    ClimateGrade Grade,
    string Source,
    double? NearestStationKm = null,
    double? TemperatureStationKm = null)
{
    /// <summary>Years the means are of, where known.</summary>
    public int? YearCount { get; init; }

    /// <summary>Spread of a month's irradiation between the years of the series itself, fraction of its mean; null where too few years are known to tell.</summary>
    public double? YearSpreadFraction { get; init; }
}

/// <summary>One station of the built-in reference table; temperatures are null where the table holds sunshine only.</summary>
public sealed record ReferenceStation(
    string Name,
    string Country,
    double LatitudeDegrees,
    double LongitudeDegrees,
    ImmutableArray<double> IrradiationKWhPerM2,
    ImmutableArray<double>? MeanC,
    ImmutableArray<double>? DailyMaxC,
    ImmutableArray<double>? DailyMinC,
    double? LowC,
    double? HighC,
    string Source);

/// <summary>Settings of the synthetic years; each is a design rule.</summary>
/// <param name="YearCount">Years to make, 1 to 200.</param>
/// <param name="Seed">Seed of the random generator.</param>
/// <param name="DayToDayCorrelation">Lag-one autocorrelation of the normal score of daily clearness, fraction.</param>
/// <param name="YearToYearSpreadFraction">Standard deviation of one month's clearness from year to year, fraction of its mean.</param>
/// <param name="Shape">Distribution of daily clearness.</param>
/// <param name="MonthToMonthCorrelation">Correlation of a month's deviation from its long-run mean with that of the month before, fraction, 0 to 0.95.</param>
/// <param name="DispersionFactor">Factor on the deviations of the days from their month's mean, on top of <see cref="DailyDispersion"/>, 0.5 to 1.5; 1 with the Markov library.</param>
public sealed record SequenceSettings(
    int YearCount,
    int Seed,
    double DayToDayCorrelation,
    double YearToYearSpreadFraction,
    ClearnessShape Shape = ClearnessShape.Saunier,
    double MonthToMonthCorrelation = 0,
    double DispersionFactor = 1)
{
    /// <summary>Least factor on the deviations of the days.</summary>
    public const double LeastDispersionFactor = 0.5;

    /// <summary>Greatest factor on the deviations of the days.</summary>
    public const double GreatestDispersionFactor = 1.5;
}

/// <summary>Years of hours in local solar time, 365 days a year. Index = (year x 365 + day) x 24 + hour; hour h runs from h to h + 1.</summary>
/// <param name="GlobalWhPerM2">Global horizontal irradiation of the hour, Wh/m2.</param>
/// <param name="AirC">Air temperature, degC.</param>
public sealed record HourlyYears(double LatitudeDegrees, int YearCount, ImmutableArray<double> GlobalWhPerM2, ImmutableArray<double> AirC);

/// <summary>A tilted plane. Azimuth in degrees clockwise from north.</summary>
public sealed record PlaneOrientation(double TiltDegrees, double AzimuthDegrees);

/// <summary>Irradiation on a plane for the same hours as the <see cref="HourlyYears"/> it was made from.</summary>
public sealed record PlaneYears(PlaneOrientation Plane, HourlyYears Weather, ImmutableArray<double> PlaneWhPerM2);

/// <summary>Darkness of one day of a 365-day year, hours of local solar time: the lamp burns from <see cref="DuskH"/> to 24 and from 0 to <see cref="DawnH"/>.</summary>
/// <param name="DayOfYear">1 to 365.</param>
/// <param name="DuskH">Sun passes the switching elevation downwards, h; 24 when it never gets dark, 12 when the sun never rises above it.</param>
/// <param name="DawnH">Sun passes the switching elevation upwards, h; 0 when it never gets dark, 12 when the sun never rises above it.</param>
public sealed record NightOfYear(int DayOfYear, double DuskH, double DawnH)
{
    /// <summary>Hours of darkness of this calendar day (its morning and its evening), h, 0 to 24.</summary>
    public double DarkH => DawnH + 24 - DuskH;
}
