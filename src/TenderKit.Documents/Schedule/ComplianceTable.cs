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
            new("Requirement", Share: 2.6), new("Required", Side: Side.End, FixedPt: 78), new("Offered", Side: Side.End, FixedPt: 62),
            new("Margin", Side: Side.End, FixedPt: 40), new("Complies", FixedPt: 46), new("Basis", Share: 2), new("Site", FixedPt: 42),
        ],
        [.. kit.Checks.Zip(kit.CheckSites).Select(pair => new Row(ImmutableArray.Create(
            $"{pair.First.Item}: {pair.First.Property}",
            pair.First.RequiredText,
            pair.First.OfferedText,
            pair.First.MarginText,
            pair.First.Complies ? "yes" : "NO",
            pair.First.Basis,
            pair.Second), Strong: !pair.First.Complies))]);
}
