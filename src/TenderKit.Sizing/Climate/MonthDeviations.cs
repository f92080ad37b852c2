namespace TenderKit.Sizing.Climate;

/// <summary>Deviations of each year's months from the calendar-month means: of the spread asked for, and each month after the one before it.</summary>
internal static class MonthDeviations
{
    /// <summary>
    /// First-order autoregression over the months in their order, December before the next January: d(t) = r d(t-1) + sqrt(1 - r^2) e(t), where e(t) is
    /// how the month came out by itself, brought to unit spread. The result of each calendar month is brought to mean 0 and the spread over the years.
    /// </summary>
    /// <param name="own">Twelve arrays of one deviation a year.</param>
    /// <param name="correlation">Lag-one correlation of the months, 0 to 0.95.</param>
    /// <param name="spreadFraction">Standard deviation over the years, fraction of the month's mean.</param>
    public static double[][] Persisting(double[][] own, double correlation, double spreadFraction)
    {
        var fresh = Math.Sqrt(1 - correlation * correlation);
        var unit = own.Select(o => Spread(o, 1)).ToArray();
        var deviations = own.Select(o => new double[o.Length]).ToArray();
        var last = unit[11][^1];
        for (var t = 0; t < 12 * own[0].Length; t++)
        {
            last = correlation * last + fresh * unit[t % 12][t / 12];
            deviations[t % 12][t / 12] = last;
        }

        return [.. deviations.Select(d => Spread(d, spreadFraction))];
    }

    private static double[] Spread(double[] deviations, double spread)
    {
        var mean = deviations.Sum() / deviations.Length;
        var variance = deviations.Sum(d => (d - mean) * (d - mean)) / Math.Max(1, deviations.Length - 1);
        var stretch = variance > 1e-20 ? spread / Math.Sqrt(variance) : 0;
        return [.. deviations.Select(d => (d - mean) * stretch)];
    }
}
