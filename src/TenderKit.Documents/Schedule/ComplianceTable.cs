using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>Every check of a kit, item by item: the hardest site of each, named in the caption where it is the same for all.</summary>
internal static class ComplianceTable
{
    /// <summary>What a reader asks first comes first: the light, then its energy, then what carries it.</summary>
    private static readonly ImmutableArray<string> _order =
    [
        "Light", "Energy", "Luminaire", "Battery", "Array", "Module", "Controller", "Cable", "Fuse", "Enclosure", "Bracket", "Pole", "Foundation",
    ];

    private static readonly ImmutableArray<Column> _columns =
    [
        new("Item", FixedPt: 44), new("Requirement", Share: 1.15), new("Required", Side: Side.End, FixedPt: 55), new("Offered", Side: Side.End, FixedPt: 46),
        new("Margin", Side: Side.End, FixedPt: 34), new("Met", FixedPt: 20), new("Basis", Share: 1.1),
    ];

    public static TableBlock Of(TenderDesign design, Kit kit)
    {
        var sites = kit.CheckSites.Distinct().ToImmutableArray();
        var rules = new RuleNumbers(design);
        var hasEvidence = EvidenceText.Any(kit.Parts);
        var rows = kit.Checks.Zip(kit.CheckSites, (check, site) => (Check: check, Site: site))
            .GroupBy(c => c.Check.Item)
            .OrderBy(g => _order.IndexOf(g.Key) is var place and >= 0 ? place : _order.Length)
            .SelectMany(g => g.Select((c, i) => Line(i == 0 ? g.Key : "", c.Check, rules, 
                [.. sites.Length == 1 ? [] : new[] { c.Site }, .. hasEvidence ? [i == 0 ? EvidenceText.Mark(kit.Parts, g.Key) : ""] : Array.Empty<string>()])));
        return new(
            sites.Length == 1 ? $"Compliance of kit {kit.Id} at site {sites[0]}, which {Governing.Phrase(kit)}"
                : $"Compliance of kit {kit.Id}: for each requirement the site with the least margin",
            [.. _columns, .. sites.Length == 1 ? [] : new[] { new Column("Site", FixedPt: 24) }, .. hasEvidence ? [new Column("Evidence", FixedPt: 38)] : Array.Empty<Column>()],
            [.. rows])
        {
            Compact = true,
            Tight = true,
            KeepTogether = true,
        };
    }

    private static Row Line(string item, Check check, RuleNumbers rules, string[] site) => new(
        [
            item, check.Property, CheckText.Required(check), CheckText.Offered(check), CheckText.Margin(check), check.Complies ? "yes" : "NO",
            rules.InWords(check.Basis), .. site,
        ],
        Strong: !check.Complies);
}
