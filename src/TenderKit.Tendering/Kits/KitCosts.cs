using System.Collections.Immutable;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Kits;

/// <summary>
/// Cost of every site with every make-up. All checks but the energy balance are made at once; the balance, which takes longest, only for what a
/// selection uses. A selection that is the cheapest by these costs, which are never too high, and whose every use stands the balance, is
/// the cheapest of all.
/// </summary>
public sealed class KitCosts
{
    private readonly ImmutableArray<SiteDesign> _designs;
    private readonly ImmutableArray<PoleParts> _makeUps;
    private readonly DesignInputs _inputs;
    private readonly decimal?[,] _costs;
    private readonly bool[,] _proven;

    /// <param name="mostTried">Make-ups tried on every site; one beyond is tried on its own sites only.</param>
    public KitCosts(ImmutableArray<SiteDesign> designs, ImmutableArray<PoleParts> makeUps, int mostTried, DesignInputs inputs)
    {
        (_designs, _makeUps, _inputs) = (designs, makeUps, inputs);
        _costs = new decimal?[designs.Length, makeUps.Length];
        _proven = new bool[designs.Length, makeUps.Length];
        SiteDesigns.ForEachByPlace(Enumerable.Range(0, designs.Length), i => designs[i].Site, i =>
        {
            for (var k = 0; k < makeUps.Length; k++)
            {
                if (makeUps[k].Key == designs[i].Parts.Key) Prove(i, k);
                else if (k < mostTried) _costs[i, k] = KitTrial.LeastCost(designs[i].Site, Weather(i), makeUps[k], inputs);
            }
        });
    }

    /// <summary>The best selection of at most so many kits, every use of it proven.</summary>
    public KitSelection Choose(int atMost)
    {
        while (true)
        {
            var selection = KitChoice.Choose(_costs, atMost);
            var open = selection.KitOfSite.Select((k, s) => (Site: s, Kit: k)).Where(p => !_proven[p.Site, p.Kit]).ToArray();
            if (open.Length == 0) return selection;
            SiteDesigns.ForEachByPlace(open, p => _designs[p.Site].Site, p => Prove(p.Site, p.Kit));
        }
    }

    /// <summary>The cost of the best selection of each number of kits up to some, without any balance beyond those already run.</summary>
    public ImmutableArray<KitCount> Curve(int most) => KitCount.Curve(_costs, _proven, most);

    /// <summary>Direct cost of a selection, or its present value where the tender chooses by it.</summary>
    public decimal Of(KitSelection selection) => selection.KitOfSite.Select((k, s) => _costs[s, k]!.Value).Sum();

    /// <summary>Direct cost when every site has the make-up found for it alone.</summary>
    public decimal Free => Enumerable.Range(0, _designs.Length).Sum(s => Enumerable.Range(0, _makeUps.Length).Where(k => _proven[s, k]).Min(k => _costs[s, k] ?? decimal.MaxValue));

    private SiteWeather Weather(int site) => _inputs.Shared.WeatherOf(_designs[site].Site, _designs[site].Climate.Monthly, _inputs);

    private void Prove(int site, int kit)
    {
        _costs[site, kit] = KitTrial.Run(_designs[site].Site, Weather(site), _makeUps[kit], _inputs)?.Value;
        _proven[site, kit] = true;
    }
}
