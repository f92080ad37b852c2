using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>A distribution of daily clearness whose deviations from the mean are multiplied by a factor; nothing falls below the least clearness or above the greatest.</summary>
public sealed class DispersedClearness : ClearnessDistribution
{
    private readonly ClearnessDistribution inner;
    private readonly double factor;

    /// <param name="factor">Deviation from the mean over that of <paramref name="inner"/>, ratio, 0.2 to 2.</param>
    public DispersedClearness(ClearnessDistribution inner, double factor)
        : base(inner.MeanClearness)
    {
        this.inner = inner;
        this.factor = Require.InRange(factor, LeastFactor, GreatestFactor, nameof(factor));
    }

    /// <summary>Least factor taken.</summary>
    public const double LeastFactor = 0.2;

    /// <summary>Greatest factor taken.</summary>
    public const double GreatestFactor = 2;

    public override double Share(double clearness)
    {
        if (clearness < LeastClearness) return 0;
        return clearness >= GreatestClearness ? 1 : inner.Share(MeanClearness + (clearness - MeanClearness) / factor);
    }

    public override double Quantile(double share) =>
        Math.Clamp(MeanClearness + factor * (inner.Quantile(share) - MeanClearness), LeastClearness, GreatestClearness);
}
