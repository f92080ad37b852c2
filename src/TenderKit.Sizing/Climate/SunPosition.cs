using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>The sun at one instant.</summary>
/// <param name="EquationOfTimeMinutes">Solar less mean time, minutes.</param>
/// <param name="DistanceAu">Distance of the earth from the sun, astronomical units.</param>
public sealed record SunAtInstant(double DeclinationDegrees, double EquationOfTimeMinutes, double DistanceAu);

/// <summary>Whether the sun rises and sets on a date.</summary>
public enum SunDay
{
    RisesAndSets,
    NeverSets,
    NeverRises,
}

/// <summary>Sunrise, noon and sunset of one date, hours of the local clock (below 0 or above 24 where they fall on a neighbouring date); rise and set are null where the sun does not cross the elevation.</summary>
public sealed record SunTimes(SunDay Day, double? RiseH, double TransitH, double? SetH);

/// <summary>
/// Declination, equation of time, sunrise and sunset at an instant: the algorithm of the NOAA solar calculation sheet
/// (after Meeus, Astronomical Algorithms). Valid 1901 to 2099; rise and set within some seconds of NREL SPA below 60 degrees of latitude.
/// </summary>
public static class SunPosition
{
    /// <summary>Elevation of the sun's centre at sunrise and sunset: refraction 34 minutes of arc and semidiameter 16 (NOAA sheet), degrees.</summary>
    public const double HorizonElevationDegrees = -0.833;

    private const double UnixEpochJulianDay = 2440587.5;
    private const int Passes = 6;

    /// <summary>Julian day of an instant of universal time.</summary>
    public static double JulianDay(DateTime utc) => UnixEpochJulianDay + (utc - new DateTime(1970, 1, 1, 0, 0, 0, DateTimeKind.Utc)).TotalDays;

    /// <summary>Declination, equation of time and distance at a julian day. Check value: 2455368.75416667 gives 23.43831 degrees, -1.7063 min, 1.01624 AU (NOAA sheet).</summary>
    public static SunAtInstant At(double julianDay)
    {
        var t = (julianDay - 2451545) / 36525;
        var meanLongitude = Angle.Normalised(280.46646 + t * (36000.76983 + 0.0003032 * t));
        var meanAnomaly = 357.52911 + t * (35999.05029 - 0.0001537 * t);
        var eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
        var centre = Centre(t, meanAnomaly);
        var node = 125.04 - 1934.136 * t;
        var longitude = meanLongitude + centre - 0.00569 - 0.00478 * Angle.SinDegrees(node);
        var obliquity = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60 + 0.00256 * Angle.CosDegrees(node);
        var distance = 1.000001018 * (1 - eccentricity * eccentricity) / (1 + eccentricity * Angle.CosDegrees(meanAnomaly + centre));
        return new SunAtInstant(
            Angle.ToDegrees(Math.Asin(Angle.SinDegrees(obliquity) * Angle.SinDegrees(longitude))),
            EquationMinutes(obliquity, meanLongitude, eccentricity, meanAnomaly),
            distance);
    }

    /// <summary>
    /// Sunrise, noon and sunset, each found at its own declination and equation of time by repeated passes.
    /// Near the limits of polar day and night, where the sun only grazes the elevation, the answer is one of the three cases, never NaN.
    /// </summary>
    /// <param name="date">Date of the local clock.</param>
    /// <param name="utcOffsetH">Local clock less universal time, h, -14 to 14.</param>
    /// <param name="elevationDegrees">Elevation of the sun's centre, degrees.</param>
    public static SunTimes TimesOf(
        DateOnly date, double latitudeDegrees, double longitudeDegrees, double utcOffsetH, double elevationDegrees = HorizonElevationDegrees)
    {
        Require.InRange(latitudeDegrees, -90, 90, nameof(latitudeDegrees));
        Require.InRange(longitudeDegrees, -180, 180, nameof(longitudeDegrees));
        var midnight = JulianDay(date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc)) - Require.InRange(utcOffsetH, -14, 14, nameof(utcOffsetH)) / 24;
        double Pass(double hour, int side)
        {
            var sun = At(midnight + hour / 24);
            var noon = 12 - SunGeometry.SolarLessClockMinutes(longitudeDegrees, utcOffsetH, sun.EquationOfTimeMinutes) / 60;
            var half = SunGeometry.SunsetHourAngleRad(latitudeDegrees, Angle.ToRad(sun.DeclinationDegrees), elevationDegrees);
            return noon + side * Angle.ToDegrees(half) / 15;
        }

        double Settle(int side)
        {
            var hour = 12.0;
            for (var i = 0; i < Passes; i++) hour = Pass(hour, side);
            return hour;
        }

        var transit = Settle(0);
        var day = DayKind(latitudeDegrees, Angle.ToRad(At(midnight + transit / 24).DeclinationDegrees), elevationDegrees);
        return day == SunDay.RisesAndSets ? new SunTimes(day, Settle(-1), transit, Settle(1)) : new SunTimes(day, null, transit, null);
    }

    private static SunDay DayKind(double latitudeDegrees, double declinationRad, double elevationDegrees) =>
        SunGeometry.SunsetHourAngleRad(latitudeDegrees, declinationRad, elevationDegrees) switch
        {
            0 => SunDay.NeverRises,
            Math.PI => SunDay.NeverSets,
            _ => SunDay.RisesAndSets,
        };

    private static double Centre(double t, double meanAnomaly) =>
        Angle.SinDegrees(meanAnomaly) * (1.914602 - t * (0.004817 + 0.000014 * t))
        + Angle.SinDegrees(2 * meanAnomaly) * (0.019993 - 0.000101 * t)
        + Angle.SinDegrees(3 * meanAnomaly) * 0.000289;

    private static double EquationMinutes(double obliquity, double meanLongitude, double eccentricity, double meanAnomaly)
    {
        var y = Math.Pow(Angle.TanDegrees(obliquity / 2), 2);
        var e = eccentricity;
        var sinM = Angle.SinDegrees(meanAnomaly);
        return 4 * Angle.ToDegrees(
            y * Angle.SinDegrees(2 * meanLongitude) - 2 * e * sinM + 4 * e * y * sinM * Angle.CosDegrees(2 * meanLongitude)
            - 0.5 * y * y * Angle.SinDegrees(4 * meanLongitude) - 1.25 * e * e * Angle.SinDegrees(2 * meanAnomaly));
    }
}
