using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The sites that are not met, each with its reason; nothing when there are none.</summary>
internal static class UnmetSites
{
    public static IEnumerable<Block> Pages(TenderDesign design)
    {
        var money = new MoneyFree(design);
        if (design.Unmet.IsEmpty) yield break;
        yield return new Heading(1, "Sites not met");
        yield return new TableBlock(
            "Sites asked for and not in this offer",
            [new("Site", FixedPt: 60), new("Name", Share: 1), new("Reason", Share: 2)],
            [.. design.Unmet.Select(u => Row.Of(u.SiteId, u.Name, money.Allows(u.Reason) ? u.Reason
                : "commercial reason, not part of the technical envelope"))]);
    }
}
