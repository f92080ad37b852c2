using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Kits;

/// <summary>
/// Brings the designs of a tender down to a few kits. Every make-up found for some site is tried on every other site with all checks and
/// the energy balance; then the kits that serve all sites at the least direct cost are kept.
/// </summary>
public static class Standardiser
{
    /// <summary>Make-ups tried, those that serve the most poles first; more would add time, hardly ever a better choice.</summary>
    public const int MostMakeUps = 40;

    /// <summary>Numbers of kits the curve of cost goes up to.</summary>
    public const int MostCounted = 6;

    /// <summary>The designs with at most as many make-ups as the tender allows, and what that costs.</summary>
    /// <param name="designs">One design a site, each the cheapest for its site alone.</param>
    public static Outcome<StandardDesigns> Run(ImmutableArray<SiteDesign> designs, int atMost, DesignInputs inputs)
    {
        var makeUps = MakeUpsOf(designs);
        if (makeUps.Length <= atMost)
            return Outcome.Of(new StandardDesigns(designs) { Counts = inputs.Explain && makeUps.Length <= MostCounted ? new KitCosts(designs, makeUps, MostMakeUps, inputs).Curve(MostCounted) : [] });
        var costs = new KitCosts(designs, makeUps, MostMakeUps, inputs);
        var selection = costs.Choose(atMost);
        var standard = new SiteDesign[designs.Length];
        SiteDesigns.ForEachByPlace(Enumerable.Range(0, designs.Length), i => designs[i].Site, i => standard[i] = WithKit(designs[i], makeUps[selection.KitOfSite[i]], inputs));
        return Outcome.Of(new StandardDesigns([.. standard]) { Counts = costs.Curve(MostCounted) }, Notices(costs, selection, makeUps.Length, atMost, inputs.Tender));
    }

    private static ImmutableArray<PoleParts> MakeUpsOf(ImmutableArray<SiteDesign> designs) =>
    [
        .. designs.GroupBy(d => d.Parts.Key, StringComparer.Ordinal)
            .OrderByDescending(g => g.Sum(d => d.Poles)).ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.First().Parts),
    ];

    private static SiteDesign WithKit(SiteDesign design, PoleParts kit, DesignInputs inputs)
    {
        if (design.Parts.Key == kit.Key) return design;
        var weather = inputs.Shared.WeatherOf(design.Site, design.Climate.Monthly, inputs);
        var proven = KitTrial.Run(design.Site, weather, kit, inputs)?.Proven ?? throw new InvalidOperationException($"kit {kit.Key} suited site {design.Site.Id} a moment ago");
        return SiteDesigner.DesignOf(design.Site, weather, proven, inputs, SiteDesigner.NoticedOf(design.Site, design.Climate.Monthly, inputs));
    }

    private static IEnumerable<Diagnostic> Notices(KitCosts costs, KitSelection selection, int makeUps, int atMost, Tender tender)
    {
        if (selection.Kits.Length > atMost)
        {
            yield return Diagnostic.Warning("TK640", string.Create(
                CultureInfo.InvariantCulture, $"no {atMost} kits of those found serve every site; {selection.Kits.Length} are used: allow more under kits, at_most, or bring the sites' requirements closer"));
        }

        var (free, now) = (costs.Free, costs.Of(selection));
        yield return Diagnostic.Note("TK641", string.Create(
            CultureInfo.InvariantCulture,
            $"{makeUps} make-ups were brought down to {selection.Kits.Length} kits; {(tender.Choice.ByPresentValue ? tender.Choice.InWords : "direct cost")} rises by {(now - free) / free * 100:0.0} %, {now - free:N0} {tender.Head.Currency}; {(selection.IsProven ? "every selection was tried" : "the best found by exchanging, not proven the least")}"));
    }
}

/// <summary>Designs after standardising.</summary>
public sealed record StandardDesigns(ImmutableArray<SiteDesign> Sites)
{
    /// <summary>Cost against the number of kits; empty where it was not asked for.</summary>
    public ImmutableArray<KitCount> Counts { get; init; } = [];
}
