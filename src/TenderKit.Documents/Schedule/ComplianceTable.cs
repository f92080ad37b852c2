using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>Every check of a kit: the hardest site of each.</summary>
internal static class ComplianceTable
{
    public static TableBlock Of(Kit kit) => new(
        $"Compliance of kit {kit.Id}: for each requirement the site with the least margin",
        [
            new("Requirement", Share: 1), new("Required", Side: Side.End, FixedPt: 60), new("Offered", Side: Side.End, FixedPt: 56),
            new("Margin", Side: Side.End, FixedPt: 40), new("Complies", FixedPt: 44), new("Basis", Share: 1.1), new("Site", FixedPt: 36),
        ],
        [.. kit.Checks.Zip(kit.CheckSites).Select(pair => new Row(ImmutableArray.Create(
            CheckText.Requirement(pair.First),
            CheckText.Required(pair.First),
            CheckText.Offered(pair.First),
            CheckText.Margin(pair.First),
            pair.First.Complies ? "yes" : "NO",
            pair.First.Basis,
            pair.Second), Strong: !pair.First.Complies))]);
}
