using System.Globalization;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>The search, its bounds and the leaving out of beaten parts against plain enumeration of everything there is to try.</summary>
public sealed class LeastCostSearchTests
{
    /// <summary>Catalogues tried; TENDERKIT_CATALOGUES sets more.</summary>
    private static readonly int _catalogues = int.TryParse(Environment.GetEnvironmentVariable("TENDERKIT_CATALOGUES"), CultureInfo.InvariantCulture, out var count) ? count : 150;

    private static readonly ChoiceBasis _presentValue = new(true, 12, 0.08m);

    [Fact]
    public void The_search_finds_what_enumeration_finds_on_random_catalogues() => Compare(ChoiceBasis.FirstCost, _catalogues);

    [Fact]
    public void By_present_value_too() => Compare(_presentValue, _catalogues / 2);

    [Fact]
    public void No_bound_on_the_way_to_a_whole_candidate_exceeds_its_cost()
    {
        var compared = 0;
        Parallel.For(0, _catalogues / 4, seed =>
        {
            var all = new SmallTender(1000 + seed, _presentValue);
            var costs = new Costs(all.Inputs.Tender);
            var bounds = new CostBounds(SmallTender.Weather.Climate, all.Inputs, costs, new SupportStage(SmallTender.Site, SmallTender.Weather.Climate, all.Inputs, costs, new Rejections()));
            foreach (var candidate in all.Wholes())
            {
                var cost = all.FirstCostOf(candidate);
                Assert.Equal(cost, bounds.Of(candidate), 6);
                foreach (var (step, bound) in OnTheWay(candidate, bounds, all.Inputs))
                    Assert.True(bound <= cost + 1e-9m, $"catalogue {seed}: bound {bound} at {step} above {cost}");
                Interlocked.Increment(ref compared);
            }
        });
        Assert.True(compared > 500, $"only {compared} candidates");
    }

    [Fact]
    public void The_least_that_can_follow_never_exceeds_what_follows()
    {
        var compared = 0;
        Parallel.For(0, 20, seed =>
        {
            var all = new SmallTender(2000 + seed, _presentValue);
            var later = new LaterCosts(SmallTender.Weather.Climate, all.Inputs, new Costs(all.Inputs.Tender));
            foreach (var proven in all.Wholes().Take(40).Select(all.Prove).OfType<ProvenCandidate>())
            {
                var (candidate, actual) = (proven.Candidate, later.Of(proven.Candidate, proven.Energy.BatteryLifeYears));
                Assert.True(later.LeastOf(candidate.Light) <= later.LeastOf(candidate));
                Assert.True(later.LeastOf(candidate) <= actual);
                Interlocked.Increment(ref compared);
            }
        });
        Assert.True(compared > 10, $"only {compared} candidates");
    }

    private static void Compare(ChoiceBasis basis, int catalogues)
    {
        var (found, units) = (0, 0);
        Parallel.For(0, catalogues, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            var all = new SmallTender(seed, basis);
            var plain = all.Enumerated();
            var searched = all.Searched();
            Assert.True(plain?.Value == searched?.Value, FormattableString.Invariant($"catalogue {seed}: enumeration {plain?.Value}, search {searched?.Value}"));
            if (plain is not null) Interlocked.Increment(ref found);
            if (plain?.IsIntegrated == true) Interlocked.Increment(ref units);
        });
        Assert.True(found > catalogues / 4 && units > 0, $"{found} of {catalogues} catalogues gave a design, {units} an integrated unit: too few to prove anything");
    }

    private static IEnumerable<(string Step, decimal Bound)> OnTheWay(Candidate candidate, CostBounds bounds, DesignInputs inputs)
    {
        var (light, power, bank) = (candidate.Light, candidate.Power, candidate.Power.Bank);
        yield return ("light", bounds.Of(light));
        if (light.Integrated is not null) yield break;
        var (climate, box, bracket) = (SmallTender.Weather.Climate, candidate.Support.Enclosure!, candidate.Support.Bracket!);
        var least = BankStage.Batteries(light, climate, inputs, new Rejections()).First(b => b.Battery == bank.Battery && b.InSeries == bank.InSeries).LeastStrings;
        yield return ("battery", bounds.Of(light, bank.Battery, bank.InSeries, least));
        yield return ("bank", bounds.Of(light, bank, box));
        var count = ArrayStage.Modules(bank, climate, inputs).First(m => m.Module == power.Module && m.InSeries == power.ModulesInSeries).LeastCount;
        yield return ("module", bounds.Of(light, bank, box, power.Module, count));
        yield return ("wired", bounds.Of(light, power, box, bracket, candidate.Wiring));
    }
}
