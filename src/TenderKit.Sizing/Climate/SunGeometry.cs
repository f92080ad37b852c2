namespace TenderKit.Sizing.Climate;

/// <summary>Daily sun geometry: declination, sunset hour angle, day length, extraterrestrial irradiation.</summary>
public static class SunGeometry
{
    /// <summary>Declination by Spencer (1971), degrees.</summary>
    public static double DeclinationDegrees(double dayOfYear) => throw new NotImplementedException();

    /// <summary>H0, extraterrestrial daily irradiation on a horizontal plane, kWh/m2.</summary>
    public static double DailyExtraterrestrialKWhPerM2(double latitudeDegrees, double dayOfYear) => throw new NotImplementedException();

    /// <summary>Klein's mean day of a month, day of year.</summary>
    public static int MeanDayOfMonth(int month) => throw new NotImplementedException();

    /// <summary>Monthly clearness KT = H / H0 at the mean day, fraction.</summary>
    public static double MonthlyClearness(double latitudeDegrees, int month, double irradiationKWhPerM2) => throw new NotImplementedException();
}
