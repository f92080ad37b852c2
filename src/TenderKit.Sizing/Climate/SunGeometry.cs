using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Daily sun geometry: declination, sunset hour angle, day length, extraterrestrial irradiation.
/// D&amp;B below is Duffie, Beckman and Blair, Solar Engineering of Thermal Processes, 5th ed., Wiley 2020.
/// Hour angles are radians, negative before solar noon; surface azimuths are degrees clockwise from north.
/// </summary>
public static class SunGeometry
{
    /// <summary>Solar constant, W/m2 (D&amp;B section 1.2).</summary>
    public const double SolarConstantWPerM2 = 1367;

    private static readonly int[] MeanDays = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344];

    /// <summary>Declination by Spencer (1971), degrees. D&amp;B eq. 1.6.1b.</summary>
    /// <param name="dayOfYear">1 to 365, fractions allowed.</param>
    public static double DeclinationDegrees(double dayOfYear) => Angle.ToDegrees(DeclinationRad(dayOfYear));

    /// <summary>Declination by Spencer (1971), rad. Check value: day 17 gives -20.9 degrees (D&amp;B table 1.6.1).</summary>
    public static double DeclinationRad(double dayOfYear)
    {
        var b = YearAngleRad(dayOfYear);
        return 0.006918 - 0.399912 * Math.Cos(b) + 0.070257 * Math.Sin(b) - 0.006758 * Math.Cos(2 * b)
            + 0.000907 * Math.Sin(2 * b) - 0.002697 * Math.Cos(3 * b) + 0.00148 * Math.Sin(3 * b);
    }

    /// <summary>Equation of time by Spencer (1971), minutes: solar less mean time. D&amp;B eq. 1.5.3. Check value: 3 February gives -13.5.</summary>
    public static double EquationOfTimeMinutes(double dayOfYear)
    {
        var b = YearAngleRad(dayOfYear);
        return 229.18 * (0.0000075 + 0.001868 * Math.Cos(b) - 0.032077 * Math.Sin(b) - 0.014615 * Math.Cos(2 * b) - 0.040849 * Math.Sin(2 * b));
    }

    /// <summary>Solar time less clock time, minutes: 4 (longitude - meridian of the clock) + equation of time, longitudes east positive. D&amp;B eq. 1.5.2.</summary>
    public static double SolarLessClockMinutes(double longitudeDegrees, double utcOffsetH, double equationOfTimeMinutes) =>
        4 * (longitudeDegrees - 15 * utcOffsetH) + equationOfTimeMinutes;

    /// <summary>Extraterrestrial normal irradiance over the solar constant, 1 + 0.033 cos(360 n / 365), fraction. D&amp;B eq. 1.4.1a.</summary>
    public static double DistanceFactor(double dayOfYear) => 1 + 0.033 * Math.Cos(2 * Math.PI * dayOfYear / 365);

    /// <summary>Extraterrestrial normal irradiance over the solar constant by Spencer's series, fraction. D&amp;B eq. 1.4.1b.</summary>
    public static double DistanceFactorSpencer(double dayOfYear)
    {
        var b = YearAngleRad(dayOfYear);
        return 1.000110 + 0.034221 * Math.Cos(b) + 0.001280 * Math.Sin(b) + 0.000719 * Math.Cos(2 * b) + 0.000077 * Math.Sin(2 * b);
    }

    /// <summary>
    /// Hour angle at which the sun's centre passes an elevation, rad, 0 (never above it) to pi (never below it).
    /// cos w = (sin h - sin phi sin delta) / (cos phi cos delta); h = 0 gives D&amp;B eq. 1.6.10. Never NaN, poles included.
    /// </summary>
    public static double SunsetHourAngleRad(double latitudeDegrees, double declinationRad, double elevationDegrees = 0)
    {
        var lat = Angle.ToRad(Require.InRange(latitudeDegrees, -90, 90, nameof(latitudeDegrees)));
        var rise = Math.Sin(Angle.ToRad(elevationDegrees)) - Math.Sin(lat) * Math.Sin(declinationRad);
        var scale = Math.Cos(lat) * Math.Cos(declinationRad);
        if (scale < 1e-12) return rise > 0 ? 0 : Math.PI;
        return Math.Acos(Math.Clamp(rise / scale, -1, 1));
    }

    /// <summary>Day length, h: 2 w / 15, without refraction (D&amp;B eq. 1.6.11; FAO-56 eq. 34).</summary>
    public static double DayLengthH(double latitudeDegrees, double dayOfYear) =>
        Angle.ToDegrees(SunsetHourAngleRad(latitudeDegrees, DeclinationRad(dayOfYear))) * 2 / 15;

    /// <summary>H0, extraterrestrial daily irradiation on a horizontal plane, kWh/m2, with Spencer's declination.</summary>
    public static double DailyExtraterrestrialKWhPerM2(double latitudeDegrees, double dayOfYear) =>
        DailyExtraterrestrialKWhPerM2(latitudeDegrees, DeclinationRad(dayOfYear), DistanceFactor(dayOfYear) * SolarConstantWPerM2);

    /// <summary>
    /// H0 from declination and extraterrestrial normal irradiance: (24 / pi) Gon (cos phi cos delta sin ws + ws sin phi sin delta).
    /// D&amp;B eq. 1.10.3; FAO-56 eq. 21. Check value: 43 N, 15 April gives 33.8 MJ/m2 (D&amp;B example 1.10.1).
    /// </summary>
    public static double DailyExtraterrestrialKWhPerM2(double latitudeDegrees, double declinationRad, double normalWPerM2)
    {
        var lat = Angle.ToRad(latitudeDegrees);
        var ws = SunsetHourAngleRad(latitudeDegrees, declinationRad);
        var sum = Math.Cos(lat) * Math.Cos(declinationRad) * Math.Sin(ws) + ws * Math.Sin(lat) * Math.Sin(declinationRad);
        return Math.Max(0, 24 / Math.PI * normalWPerM2 * sum / 1000);
    }

    /// <summary>I0, extraterrestrial irradiation on a horizontal plane between two hour angles within the day, Wh/m2. D&amp;B eq. 1.10.4.</summary>
    public static double ExtraterrestrialWhPerM2(double latitudeDegrees, double declinationRad, double normalWPerM2, double fromRad, double toRad)
    {
        var ws = SunsetHourAngleRad(latitudeDegrees, declinationRad);
        var w1 = Math.Clamp(fromRad, -ws, ws);
        var w2 = Math.Clamp(toRad, -ws, ws);
        var lat = Angle.ToRad(latitudeDegrees);
        var sum = Math.Cos(lat) * Math.Cos(declinationRad) * (Math.Sin(w2) - Math.Sin(w1)) + (w2 - w1) * Math.Sin(lat) * Math.Sin(declinationRad);
        return Math.Max(0, 12 / Math.PI * normalWPerM2 * sum);
    }

    /// <summary>Cosine of the zenith angle, negative below the horizon. D&amp;B eq. 1.6.5.</summary>
    public static double CosZenith(double latitudeDegrees, double declinationRad, double hourAngleRad)
    {
        var lat = Angle.ToRad(latitudeDegrees);
        return Math.Sin(lat) * Math.Sin(declinationRad) + Math.Cos(lat) * Math.Cos(declinationRad) * Math.Cos(hourAngleRad);
    }

    /// <summary>Cosine of the angle of incidence on a plane, negative when the sun is behind it. D&amp;B eq. 1.6.2 (surface azimuth there 0 = south, west positive).</summary>
    public static double CosIncidence(double latitudeDegrees, double declinationRad, double hourAngleRad, PlaneOrientation plane)
    {
        var (constant, cosine, sine) = IncidenceTerms(latitudeDegrees, declinationRad, plane);
        return constant + cosine * Math.Cos(hourAngleRad) + sine * Math.Sin(hourAngleRad);
    }

    /// <summary>The three terms of cos(incidence) = constant + cosine cos w + sine sin w for one day (D&amp;B eq. 1.6.2).</summary>
    public static (double Constant, double Cosine, double Sine) IncidenceTerms(double latitudeDegrees, double declinationRad, PlaneOrientation plane)
    {
        var lat = Angle.ToRad(latitudeDegrees);
        var tilt = Angle.ToRad(plane.TiltDegrees);
        var azimuth = Angle.ToRad(plane.AzimuthDegrees - 180);
        var (sinD, cosD) = (Math.Sin(declinationRad), Math.Cos(declinationRad));
        return (
            sinD * Math.Sin(lat) * Math.Cos(tilt) - sinD * Math.Cos(lat) * Math.Sin(tilt) * Math.Cos(azimuth),
            cosD * Math.Cos(lat) * Math.Cos(tilt) + cosD * Math.Sin(lat) * Math.Sin(tilt) * Math.Cos(azimuth),
            cosD * Math.Sin(tilt) * Math.Sin(azimuth));
    }

    /// <summary>Zenith and azimuth (clockwise from north) of the sun, degrees. D&amp;B eq. 1.6.5 and 1.6.6.</summary>
    public static (double ZenithDegrees, double AzimuthDegrees) Position(double latitudeDegrees, double declinationRad, double hourAngleRad)
    {
        var lat = Angle.ToRad(latitudeDegrees);
        var zenith = Math.Acos(Math.Clamp(CosZenith(latitudeDegrees, declinationRad, hourAngleRad), -1, 1));
        var west = Math.Cos(declinationRad) * Math.Sin(hourAngleRad);
        var south = Math.Sin(lat) * Math.Cos(declinationRad) * Math.Cos(hourAngleRad) - Math.Cos(lat) * Math.Sin(declinationRad);
        return (Angle.ToDegrees(zenith), Angle.Normalised(180 + Angle.ToDegrees(Math.Atan2(west, south))));
    }

    /// <summary>Klein's mean day of a month, day of year (D&amp;B table 1.6.1).</summary>
    public static int MeanDayOfMonth(int month) => MeanDays[Require.Month(month) - 1];

    /// <summary>Monthly clearness KT = H / H0 at the mean day, fraction; NaN where the sun does not rise on that day.</summary>
    public static double MonthlyClearness(double latitudeDegrees, int month, double irradiationKWhPerM2)
    {
        var h0 = DailyExtraterrestrialKWhPerM2(latitudeDegrees, MeanDayOfMonth(month));
        return h0 > 0 ? irradiationKWhPerM2 / h0 : double.NaN;
    }

    private static double YearAngleRad(double dayOfYear) => 2 * Math.PI * (dayOfYear - 1) / 365;
}
