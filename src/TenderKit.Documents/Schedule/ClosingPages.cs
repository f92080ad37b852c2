using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>What was not met, and the standards and sources.</summary>
internal static class ClosingPages
{
    public static IEnumerable<Block> Unmet(TenderDesign design)
    {
        var money = new MoneyFree(design);
        yield return new Heading(1, "Sites not met");
        if (design.Unmet.IsEmpty)
        {
            yield return new Paragraph("None: every site asked for is met.");
            yield break;
        }

        yield return new TableBlock(
            "Sites asked for and not in this offer",
            [new("Site", FixedPt: 60), new("Name", Share: 1), new("Reason", Share: 2)],
            [.. design.Unmet.Select(u => Row.Of(u.SiteId, u.Name, money.Allows(u.Reason) ? u.Reason : "commercial reason, not part of the technical envelope"))]);
    }

    public static IEnumerable<Block> Sources(TenderDesign design)
    {
        yield return new Heading(1, "Standards and sources");
        yield return new Paragraph("Editions are to be verified by the reader; the edition in force at the place of the works prevails. A source marked from memory was not read again for this offer.");
        yield return Table("Sources of requirements, rules and climate", "Source", "Used for", Uses(design));
        var claimed = Claims(design).ToImmutableArray();
        if (!claimed.IsEmpty) yield return Table("Standards the parts are claimed to meet", "Standard", "Parts", claimed);
    }

    private static TableBlock Table(string caption, string left, string right, IEnumerable<(string Key, string Value)> pairs) => new(
        caption,
        [new(left, Share: 1), new(right, Share: 1.4)],
        [.. pairs
            .GroupBy(p => p.Key)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => Row.Of(g.Key, Words.List(g.Select(p => p.Value).Distinct().Order(StringComparer.Ordinal), 12)))]);

    private static IEnumerable<(string Key, string Value)> Uses(TenderDesign design)
    {
        var money = new MoneyFree(design);
        foreach (var site in design.Sites)
        {
            yield return (site.Site.Target.Source, "light class " + site.Site.Target.Name);
            yield return (site.Climate.Monthly.Source, "climate");
        }

        foreach (var rule in design.Rules.Where(r => money.Allows(r.Id + " " + r.Where + " " + r.Source))) yield return (rule.Source, rule.Where);
        foreach (var check in design.Kits.SelectMany(k => k.Checks).Where(c => money.Allows(c.Basis))) yield return (check.Basis, $"{check.Item}: {check.Property}");
    }

    private static IEnumerable<(string Key, string Value)> Claims(TenderDesign design) =>
        from kit in design.Kits
        from part in UsedParts.Of(kit.Parts)
        from standard in part.Certificates.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        select (standard, part.Code);
}
