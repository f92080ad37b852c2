using System.Text.RegularExpressions;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The standards named by requirements, rules, checks and parts.</summary>
internal static partial class Standards
{
    private const string Recalled = ", from memory";

    public static IEnumerable<Block> Pages(TenderDesign design)
    {
        yield return new Heading(1, "Standards");
        yield return new Paragraph(
            "Editions are to be verified by the reader; the edition in force at the place of the works prevails. From memory: not read again for this offer. A "
                + "part is claimed to meet a standard by its maker; certificates to be shown. Other sources stand beside each design rule and each climate.")
        {
            KeepWithNext = true,
        };
        var used = Uses(design).SelectMany(u => Named(u.Text).Select(s => (Standard: s, u.Use))).ToLookup(u => u.Standard.Replace(Recalled, "", StringComparison.Ordinal));
        var claimed = Claims(design).ToLookup(c => c.Standard, c => c.Part);
        yield return new TableBlock(
            "Standards, what the design uses them for, and the parts claimed to meet them",
            [new("Standard", FixedPt: 84), new("Used for", Share: 1), new("Parts", Share: 1)],
            [.. used.Select(g => g.Key)
                .Concat(claimed.Select(g => g.Key))
                .Distinct()
                .Order(StringComparer.Ordinal)
                .Select(s => Row.Of(s, InWords(used[s]), Words.List(claimed[s].Distinct().Order(StringComparer.Ordinal), 12)))])
        {
            Compact = true,
        };
    }

    /// <summary>Designations in a text, marked when the text is from memory.</summary>
    internal static IEnumerable<string> Named(string text) =>
        Designation().Matches(text).Select(m => m.Value.TrimEnd('.', ',', ':')).Distinct()
            .Select(s => text.Contains("from memory", StringComparison.Ordinal) ? s + Recalled : s);

    /// <summary>The uses of one standard; a use that rests on memory says so.</summary>
    private static string InWords(IEnumerable<(string Standard, string Use)> uses) => Words.List(
        uses.GroupBy(u => u.Use, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.Key + (g.All(u => u.Standard.EndsWith(Recalled, StringComparison.Ordinal)) ? " (from memory)" : "")),
        12);

    private static IEnumerable<(string Text, string Use)> Uses(TenderDesign design)
    {
        var money = new MoneyFree(design);
        foreach (var target in design.Sites.Select(s => s.Site.Target).Distinct()) yield return (target.Source, "light class " + target.Name);
        foreach (var rule in design.Rules.Where(r => money.Allows(r.Id + " " + r.Where))) yield return (rule.Source, rule.Where);
        foreach (var check in design.Kits.SelectMany(k => k.Checks)) yield return (check.Basis, Use(check));
        if (LuminairePages.Known(design).IsEmpty) yield break;
        yield return ("IES TM-15-11 (from memory)", "zones and rating of luminaires");
        yield return ("EN 13201-2 (from memory)", "luminous intensity class of luminaires");
    }

    /// <summary>What a check is about, without the place it is made at.</summary>
    private static string Use(Check check) => $"{check.Item.ToLowerInvariant()}: {check.Property.Split(',')[0]}";

    private static IEnumerable<(string Standard, string Part)> Claims(TenderDesign design) =>
        from kit in design.Kits
        from part in UsedParts.Of(kit.Parts)
        from standard in part.Certificates.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        select (standard, part.Code);

    [GeneratedRegex(@"\b(AASHTO LTS|(ASCE|ASTM|CIE|CISPR|EN|EN ISO|EN IEC|IBC|IEC|IEC TR|IEC TS|IEEE|IES LM|IES TM|ISO|NFPA|UN)[ -]\d[\d.:/-]*)")]
    private static partial Regex Designation();
}
