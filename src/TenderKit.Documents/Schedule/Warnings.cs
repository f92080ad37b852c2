using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>A warning with all the places it was raised at.</summary>
internal sealed record Warning(string Code, Severity Severity, string Message, ImmutableArray<string> Places);

/// <summary>The warnings and errors of a design, equal ones together.</summary>
internal static class Warnings
{
    public static ImmutableArray<Warning> Of(TenderDesign design) =>
    [
        .. All(design)
            .GroupBy(d => (d.Severity, d.Code, d.Message))
            .Select(g => new Warning(g.Key.Code, g.Key.Severity, g.Key.Message, [.. g.Select(d => d.Place.ToString()).Where(p => p.Length > 0).Distinct()]))
            .OrderByDescending(w => w.Severity)
            .ThenBy(w => w.Code, StringComparer.Ordinal),
    ];

    public static IEnumerable<Block> Pages(TenderDesign design)
    {
        var money = new MoneyFree(design);
        var all = Of(design);
        var shown = all.Where(w => money.Allows(w.Message)).ToImmutableArray();
        yield return new Heading(1, "Warnings");
        if (shown.IsEmpty) yield return new Paragraph("None.");
        else yield return Table(shown);
        if (shown.Length < all.Length) yield return new Paragraph($"{Figures.Count(all.Length - shown.Length, "further warning is", "further warnings are")} "
            + "commercial and not part of the technical envelope.");
        var lost = design.Sites.Where(s => Fonts.Loses(s.Site.Name)).Select(s => s.Site.Id).ToImmutableArray();
        if (!lost.IsEmpty) yield return new Paragraph($"The names of {Figures.Count(lost.Length, "site", "sites")} hold characters this typeface lacks, "
            + $"printed as question marks; the number of the site decides: {Words.List(lost)}.");
    }

    private static TableBlock Table(ImmutableArray<Warning> warnings) => new(
        "Warnings and errors raised by the design",
        [new("Code", FixedPt: 42), new("", FixedPt: 46), new("Where", Share: 1), new("What, and what to do", Share: 2.4)],
        [.. warnings.Select(w => new Row(
            [w.Code, w.Severity == Severity.Error ? "error" : "warning", Words.List(w.Places, 6), w.Message], Strong: w.Severity == Severity.Error))]);

    private static IEnumerable<Diagnostic> All(TenderDesign design) =>
        design.Diagnostics.Concat(design.Sites.SelectMany(s => s.Diagnostics)).Where(d => d.Severity != Severity.Note && Concerns(design, d)).Distinct();

    /// <summary>A doubt about a file of the catalogue concerns the employer only when the part is offered.</summary>
    private static bool Concerns(TenderDesign design, Diagnostic diagnostic)
    {
        var aboutPart = diagnostic.Code.StartsWith("TK6", StringComparison.Ordinal) || diagnostic.Code.StartsWith("TK15", StringComparison.Ordinal) || diagnostic.Code.StartsWith("TK16", StringComparison.Ordinal);
        if (!aboutPart || diagnostic.Place.File is not { } file) return true;
        return design.Kits.SelectMany(k => UsedParts.Of(k.Parts)).Any(p => diagnostic.Message.Contains(p.Code, StringComparison.Ordinal) || (p is Luminaire l && l.PhotometricFile == file));
    }
}
