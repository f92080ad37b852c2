namespace TenderKit.Tendering.Kits;

/// <summary>What is known of the cost of a number of kits.</summary>
public enum KitCountProof
{
    /// <summary>The least there is: every selection was tried and every use of it stood the energy balance.</summary>
    Least,

    /// <summary>A bound: every selection was tried, but the balance of some use was not run, so it costs this or more.</summary>
    AtLeast,

    /// <summary>The best found by adding and exchanging; some other selection may cost less.</summary>
    Found,
}

/// <summary>Cost of the whole tender with a number of kits.</summary>
/// <param name="Kits">Kits allowed.</param>
/// <param name="Cost">Direct cost, or present value where the tender chooses by it, in the tender's currency; null when so few make-ups do not serve every site.</param>
public sealed record KitCount(int Kits, decimal? Cost, KitCountProof Proof);
