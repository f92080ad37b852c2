using System.Text.RegularExpressions;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The standards named by requirements, rules, checks and parts.</summary>
internal static partial class Standards
{
    public static IEnumerable<Block> Pages(TenderDesign design)
    {
        yield return new Heading(1, "Standards");
        yield return new Paragraph(
            "Editions are to be verified by the reader; the edition in force at the place of the works prevails. A standard marked from memory was not read "
                + "again for this offer. "
            + "Other sources stand beside each design rule and each climate.")
        {
            KeepWithNext = true,
        };
        yield return Table("Standards the design rests on", "Used for", Uses(design).SelectMany(u => Named(u.Text).Select(s => (s, u.Use))));
        yield return Table("Standards the parts are claimed to meet; certificates to be shown", "Parts", Claims(design));
    }

    /// <summary>Designations in a text, marked when the text is from memory.</summary>
    internal static IEnumerable<string> Named(string text) =>
        Designation().Matches(text).Select(m => m.Value.TrimEnd('.', ',', ':')).Distinct()
            .Select(s => text.Contains("from memory", StringComparison.Ordinal) ? s + ", from memory" : s);

    private static TableBlock Table(string caption, string right, IEnumerable<(string Standard, string Use)> pairs) => new(
        caption,
        [new("Standard", Share: 1), new(right, Share: 2.6)],
        [.. pairs
            .GroupBy(p => p.Standard)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => Row.Of(g.Key, Words.List(g.Select(p => p.Use).Distinct().Order(StringComparer.Ordinal), 12)))]);

    private static IEnumerable<(string Text, string Use)> Uses(TenderDesign design)
    {
        var money = new MoneyFree(design);
        foreach (var target in design.Sites.Select(s => s.Site.Target).Distinct()) yield return (target.Source, "light class " + target.Name);
        foreach (var rule in design.Rules.Where(r => money.Allows(r.Id + " " + r.Where))) yield return (rule.Source, rule.Id);
        foreach (var check in design.Kits.SelectMany(k => k.Checks)) yield return (check.Basis, CheckText.Requirement(check));
    }

    private static IEnumerable<(string Standard, string Use)> Claims(TenderDesign design) =>
        from kit in design.Kits
        from part in UsedParts.Of(kit.Parts)
        from standard in part.Certificates.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        select (standard, part.Code);

    [GeneratedRegex(@"\b(AASHTO LTS|(ASCE|ASTM|CIE|CISPR|EN|EN ISO|EN IEC|IBC|IEC|IEC TR|IEC TS|IEEE|IES LM|IES TM|ISO|NFPA|UN)[ -]\d[\d.:/-]*)")]
    private static partial Regex Designation();
}
