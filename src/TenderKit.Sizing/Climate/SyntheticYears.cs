using System.Runtime.InteropServices;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Years of hours whose long-run calendar-month means are the given climate.
/// Daily clearness: the distribution of <see cref="ClearnessDistribution"/>, drawn with lag-one autocorrelation in its normal score
/// (Graham, Hollands and Brunger, Solar Energy 40 (1988) 311). Hours from days: Collares-Pereira and Rabl.
/// </summary>
/// <remarks>
/// The mean of each calendar month over all years is the input; a single month is not forced, so bad years stay bad.
/// The standard deviation of a calendar month's clearness between years is made equal to the rule by stretching each year's own deviation;
/// it covers what independent months bring about by chance, and months follow one another independently beyond the day-to-day correlation.
/// Random numbers: xoshiro256** seeded by the rule, drawn in a fixed order on one thread. Clearness is rounded to 1e-6,
/// irradiation to 0.001 Wh/m2 and temperature to 0.001 K, so that the last bit of a platform's exp and log does not show.
/// </remarks>
public static class SyntheticYears
{
    private const double HighestDailyClearness = 0.85;

    /// <param name="cautiousFactor">Factor on irradiation for the climate's grade, fraction, 0.5 to 1.</param>
    public static HourlyYears Generate(MonthlyClimate climate, SequenceSettings settings, double cautiousFactor)
    {
        Require.InRange(settings.YearCount, 1, 200, nameof(settings));
        Require.InRange(settings.DayToDayCorrelation, 0, 0.95, nameof(settings));
        Require.InRange(settings.YearToYearSpreadFraction, 0, 0.5, nameof(settings));
        Require.InRange(cautiousFactor, 0.5, 1, nameof(cautiousFactor));
        var h0 = DailyExtraterrestrial(climate.LatitudeDegrees);
        var clearness = NormalScores(settings);
        for (var month = 1; month <= 12; month++)
        {
            new MonthOfYears(clearness, h0, month, settings)
                .Shape(climate.IrradiationKWhPerM2[month - 1] * cautiousFactor);
        }

        return new HourlyYears(
            climate.LatitudeDegrees,
            settings.YearCount,
            ImmutableCollectionsMarshal.AsImmutableArray(Hours(clearness, h0, climate.LatitudeDegrees)),
            ImmutableCollectionsMarshal.AsImmutableArray(DailyTemperature.Hours(climate, settings.YearCount)));
    }

    private static double[] DailyExtraterrestrial(double latitudeDegrees)
    {
        var h0 = new double[MonthDays.DaysCount];
        for (var d = 0; d < h0.Length; d++) h0[d] = SunGeometry.DailyExtraterrestrialKWhPerM2(latitudeDegrees, d + 1);
        return h0;
    }

    /// <summary>Standard normal scores of all days, lag-one autocorrelated.</summary>
    private static double[] NormalScores(SequenceSettings settings)
    {
        var random = new Xoshiro256StarStar(settings.Seed, threadSafe: false);
        var rho = settings.DayToDayCorrelation;
        var fresh = Math.Sqrt(1 - rho * rho);
        var scores = new double[settings.YearCount * MonthDays.DaysCount];
        var last = Draw(random);
        for (var d = 0; d < scores.Length; d++)
        {
            scores[d] = last;
            last = rho * last + fresh * Draw(random);
        }

        return scores;
    }

    private static double Draw(Xoshiro256StarStar random) =>
        Normal.InvCDF(0, 1, Math.Clamp(random.NextDouble(), 1e-12, 1 - 1e-12));

    private static double[] Hours(double[] clearness, double[] h0, double latitudeDegrees)
    {
        var shares = new double[MonthDays.DaysCount][];
        for (var d = 0; d < shares.Length; d++)
        {
            shares[d] = HourlyRatios.GlobalShares(SunGeometry.SunsetHourAngleRad(latitudeDegrees, SunGeometry.DeclinationRad(d + 1)));
        }

        var hours = new double[clearness.Length * 24];
        for (var d = 0; d < clearness.Length; d++)
        {
            var day = d % MonthDays.DaysCount;
            var total = clearness[d] * h0[day] * 1000;
            for (var h = 0; h < 24; h++) hours[d * 24 + h] = Math.Round(total * shares[day][h], 3);
        }

        return hours;
    }

    /// <summary>One calendar month through all years: turns its normal scores into daily clearness.</summary>
    private sealed class MonthOfYears(double[] values, double[] h0, int month, SequenceSettings settings)
    {
        private readonly int yearCount = settings.YearCount;
        private readonly int first = MonthDays.FirstDayIndex(month);
        private readonly int count = MonthDays.Count(month);

        public void Shape(double irradiationKWhPerM2)
        {
            var sky = 0.0;
            for (var d = first; d < first + count; d++) sky += h0[d];
            var mean = sky > 0 ? Math.Min(irradiationKWhPerM2 * count / sky, ClearnessDistribution.HighestMeanClearness + 0.02) : 0;
            if (mean <= 0)
            {
                for (var y = 0; y < yearCount; y++) foreach (var i in Days(y)) values[i] = 0;
                return;
            }

            var distribution = ClearnessDistribution.Of(settings.Shape, mean);
            for (var y = 0; y < yearCount; y++) Draw(y, distribution);
            var targets = Targets(mean, settings.YearToYearSpreadFraction);
            for (var y = 0; y < yearCount; y++) Scale(y, targets[y]);
        }

        private void Draw(int year, ClearnessDistribution distribution)
        {
            foreach (var i in Days(year)) values[i] = distribution.Quantile(Normal.CDF(0, 1, values[i]));
        }

        /// <summary>Mean clearness each year's month is brought to: the years' own deviations, stretched to the spread asked for or, under a very clear sky, to what the clearest day leaves room for.</summary>
        private double[] Targets(double mean, double spreadFraction)
        {
            var means = new double[yearCount];
            for (var y = 0; y < yearCount; y++) means[y] = Mean(y);
            var centre = means.Sum() / yearCount;
            var variance = means.Sum(m => (m / centre - 1) * (m / centre - 1)) / Math.Max(1, yearCount - 1);
            var stretch = variance > 0 ? spreadFraction / Math.Sqrt(variance) : 0;
            var (best, worst) = (means.Max() / centre - 1, 1 - means.Min() / centre);
            if (best > 0) stretch = Math.Min(stretch, Math.Max(0, (HighestDailyClearness - 0.02) / mean - 1) / best);
            if (worst > 0) stretch = Math.Min(stretch, 0.95 / worst);
            return [.. means.Select(m => mean * (1 + stretch * (m / centre - 1)))];
        }

        private void Scale(int year, double target)
        {
            for (var pass = 0; pass < 12; pass++)
            {
                var now = Mean(year);
                if (now <= 0 || Math.Abs(now - target) < 1e-7) break;
                foreach (var i in Days(year)) values[i] = Math.Min(HighestDailyClearness, values[i] * target / now);
            }

            foreach (var i in Days(year)) values[i] = Math.Round(values[i], 6);
        }

        /// <summary>Mean clearness of the month in one year, weighted by the extraterrestrial irradiation of its days.</summary>
        private double Mean(int year)
        {
            var (sum, sky) = (0.0, 0.0);
            foreach (var i in Days(year))
            {
                var day = i % MonthDays.DaysCount;
                sum += values[i] * h0[day];
                sky += h0[day];
            }

            return sky > 0 ? sum / sky : 0;
        }

        private IEnumerable<int> Days(int year) => Enumerable.Range(year * MonthDays.DaysCount + first, count);
    }
}
