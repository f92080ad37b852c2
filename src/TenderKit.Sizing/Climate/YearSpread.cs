using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// For series of months, or of days some of which may be missing; whole series of hours are measured by <see cref="SeriesStatistics"/> with the same formula.
/// Spread of a month's irradiation between years, fraction of its mean: the standard deviation (n - 1) of each calendar month over its mean, and the root
/// mean square of the twelve. Months without sun are left out. Check by hand: eight years alternating 0.9 and 1.1 of any mean give sqrt(8 x 0.01 / 7) = 0.1069.
/// </summary>
public static class YearSpread
{
    /// <summary>The spread, or null for fewer than <see cref="SeriesStatistics.LeastYears"/> years.</summary>
    /// <param name="years">Twelve monthly means of each year, any unit, January first.</param>
    public static double? Of(IReadOnlyList<IReadOnlyList<double>> years)
    {
        if (years.Count < SeriesStatistics.LeastYears) return null;
        var squares = Enumerable.Range(0, 12).Select(m => Square([.. years.Select(y => y[m])])).OfType<double>().ToList();
        return squares.Count == 0 ? null : Math.Sqrt(squares.Average());
    }

    /// <summary>The spread of a daily series; a missing day is left out of its month.</summary>
    public static double? Of(ImmutableArray<double?> days) =>
        Of([.. Enumerable.Range(0, days.Length / MonthDays.DaysCount).Select(y => Months(d => days[y * MonthDays.DaysCount + d]))]);

    private static double[] Months(Func<int, double?> day) =>
        [.. Enumerable.Range(1, 12).Select(m => Enumerable.Range(MonthDays.FirstDayIndex(m), MonthDays.Count(m)).Select(day).OfType<double>().DefaultIfEmpty(double.NaN).Average())];

    private static double? Square(double[] values)
    {
        var mean = values.Average();
        return mean > 0 ? values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / (mean * mean) : null;
    }
}
