using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Changes;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Changes;

/// <summary>What an addendum or a new price file changes, as a PDF file. Same changes, same bytes.</summary>
public static class ChangesPage
{
    internal const string Inside = "For internal use: it holds rates and totals. It does not belong into a technical envelope or into an answer to a bidder.";

    public static byte[] Make(ImmutableArray<Change> changes, TenderHead head) => PdfPrinter.Print(new PaperDocument(
        "What changes", head.Bidder, head.Reference, $"{head.Reference}  ·  What changes", head.IssueDate,
        [
            new Paragraph("What changes", TextStyle.Chapter, AfterSteps: 1),
            new Paragraph($"{head.Title}, {head.Reference}. {Figures.Count(changes.Length, "change", "changes")}."),
            new Paragraph(Inside, TextStyle.Small),
            .. changes.IsEmpty ? new Block[] { new Paragraph("Nothing changes.") } : [],
            .. changes.GroupBy(c => c.Part).Select(g => (Block)new TableBlock(
                char.ToUpperInvariant(g.Key[0]) + g.Key[1..],
                [new("What", Share: 1.3), new("Before", Side: Side.End), new("After", Side: Side.End), new("Difference", Side: Side.End, FixedPt: 80)],
                [.. g.Select(c => Row.Of(c.What, c.Old.Length == 0 ? "-" : c.Old, c.New.Length == 0 ? "-" : c.New, c.Difference))])),
        ])
    { Wording = Wording.In(head.Language, Echoes.Of(head)) });
}
