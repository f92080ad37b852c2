using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace TenderKit.Sizing.Climate;

/// <summary>What several whole years of irradiation say about how years, months and days follow one another: the settings of <see cref="SequenceSettings"/>, measured.</summary>
/// <param name="YearSpreadByMonth">Standard deviation of each calendar month's mean between years over its long-run mean, fraction, January first; 0 in a month without sun.</param>
/// <param name="YearSpreadFraction">Root of the mean square of those of the months with sun, fraction.</param>
/// <param name="DayToDayCorrelation">Lag-one correlation of the normal score of daily clearness within a month, -1 to 1.</param>
/// <param name="MonthToMonthCorrelation">Correlation of a month's deviation from its long-run mean with that of the month before, -1 to 1.</param>
/// <param name="Years">Years it was measured on.</param>
/// <param name="DispersionFactor">Deviation of the days from their month's mean over that of the distribution of Saunier, Reddy and Kumar, ratio: compare <see cref="DailyDispersion"/>.</param>
public sealed record SeriesStatistics(
    ImmutableArray<double> YearSpreadByMonth,
    double YearSpreadFraction,
    double DayToDayCorrelation,
    double MonthToMonthCorrelation,
    int Years,
    double DispersionFactor)
{
    /// <summary>With fewer years nothing is said: the standard deviation of 8 values is itself uncertain by a quarter (1 / sqrt(2 (n - 1))).</summary>
    public const int LeastYears = 8;

    /// <summary>Measures an hourly series; null for a typical year or fewer than <see cref="LeastYears"/> years.</summary>
    /// <exception cref="ArgumentException">The series holds no whole years.</exception>
    public static SeriesStatistics? Of(HourlySeries series)
    {
        if (series.Kind == SeriesKind.TypicalYear) return null;
        if (series.GlobalWhPerM2.Length % MonthDays.HoursCount != 0) throw new ArgumentException("a series holds whole years of 8760 hours", nameof(series));
        var days = new double?[series.GlobalWhPerM2.Length / 24];
        for (var d = 0; d < days.Length; d++)
        {
            var sum = 0.0;
            foreach (var hour in series.GlobalWhPerM2.AsSpan(d * 24, 24)) sum += hour;
            days[d] = sum / 1000;
        }

        return Of(series.LatitudeDegrees, series.Years, days);
    }

    /// <summary>Measures a daily series; a year with a missing day is left out; null for fewer than <see cref="LeastYears"/> years.</summary>
    /// <exception cref="ArgumentException">The series holds no whole years.</exception>
    public static SeriesStatistics? Of(DailySeries series)
    {
        if (series.GlobalKWhPerM2.Length % MonthDays.DaysCount != 0) throw new ArgumentException("a series holds whole years of 365 days", nameof(series));
        return Of(series.LatitudeDegrees, series.Years, [.. series.GlobalKWhPerM2]);
    }

    private static SeriesStatistics? Of(double latitudeDegrees, ImmutableArray<int> years, double?[] days)
    {
        var whole = Enumerable.Range(0, days.Length / MonthDays.DaysCount)
            .Where(y => days.AsSpan(y * MonthDays.DaysCount, MonthDays.DaysCount).ToArray().All(d => d is not null))
            .ToArray();
        if (whole.Length < LeastYears) return null;
        int CalendarYear(int y) => y < years.Length ? years[y] : y;
        var months = Enumerable.Range(1, 12).Select(m => new CalendarMonth(latitudeDegrees, m, whole, days)).ToArray();
        var lit = months.Where(m => m.IsLit).ToArray();
        return new SeriesStatistics(
            [.. months.Select(m => m.SpreadFraction)],
            Math.Sqrt(lit.Sum(m => m.SpreadFraction * m.SpreadFraction) / Math.Max(1, lit.Length)),
            DayToDay(lit),
            MonthToMonth(months, [.. whole.Select(CalendarYear)]),
            whole.Length,
            lit.Sum(m => m.DispersionFactor) / Math.Max(1, lit.Length));
    }

    /// <summary>
    /// Mean over the calendar months. Scores are taken about the mean of their own month, which lowers their correlation by about (1 + 3 r) / n in a month
    /// of n days (Marriott and Pope, Biometrika 41 (1954) 390, from memory); this is put back.
    /// </summary>
    private static double DayToDay(CalendarMonth[] lit) => lit.Length == 0 ? 0 : lit.Average(m => (m.ScoreCorrelation + 1.0 / m.DayCount) / (1 - 3.0 / m.DayCount));

    /// <summary>Mean product of the standardised deviations of neighbouring months, over the years that follow one another.</summary>
    private static double MonthToMonth(CalendarMonth[] months, int[] years)
    {
        var (sum, pairs) = (0.0, 0);
        for (var t = 1; t < 12 * years.Length; t++)
        {
            var (now, before) = (months[t % 12], months[(t - 1) % 12]);
            var follows = t % 12 > 0 || years[t / 12] == years[t / 12 - 1] + 1;
            if (!follows || now.SpreadFraction <= 0 || before.SpreadFraction <= 0) continue;
            sum += now.Deviations[t / 12] / now.SpreadFraction * before.Deviations[(t - 1) / 12] / before.SpreadFraction;
            pairs++;
        }

        return pairs > 0 ? Math.Clamp(sum / pairs * years.Length / (years.Length - 1), -1, 1) : 0;
    }

    /// <summary>One calendar month through the years.</summary>
    private sealed class CalendarMonth
    {
        private readonly double[][] clearness;

        public CalendarMonth(double latitudeDegrees, int month, int[] years, double?[] days)
        {
            var first = MonthDays.FirstDayIndex(month);
            DayCount = MonthDays.Count(month);
            var h0 = Enumerable.Range(first, DayCount).Select(d => SunGeometry.DailyExtraterrestrialKWhPerM2(latitudeDegrees, d + 1)).ToArray();
            double[] Month(int year) => [.. Enumerable.Range(0, DayCount).Select(d => days[year * MonthDays.DaysCount + first + d]!.Value)];
            var totals = years.Select(y => Month(y).Sum()).ToArray();
            var mean = totals.Average();
            IsLit = mean > 0 && h0.Min() > 0;
            Deviations = [.. totals.Select(t => IsLit ? t / mean - 1 : 0)];
            SpreadFraction = Math.Sqrt(Deviations.Sum(d => d * d) / (years.Length - 1));
            clearness = [.. years.Select(y => Month(y).Select((h, d) => IsLit ? h / h0[d] : 0).ToArray())];
        }

        public int DayCount { get; }

        public bool IsLit { get; }

        public double[] Deviations { get; }

        public double SpreadFraction { get; }

        /// <summary>Root mean square deviation of the days from the mean of their own month, over that of the distribution made for the long-run mean.</summary>
        public double DispersionFactor
        {
            get
            {
                var mean = clearness.Average(year => year.Average());
                var squares = clearness.Sum(year => year.Sum(k => (k - year.Average()) * (k - year.Average())));
                var printed = ClearnessDistribution.Of(ClearnessShape.Saunier, mean);
                var variance = Enumerable.Range(0, 1000).Average(i => Math.Pow(printed.Quantile((i + 0.5) / 1000) - printed.MeanClearness, 2));
                return Math.Sqrt(squares / (clearness.Length * (DayCount - 1)) / variance);
            }
        }

        public double ScoreCorrelation
        {
            get
            {
                var (products, squares) = (0.0, 0.0);
                foreach (var year in Scores())
                {
                    var mean = year.Average();
                    for (var d = 0; d < year.Length; d++)
                    {
                        squares += (year[d] - mean) * (year[d] - mean);
                        if (d > 0) products += (year[d] - mean) * (year[d - 1] - mean);
                    }
                }

                return squares > 0 ? products / squares * DayCount / (DayCount - 1) : 0;
            }
        }

        /// <summary>Normal scores of the days by their rank among all days of the calendar month, each over the mean of its own month.</summary>
        private double[][] Scores()
        {
            var relative = clearness.Select(year => year.Select(k => year.Average() is var mean and > 0 ? k / mean : 0).ToArray()).ToArray();
            var sorted = relative.SelectMany(year => year).Order().ToArray();
            return [.. relative.Select(year => year.Select(k => Normal.InvCDF(0, 1, Rank(sorted, k) / sorted.Length)).ToArray())];
        }

        /// <summary>Middle rank of a value among the sorted, 0.5 to count - 0.5.</summary>
        private static double Rank(double[] sorted, double value) => (Below(sorted, value, false) + Below(sorted, value, true)) / 2.0;

        /// <summary>How many lie below a value, or not above it.</summary>
        private static int Below(double[] sorted, double value, bool orEqual)
        {
            var (low, high) = (0, sorted.Length);
            while (low < high)
            {
                var middle = (low + high) / 2;
                if (sorted[middle] < value || (orEqual && sorted[middle] <= value)) low = middle + 1;
                else high = middle;
            }

            return low;
        }
    }
}
