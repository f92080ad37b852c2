using MathNet.Numerics.Distributions;

namespace TenderKit.Sizing.Climate;

/// <summary>One calendar month through all years: turns the normal scores of its days into daily clearness and brings each year's month to its own mean.</summary>
/// <param name="values">All days of all years: normal scores before <see cref="Draw"/>, clearness after.</param>
/// <param name="h0">Extraterrestrial irradiation of the 365 days.</param>
/// <param name="mean">Mean clearness over all years, fraction; 0 or less in the polar night.</param>
internal sealed class MonthOfYears(double[] values, double[] h0, int month, int yearCount, double mean)
{
    private const double HighestDailyClearness = 0.85;

    private readonly int first = MonthDays.FirstDayIndex(month);
    private readonly int count = MonthDays.Count(month);

    /// <summary>Turns the scores into clearness.</summary>
    /// <returns>How the months of the years came out by themselves: deviations from their mean, over it.</returns>
    public double[] Draw(ClearnessDistribution distribution)
    {
        var means = new double[yearCount];
        for (var y = 0; y < yearCount; y++)
        {
            foreach (var i in Days(y)) values[i] = mean > 0 ? distribution.Quantile(Normal.CDF(0, 1, values[i])) : 0;
            means[y] = Mean(y);
        }

        var centre = means.Sum() / yearCount;
        return [.. means.Select(m => centre > 0 ? m / centre - 1 : 0)];
    }

    /// <summary>Mean each year's month is to have: the long-run mean times one plus its deviation; under a very clear sky the deviations shrink to what the clearest day leaves room for.</summary>
    public double[] Targets(double[] deviations)
    {
        var (best, worst, room) = (deviations.Max(), -deviations.Min(), 1.0);
        if (best > 0 && mean > 0) room = Math.Min(room, Math.Max(0, (HighestDailyClearness - 0.02) / mean - 1) / best);
        if (worst > 0) room = Math.Min(room, 0.95 / worst);
        return [.. deviations.Select(d => mean * (1 + room * d))];
    }

    /// <summary>Brings the month of each year to its target.</summary>
    public void Scale(double[] targets)
    {
        for (var y = 0; y < yearCount; y++) Scale(y, targets[y]);
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
