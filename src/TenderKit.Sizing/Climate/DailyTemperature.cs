namespace TenderKit.Sizing.Climate;

/// <summary>
/// Hourly air temperature from monthly means of the daily minimum, mean and maximum: lowest at sunrise, highest at 14:30 solar time,
/// half cosines between, their shape bent so that the mean of the day is the mean given. Shape: common practice, no source.
/// </summary>
public static class DailyTemperature
{
    private const double WarmestH = 14.5;
    private const double UsualSunriseH = 6;

    /// <summary>Temperatures of the 24 solar hours of a day of a month (at the middle of each hour), degC.</summary>
    public static double[] DayC(MonthlyClimate climate, int month)
    {
        var (low, high) = (climate.DailyMinC[month - 1], climate.DailyMaxC[month - 1]);
        var position = Positions(SunriseH(climate.LatitudeDegrees, month));
        if (high <= low) return [.. position.Select(_ => climate.MeanC[month - 1])];
        var power = Power(position, (climate.MeanC[month - 1] - low) / (high - low));
        return [.. position.Select(p => Math.Round(low + (high - low) * Math.Pow(p, power), 3))];
    }

    internal static double[] Hours(MonthlyClimate climate, int yearCount)
    {
        var year = new double[MonthDays.HoursCount];
        var months = Enumerable.Range(1, 12).Select(m => DayC(climate, m)).ToArray();
        for (var d = 0; d < MonthDays.DaysCount; d++) months[MonthDays.MonthOf(d) - 1].CopyTo(year, d * 24);
        var hours = new double[yearCount * year.Length];
        for (var y = 0; y < yearCount; y++) year.CopyTo(hours, y * year.Length);
        return hours;
    }

    private static double SunriseH(double latitudeDegrees, int month)
    {
        var half = SunGeometry.DayLengthH(latitudeDegrees, SunGeometry.MeanDayOfMonth(month)) / 2;
        return half is > 1 and < 11 ? 12 - half : UsualSunriseH;
    }

    /// <summary>0 at sunrise, 1 at the warmest hour.</summary>
    private static double[] Positions(double sunriseH)
    {
        var rising = WarmestH - sunriseH;
        var position = new double[24];
        for (var h = 0; h < 24; h++)
        {
            var since = (h + 0.5 - sunriseH + 24) % 24;
            var turn = since < rising ? since / rising : 1 - (since - rising) / (24 - rising);
            position[h] = (1 - Math.Cos(Math.PI * turn)) / 2;
        }

        return position;
    }

    /// <summary>Power that brings the mean of the positions to <paramref name="mean"/>; by bisection between 0.2 and 5, the nearer end beyond.</summary>
    private static double Power(double[] position, double mean)
    {
        var (low, high) = (0.2, 5.0);
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            if (position.Sum(p => Math.Pow(p, middle)) / position.Length > mean) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }
}
