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

    private static decimal?[,] Grid(int[] numbers, int sites, int kits)
    {
        var costs = new decimal?[sites, kits];
        for (var i = 0; i < numbers.Length; i++) costs[i / kits, i % kits] = numbers[i];
        return costs;
    }

    private static decimal Total(decimal?[,] costs, int most) => KitChoice.Choose(costs, most).KitOfSite.Select((k, s) => costs[s, k]!.Value).Sum();
}
