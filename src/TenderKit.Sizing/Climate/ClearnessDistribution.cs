using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Distribution of the daily clearness within a month of given mean: Bendt, Collares-Pereira and Rabl, Solar Energy 27 (1981) 1,
/// with Herzog's fit of its parameter and the upper limit of Hollands and Huget, Solar Energy 30 (1983) 195. D&amp;B eq. 2.9.4 to 2.9.6.
/// </summary>
public sealed class ClearnessDistribution
{
    /// <summary>Least daily clearness (D&amp;B section 2.9).</summary>
    public const double LeastClearness = 0.05;

    /// <summary>Monthly means are taken no higher: a daily clearness above about 0.85 is not seen at the ground (D&amp;B fig. 2.9.1, from memory).</summary>
    public const double HighestMeanClearness = 0.80;

    private const double LowestMeanClearness = 0.10;
    private readonly double atLeast;
    private readonly double atGreatest;

    /// <summary>The distribution for a monthly mean clearness, fraction; taken no lower than 0.10 and no higher than 0.80.</summary>
    public ClearnessDistribution(double meanClearness)
    {
        var mean = Math.Clamp(meanClearness, LowestMeanClearness, HighestMeanClearness);
        GreatestClearness = 0.6313 + 0.267 * mean - 11.9 * Math.Pow(mean - 0.75, 8);
        var ratio = (GreatestClearness - LeastClearness) / (GreatestClearness - mean);
        Gamma = -1.498 + (1.184 * ratio - 27.182 * Math.Exp(-1.5 * ratio)) / (GreatestClearness - LeastClearness);
        atLeast = Math.Exp(Gamma * LeastClearness);
        atGreatest = Math.Exp(Gamma * GreatestClearness);
    }

    /// <summary>Greatest daily clearness of the month, fraction. Check value: mean 0.5 gives 0.7646.</summary>
    public double GreatestClearness { get; }

    /// <summary>Parameter of the distribution. Check value: mean 0.5 gives 2.314.</summary>
    public double Gamma { get; }

    /// <summary>Share of days with a clearness up to <paramref name="clearness"/>, fraction.</summary>
    public double Share(double clearness)
    {
        var k = Math.Clamp(clearness, LeastClearness, GreatestClearness);
        return IsFlat ? (k - LeastClearness) / (GreatestClearness - LeastClearness) : (atLeast - Math.Exp(Gamma * k)) / (atLeast - atGreatest);
    }

    /// <summary>Daily clearness below which the given share of days lies, fraction.</summary>
    public double Quantile(double share)
    {
        Require.InRange(share, 0, 1, nameof(share));
        var k = IsFlat
            ? LeastClearness + share * (GreatestClearness - LeastClearness)
            : Math.Log(atLeast - share * (atLeast - atGreatest)) / Gamma;
        return Math.Clamp(k, LeastClearness, GreatestClearness);
    }

    private bool IsFlat => Math.Abs(Gamma) < 1e-6;
}
