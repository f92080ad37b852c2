using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Bendt, Collares-Pereira and Rabl, Solar Energy 27 (1981) 1, with Herzog's fit of its parameter and the upper limit of Hollands and Huget.
/// D&amp;B eq. 2.9.4 to 2.9.6.
/// </summary>
public sealed class BendtClearness : ClearnessDistribution
{
    private readonly double atLeast;
    private readonly double atGreatest;

    public BendtClearness(double meanClearness)
        : base(meanClearness)
    {
        var ratio = (GreatestClearness - LeastClearness) / (GreatestClearness - MeanClearness);
        Gamma = -1.498 + (1.184 * ratio - 27.182 * Math.Exp(-1.5 * ratio)) / (GreatestClearness - LeastClearness);
        atLeast = Math.Exp(Gamma * LeastClearness);
        atGreatest = Math.Exp(Gamma * GreatestClearness);
    }

    /// <summary>Parameter of the distribution. Check value: mean 0.5 gives 2.314.</summary>
    public double Gamma { get; }

    private bool IsFlat => Math.Abs(Gamma) < 1e-6;

    public override double Share(double clearness)
    {
        var k = Math.Clamp(clearness, LeastClearness, GreatestClearness);
        return IsFlat ? (k - LeastClearness) / (GreatestClearness - LeastClearness) : (atLeast - Math.Exp(Gamma * k)) / (atLeast - atGreatest);
    }

    public override double Quantile(double share)
    {
        Require.InRange(share, 0, 1, nameof(share));
        var k = IsFlat
            ? LeastClearness + share * (GreatestClearness - LeastClearness)
            : Math.Log(atLeast - share * (atLeast - atGreatest)) / Gamma;
        return Math.Clamp(k, LeastClearness, GreatestClearness);
    }
}
