using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Saunier, Reddy and Kumar, "A monthly probability distribution function of daily global irradiation values appropriate for both tropical and
/// temperate locations", Solar Energy 38 (1987) 169: density A z (1 - z) exp(gamma z), z = K / Kmax, gamma such that the mean is the month's.
/// From memory; Kmax as in <see cref="ClearnessDistribution.GreatestClearness"/>.
/// </summary>
public sealed class SaunierClearness : ClearnessDistribution
{
    private const int Steps = 512;
    private const double SteepestGamma = 200;

    private readonly double[] shares = new double[Steps + 1];

    public SaunierClearness(double meanClearness)
        : base(meanClearness)
    {
        Gamma = Solve(MeanClearness / GreatestClearness);
        for (var i = 1; i <= Steps; i++) shares[i] = shares[i - 1] + (Density(i - 1, Gamma) + Density(i, Gamma)) / 2;
        for (var i = 1; i <= Steps; i++) shares[i] /= shares[Steps];
    }

    /// <summary>Parameter of the distribution; 0 for a mean of half the greatest clearness.</summary>
    public double Gamma { get; }

    public override double Share(double clearness)
    {
        var place = Math.Clamp(clearness / GreatestClearness, 0, 1) * Steps;
        var i = Math.Min((int)place, Steps - 1);
        return shares[i] + (place - i) * (shares[i + 1] - shares[i]);
    }

    public override double Quantile(double share)
    {
        Require.InRange(share, 0, 1, nameof(share));
        var found = Array.BinarySearch(shares, share);
        var i = Math.Clamp(found >= 0 ? found : ~found, 1, Steps);
        var width = shares[i] - shares[i - 1];
        var within = width > 0 ? Math.Clamp((share - shares[i - 1]) / width, 0, 1) : 1;
        return GreatestClearness * (i - 1 + within) / Steps;
    }

    /// <summary>Gamma whose mean of z is <paramref name="mean"/>, by bisection.</summary>
    private static double Solve(double mean)
    {
        var (low, high) = (-SteepestGamma, SteepestGamma);
        for (var pass = 0; pass < 50; pass++)
        {
            var middle = (low + high) / 2;
            if (Mean(middle) < mean) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private static double Mean(double gamma)
    {
        var (moment, mass, growth) = (0.0, 0.0, Math.Exp(gamma > 0 ? -gamma : 0));
        var step = Math.Exp(gamma / Steps);
        for (var i = 0; i <= Steps; i++)
        {
            var z = (double)i / Steps;
            var density = z * (1 - z) * growth;
            moment += density * z;
            mass += density;
            growth *= step;
        }

        return moment / mass;
    }

    private static double Density(int step, double gamma)
    {
        var z = (double)step / Steps;
        return z * (1 - z) * Math.Exp(gamma * (gamma > 0 ? z - 1 : z));
    }
}
