using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>Every check of a kit: the hardest site of each, named in the caption where it is the same for all.</summary>
internal static class ComplianceTable
{
    private static readonly ImmutableArray<Column> _columns =
    [
        new("Requirement", Share: 1.05), new("Required", Side: Side.End, FixedPt: 60), new("Offered", Side: Side.End, FixedPt: 56),
        new("Margin", Side: Side.End, FixedPt: 40), new("Complies", FixedPt: 44), new("Basis", Share: 1.1),
    ];

    public static TableBlock Of(Kit kit)
    {
        var sites = kit.CheckSites.Distinct().ToImmutableArray();
        if (sites.Length == 1)
        {
            return new($"Compliance of kit {kit.Id} at site {sites[0]}, which {Governing.Phrase(kit)}", _columns, [.. kit.Checks.Select(c => Line(c))]);
        }

        return new(
            $"Compliance of kit {kit.Id}: for each requirement the site with the least margin",
            _columns.Add(new Column("Site", FixedPt: 36)),
            [.. kit.Checks.Zip(kit.CheckSites).Select(pair => Line(pair.First, pair.Second))]);
    }

    private static Row Line(Check check, params string[] site) => new(
        [
            CheckText.Requirement(check), CheckText.Required(check), CheckText.Offered(check), CheckText.Margin(check),
            check.Complies ? "yes" : "NO", check.Basis, .. site,
        ],
        Strong: !check.Complies);
}
