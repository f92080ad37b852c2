using System.Collections.Immutable;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Kits;

/// <summary>Groups sites of equal make-up into kits K1, K2, ... in order of the poles they serve, most first.</summary>
public static class KitGrouping
{
    public static (ImmutableArray<SiteDesign> Sites, ImmutableArray<Kit> Kits) Group(ImmutableArray<SiteDesign> designs)
    {
        var groups = designs
            .GroupBy(d => d.Parts.Key, StringComparer.Ordinal)
            .OrderByDescending(g => g.Sum(d => d.Poles))
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select((g, i) => (Id: FormattableString.Invariant($"K{i + 1}"), Sites: g.ToImmutableArray()))
            .ToImmutableArray();
        var idByKey = groups.ToDictionary(g => g.Sites[0].Parts.Key, g => g.Id, StringComparer.Ordinal);
        return (
            [.. designs.Select(d => d with { KitId = idByKey[d.Parts.Key] })],
            [.. groups.Select(g => KitOf(g.Id, g.Sites))]);
    }

    private static Kit KitOf(string id, ImmutableArray<SiteDesign> sites)
    {
        var hardest = sites
            .SelectMany(s => s.Checks.Select(c => (Check: c, Site: s.Site.Id)))
            .GroupBy(p => p.Check.Id, StringComparer.Ordinal)
            .Select(g => g.OrderBy(p => p.Check.MarginFraction ?? double.MaxValue).First())
            .ToImmutableArray();
        return new Kit(id, PartsFor(sites), [.. sites.Select(s => s.Site.Id)], sites.Sum(s => s.Poles), [.. hardest.Select(p => p.Check)], [.. hardest.Select(p => p.Site)]);
    }

    private static PoleParts PartsFor(ImmutableArray<SiteDesign> sites) => sites[0].Parts;
}
