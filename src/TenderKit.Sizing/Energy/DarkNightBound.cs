using MathNet.Numerics.Distributions;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Energy;

/// <summary>
/// Upper one-sided 90 % bound of the mean number of dark nights a year, from the numbers of the years simulated: the greater of
/// Student's t on the spread between years, m + t(0.90, n - 1) s / sqrt(n), and the exact Poisson bound on the total N,
/// chi2(0.90, 2 N + 2) / (2 n), which is ln(10) / n when no night was dark. The first covers dark nights that come in clusters,
/// the second the few that any finite number of years can show. Dark nights come in runs, and a run is one event: the Poisson bound is
/// taken on runs and multiplied by their mean length. Check value: 20 years without a dark night and runs of 3 give 0.345.
/// </summary>
public static class DarkNightBound
{
    private const double Confidence = 0.90;

    /// <summary>No mean can pass this.</summary>
    private const double MostNights = 365;

    /// <summary>Each side of the two-sided range of 90 %.</summary>
    private const double OneSide = 0.95;

    /// <param name="nightsByYear">Dark nights of each year.</param>
    /// <param name="meanRunNights">Mean length of a run of dark nights, 1 or more.</param>
    public static double UpperNinety(IReadOnlyList<int> nightsByYear, double meanRunNights = 1)
    {
        Require.InRange(meanRunNights, 1, 366, nameof(meanRunNights));
        var n = nightsByYear.Count;
        if (n == 0) throw new ArgumentException("at least one year is needed", nameof(nightsByYear));
        var total = nightsByYear.Sum();
        var few = meanRunNights * (total == 0 ? Math.Log(1 / (1 - Confidence)) / n : ChiSquared.InvCDF(2 * total / meanRunNights + 2, Confidence) / (2 * n));
        if (n < 2 || total == 0) return Math.Min(MostNights, few);
        var mean = (double)total / n;
        var deviation = Math.Sqrt(nightsByYear.Sum(x => (x - mean) * (x - mean)) / (n - 1));
        return Math.Min(MostNights, Math.Max(few, mean + StudentT.InvCDF(0, 1, n - 1, Confidence) * deviation / Math.Sqrt(n)));
    }

    /// <summary>
    /// Two-sided 90 % range of the same mean: the wider, on either side, of Student's t on the spread between years and the exact Poisson limits
    /// on runs, chi2(0.05, 2 N) / (2 n) and chi2(0.95, 2 N + 2) / (2 n) (Garwood 1936, from memory), times the mean length of a run;
    /// the low end is 0 when no night was dark. Check value: 20 years with 5 single dark nights give 1.970 / 20 to 10.513 / 20 or wider.
    /// </summary>
    /// <param name="nightsByYear">Dark nights of each year.</param>
    /// <param name="meanRunNights">Mean length of a run of dark nights, 1 or more.</param>
    public static DarkNightRange TwoSidedNinety(IReadOnlyList<int> nightsByYear, double meanRunNights = 1)
    {
        Require.InRange(meanRunNights, 1, 366, nameof(meanRunNights));
        var n = nightsByYear.Count;
        if (n == 0) throw new ArgumentException("at least one year is needed", nameof(nightsByYear));
        var total = nightsByYear.Sum();
        var scale = meanRunNights / (2 * n);
        if (total == 0) return new DarkNightRange(0, scale * ChiSquared.InvCDF(2, OneSide));
        var runs = total / meanRunNights;
        var (few, many) = (scale * ChiSquared.InvCDF(2 * runs, 1 - OneSide), scale * ChiSquared.InvCDF(2 * runs + 2, OneSide));
        if (n < 2) return new DarkNightRange(few, Math.Min(MostNights, many));
        var mean = (double)total / n;
        var deviation = Math.Sqrt(nightsByYear.Sum(x => (x - mean) * (x - mean)) / (n - 1));
        var spread = StudentT.InvCDF(0, 1, n - 1, OneSide) * deviation / Math.Sqrt(n);
        return new DarkNightRange(Math.Max(0, Math.Min(few, mean - spread)), Math.Min(MostNights, Math.Max(many, mean + spread)));
    }
}
