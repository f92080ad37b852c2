using System.Collections.Immutable;

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
public sealed record KitCount(int Kits, decimal? Cost, KitCountProof Proof)
{
    /// <summary>The best selection of each number of kits up to some, out of a table of costs as it stands.</summary>
    /// <param name="costs">Cost of each site (row) with each make-up (column), exact where run and never too high elsewhere; null where it does not suit.</param>
    /// <param name="run">Whether the balance of a site with a make-up was run.</param>
    /// <param name="most">Most kits.</param>
    public static ImmutableArray<KitCount> Curve(decimal?[,] costs, bool[,] run, int most) =>
        [.. Enumerable.Range(1, Math.Min(most, costs.GetLength(1))).Select(kits => Of(costs, run, kits))];

    private static KitCount Of(decimal?[,] costs, bool[,] run, int kits)
    {
        var selection = KitChoice.Choose(costs, kits);
        var uses = selection.KitOfSite.Select((kit, site) => (Site: site, Kit: kit)).ToArray();
        decimal? cost = selection.Kits.Length > kits ? null : uses.Sum(u => costs[u.Site, u.Kit]!.Value);
        return new KitCount(kits, cost, !selection.IsProven ? KitCountProof.Found : uses.All(u => run[u.Site, u.Kit]) ? KitCountProof.Least : KitCountProof.AtLeast);
    }
}
