using CsCheck;
using TenderKit.Tendering.Kits;
using Xunit;

namespace TenderKit.Tendering.Tests.Kits;

public class KitChoiceTests
{
    [Fact]
    public void Two_of_three_kits_by_hand()
    {
        // kits 0 and 2: 10 + 5 + 8 = 23; kits 0 and 1: 10 + 9 + 8 = 27; kits 1 and 2 leave site 0 dark.
        decimal?[,] costs = { { 10, null, null }, { 12, 9, 5 }, { null, 8, 8 } };
        var selection = KitChoice.Choose(costs, 2);
        Assert.Equal(new[] { 0, 2 }, selection.Kits.ToArray());
        Assert.Equal(new[] { 0, 2, 2 }, selection.KitOfSite.ToArray());
        Assert.True(selection.IsProven);
    }

    [Fact]
    public void More_kits_than_asked_when_fewer_leave_a_site_dark()
    {
        decimal?[,] costs = { { 10, null }, { null, 8 } };
        Assert.Equal(new[] { 0, 1 }, KitChoice.Choose(costs, 1).Kits.ToArray());
    }

    [Fact]
    public void A_site_without_any_kit_is_a_bug_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => KitChoice.Choose(new decimal?[,] { { null, null } }, 1));

    [Fact]
    public void Allowing_one_more_kit_never_costs_more() => Gen.Int[1, 100].Array[40].Sample(numbers =>
    {
        var costs = Grid(numbers, 8, 5);
        for (var most = 1; most < 5; most++) Assert.True(Total(costs, most + 1) <= Total(costs, most));
    });

    [Fact]
    public void With_all_kits_each_site_takes_its_cheapest() => Gen.Int[1, 100].Array[40].Sample(numbers =>
    {
        var costs = Grid(numbers, 8, 5);
        var cheapest = Enumerable.Range(0, 8).Sum(s => Enumerable.Range(0, 5).Min(k => costs[s, k]!.Value));
        Assert.Equal(cheapest, Total(costs, 5));
    });

    [Fact]
    public void Too_many_selections_to_try_are_searched_and_said_to_be_unproven()
    {
        var random = new Random(7);
        var costs = new decimal?[400, 60];
        for (var s = 0; s < 400; s++)
        {
            for (var k = 0; k < 60; k++) costs[s, k] = random.Next(100, 1000);
        }

        var selection = KitChoice.Choose(costs, 6);
        Assert.False(selection.IsProven);
        Assert.Equal(6, selection.Kits.Length);
        Assert.All(Enumerable.Range(0, 400), s => Assert.Equal(selection.Kits.Min(k => costs[s, k]), costs[s, selection.KitOfSite[s]]));
    }

    /// <summary>300 random tables of 2 to 6 sites and 2 to 6 make-ups, some uses refused by the checks, some by a balance that may not have been run: every subset tried against the choice and its curve.</summary>
    [Fact]
    public void Choice_and_curve_are_those_of_every_subset_tried()
    {
        var (exact, bounds, unserved) = (0, 0, 0);
        for (var seed = 0; seed < 300; seed++)
        {
            var (known, run, real) = Table(new Random(seed));
            Assert.All(KitCount.Curve(known, run, 4), point =>
            {
                var (ofKnown, ofReal) = (LeastOfSubsets(known, point.Kits), LeastOfSubsets(real, point.Kits));
                Assert.Equal(ofKnown, point.Cost);
                if (point.Cost is null) unserved++;
                else if (point.Proof == KitCountProof.Least) exact++;
                else bounds++;
                Assert.NotEqual(KitCountProof.Found, point.Proof);
                if (point.Cost is { } cost && ofReal is { } least) Assert.True(cost <= least);
                if (point.Proof == KitCountProof.Least) Assert.Equal(ofReal, point.Cost);
                if (point.Cost is null) Assert.Null(ofReal);
            });
        }

        Assert.True(exact > 50 && bounds > 50 && unserved > 50, $"{exact} exact, {bounds} bounds, {unserved} that do not serve: too few of a kind");
    }

    /// <summary>Costs as known, which of them are exact, and the real ones behind them.</summary>
    private static (decimal?[,] Known, bool[,] Run, decimal?[,] Real) Table(Random random)
    {
        var (sites, kits) = (random.Next(2, 7), random.Next(2, 7));
        var (known, run, real) = (new decimal?[sites, kits], new bool[sites, kits], new decimal?[sites, kits]);
        for (var s = 0; s < sites; s++)
        {
            for (var k = 0; k < kits; k++)
            {
                var own = k == s % kits;
                run[s, k] = own || random.Next(2) == 0;
                if (!own && random.Next(3) == 0) continue;
                var cost = random.Next(50, 120);
                real[s, k] = own || random.Next(4) > 0 ? cost + random.Next(0, 20) : null;
                known[s, k] = run[s, k] ? real[s, k] : cost;
            }
        }

        return (known, run, real);
    }

    private static decimal? LeastOfSubsets(decimal?[,] costs, int most)
    {
        decimal? least = null;
        for (var mask = 1; mask < 1 << costs.GetLength(1); mask++)
        {
            if (System.Numerics.BitOperations.PopCount((uint)mask) > most) continue;
            decimal? total = 0;
            for (var s = 0; s < costs.GetLength(0); s++)
                total += Enumerable.Range(0, costs.GetLength(1)).Where(k => (mask >> k & 1) == 1).Min(k => costs[s, k]);
            if (total is { } sum && !(sum >= least)) least = sum;
        }

        return least;
    }

    private static decimal?[,] Grid(int[] numbers, int sites, int kits)
    {
        var costs = new decimal?[sites, kits];
        for (var i = 0; i < numbers.Length; i++) costs[i / kits, i % kits] = numbers[i];
        return costs;
    }

    private static decimal Total(decimal?[,] costs, int most) => KitChoice.Choose(costs, most).KitOfSite.Select((k, s) => costs[s, k]!.Value).Sum();
}
