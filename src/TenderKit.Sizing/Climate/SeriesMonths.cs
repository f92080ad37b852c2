using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>Calendar-month means of an hourly series.</summary>
public static class SeriesMonths
{
    /// <summary>
    /// An air temperature above this is a fault of the data, degC: typical-year files hold glitches above it,
    /// and no place a light is built at has reached it. Common practice, no source.
    /// </summary>
    public const double HighestCredibleC = 55;

    /// <summary>An air temperature below this is a fault of the data, degC: the lowest measured on earth is -89.2 (World Meteorological Organization, from memory).</summary>
    public const double LowestCredibleC = -90;

    /// <summary>Share of the hours of a typical year that lie beyond its design temperatures, as in common design tables (0.4 % and 99.6 %).</summary>
    private const double PassedShare = 0.004;

    internal static MonthlyClimate Of(HourlySeries series, double recordMarginK)
    {
        var months = Enumerable.Range(1, 12).Select(m => new Month(series, m)).ToList();
        var (low, high) = Extremes(series);
        return new MonthlyClimate(
            series.LatitudeDegrees,
            series.LongitudeDegrees,
            Each(m => m.IrradiationKWhPerM2),
            Each(m => m.MeanC),
            Each(m => m.DailyMaxC),
            Each(m => m.DailyMinC),
            low - recordMarginK,
            high + recordMarginK,
            ClimateGrades.OfSeries(series.Kind, series.YearCount, statedMeasured: false),
            series.Source)
        {
            YearCount = series.Kind == SeriesKind.TypicalYear ? null : series.YearCount,
            YearSpreadFraction = SeriesStatistics.Of(series)?.YearSpreadFraction,
        };

        ImmutableArray<double> Each(Func<Month, double> of) => [.. months.Select(of)];
    }

    /// <summary>
    /// Lowest and highest temperature, degC: of real years the extreme hours, of a typical year those that 0.4 % of the hours pass, since its single
    /// hours hold glitches. Checked on three public typical years with 5 K beyond: Addis Ababa 0 to 31, Colombo 16 to 38 (its highest hour reads 48), Blythe -1 to 50 degC.
    /// </summary>
    private static (double LowC, double HighC) Extremes(HourlySeries series)
    {
        double[] sorted = [.. series.AirC.Where(IsCredible).DefaultIfEmpty(double.NaN).Order()];
        var passed = series.Kind == SeriesKind.TypicalYear ? (int)(sorted.Length * PassedShare) : 0;
        return (sorted[passed], sorted[^(passed + 1)]);
    }

    /// <summary>Whether an air temperature can be one.</summary>
    public static bool IsCredible(double airC) => airC is >= LowestCredibleC and <= HighestCredibleC;

    /// <summary>One calendar month through all years.</summary>
    private sealed class Month
    {
        public Month(HourlySeries series, int month)
        {
            var (energy, days, air, hours, max, min, warmDays) = (0.0, 0, 0.0, 0, 0.0, 0.0, 0);
            for (var y = 0; y < series.YearCount; y++)
            {
                for (var d = 0; d < MonthDays.Count(month); d++, days++)
                {
                    var start = (y * MonthDays.DaysCount + MonthDays.FirstDayIndex(month) + d) * 24;
                    energy += series.GlobalWhPerM2.AsSpan(start, 24).ToArray().Sum();
                    var day = series.AirC.AsSpan(start, 24).ToArray().Where(IsCredible).ToArray();
                    if (day.Length == 0) continue;
                    (air, hours, warmDays) = (air + day.Sum(), hours + day.Length, warmDays + 1);
                    (max, min) = (max + day.Max(), min + day.Min());
                }
            }

            IrradiationKWhPerM2 = energy / 1000 / days;
            (MeanC, DailyMaxC, DailyMinC) = (air / hours, max / warmDays, min / warmDays);
        }

        public double IrradiationKWhPerM2 { get; }

        public double MeanC { get; }

        public double DailyMaxC { get; }

        public double DailyMinC { get; }
    }
}
