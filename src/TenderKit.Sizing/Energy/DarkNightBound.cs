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

    /// <param name="nightsByYear">Dark nights of each year.</param>
    /// <param name="nightsPerRun">Mean length of a run of dark nights, 1 or more.</param>
    public static double UpperNinety(IReadOnlyList<int> nightsByYear, double nightsPerRun = 1)
    {
        Require.InRange(nightsPerRun, 1, 366, nameof(nightsPerRun));
        var n = nightsByYear.Count;
        if (n == 0) throw new ArgumentException("at least one year is needed", nameof(nightsByYear));
        var total = nightsByYear.Sum();
        var few = nightsPerRun * (total == 0 ? Math.Log(1 / (1 - Confidence)) / n : ChiSquared.InvCDF(2 * total / nightsPerRun + 2, Confidence) / (2 * n));
        if (n < 2 || total == 0) return few;
        var mean = (double)total / n;
        var deviation = Math.Sqrt(nightsByYear.Sum(x => (x - mean) * (x - mean)) / (n - 1));
        return Math.Max(few, mean + StudentT.InvCDF(0, 1, n - 1, Confidence) * deviation / Math.Sqrt(n));
    }
}
