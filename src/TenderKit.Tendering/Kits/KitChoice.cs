using System.Collections.Immutable;

namespace TenderKit.Tendering.Kits;

/// <summary>Which kits to keep.</summary>
/// <param name="Kits">Indices of the kits kept, ascending.</param>
/// <param name="KitOfSite">Index of the kit of each site.</param>
/// <param name="IsProven">True when every selection was tried; false when it is the best found by adding and exchanging.</param>
public sealed record KitSelection(ImmutableArray<int> Kits, ImmutableArray<int> KitOfSite, bool IsProven);

/// <summary>Chooses at most so many kits so that all sites together cost least, each served by a kit that suits it.</summary>
public static class KitChoice
{
    private const long MostCostsTried = 40_000_000;

    /// <param name="costs">Cost of each site (row) with each kit (column); null where the kit does not suit the site. Every row has at least one cost.</param>
    /// <param name="atMost">Most kits, 1 or more.</param>
    /// <returns>When no selection of that size serves every site, the smallest larger one found that does.</returns>
    public static KitSelection Choose(decimal?[,] costs, int atMost)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atMost, 1);
        var kitCount = costs.GetLength(1);
        for (var size = Math.Min(atMost, kitCount); size <= kitCount; size++)
        {
            var (kits, proven) = Selections(kitCount, size) * costs.GetLength(0) <= MostCostsTried ? (Exhaustive(costs, size), true) : (Greedy(costs, size), false);
            if (kits is { } found) return new KitSelection(found, Assign(costs, found), proven);
        }

        throw new ArgumentException("a site has no kit at all", nameof(costs));
    }

    /// <summary>Number of ways to take <paramref name="size"/> of <paramref name="count"/>, capped.</summary>
    private static long Selections(int count, int size)
    {
        var ways = 1L;
        for (var i = 1; i <= size; i++)
        {
            ways = ways * (count - size + i) / i;
            if (ways > MostCostsTried) return MostCostsTried;
        }

        return ways;
    }

    private static ImmutableArray<int>? Exhaustive(decimal?[,] costs, int size)
    {
        ImmutableArray<int>? best = null;
        var bestCost = decimal.MaxValue;
        foreach (var kits in Subsets(costs.GetLength(1), size))
        {
            if (Total(costs, kits) is not { } total || total >= bestCost) continue;
            (best, bestCost) = ([.. kits], total);
        }

        return best;
    }

    private static IEnumerable<int[]> Subsets(int count, int size)
    {
        var chosen = Enumerable.Range(0, size).ToArray();
        while (true)
        {
            yield return chosen;
            var i = size - 1;
            while (i >= 0 && chosen[i] == count - size + i) i--;
            if (i < 0) yield break;
            chosen[i]++;
            for (var j = i + 1; j < size; j++) chosen[j] = chosen[j - 1] + 1;
        }
    }

    /// <summary>Adds the kit that helps most, one by one, then exchanges while an exchange helps.</summary>
    private static ImmutableArray<int>? Greedy(decimal?[,] costs, int size)
    {
        var kits = new SortedSet<int>();
        while (kits.Count < size) kits.Add(Others(costs, kits).MinBy(k => Rank(costs, [.. kits, k])));
        var improved = true;
        while (improved)
        {
            improved = false;
            foreach (var (gone, come) in kits.ToArray().SelectMany(g => Others(costs, kits).Select(c => (g, c))).ToArray())
            {
                if (!kits.Contains(gone) || kits.Contains(come)) continue;
                int[] changed = [.. kits.Where(k => k != gone), come];
                if (Rank(costs, changed).CompareTo(Rank(costs, [.. kits])) >= 0) continue;
                kits.Remove(gone);
                kits.Add(come);
                improved = true;
            }
        }

        int[] found = [.. kits];
        return Total(costs, found) is null ? null : [.. found];
    }

    private static IEnumerable<int> Others(decimal?[,] costs, SortedSet<int> kits) => Enumerable.Range(0, costs.GetLength(1)).Where(k => !kits.Contains(k));

    /// <summary>Sites left without a kit first, cost second.</summary>
    private static (int Unserved, decimal Cost) Rank(decimal?[,] costs, int[] kits)
    {
        var (unserved, cost) = (0, 0m);
        for (var site = 0; site < costs.GetLength(0); site++)
        {
            if (Cheapest(costs, site, kits) is var (_, least)) cost += least;
            else unserved++;
        }

        return (unserved, cost);
    }

    private static decimal? Total(decimal?[,] costs, int[] kits) => Rank(costs, kits) is (0, var cost) ? cost : null;

    private static ImmutableArray<int> Assign(decimal?[,] costs, ImmutableArray<int> kits) =>
        [.. Enumerable.Range(0, costs.GetLength(0)).Select(site => Cheapest(costs, site, [.. kits])!.Value.Kit)];

    private static (int Kit, decimal Cost)? Cheapest(decimal?[,] costs, int site, int[] kits)
    {
        (int Kit, decimal Cost)? best = null;
        foreach (var kit in kits)
        {
            if (costs[site, kit] is { } cost && (best is null || cost < best.Value.Cost)) best = (kit, cost);
        }

        return best;
    }
}
