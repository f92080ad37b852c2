using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>
/// The technical schedule of a bid as a PDF file: what is offered, what it was checked against, and what it rests on.
/// Holds no amount of money. Same design, same bytes.
/// </summary>
public static class TechnicalSchedule
{
    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design));
    }

    internal static PaperDocument Document(TenderDesign design)
    {
        var head = design.Tender.Head;
        return new PaperDocument(
            $"{head.Reference} {head.Title}: technical schedule", head.Bidder, "Technical schedule", $"{head.Reference}  ·  Technical schedule",
                head.IssueDate, Blocks(design))
        { Wording = Echoes.WordingOf(design) };
    }

    private static ImmutableArray<Block> Blocks(TenderDesign design)
    {
        Block[] body =
        [
            .. SummaryPage.Of(design), .. RegionPages.Of(design), .. Kits(design), new PageBreak(), .. LuminairePages.Of(design), .. SiteTables.Of(design), .. MaintenancePages.Of(design), .. AssumptionPages.Of(design), .. TracePages.Of(design),
            .. StatementPages.Of(design), .. UnmetSites.Pages(design), .. Warnings.Pages(design), .. Standards.Pages(design),
        ];
        return [.. CoverPage.Of(design), new PageBreak(), Contents.For(body), new PageBreak(), .. body];
    }

    private static IEnumerable<Block> Kits(TenderDesign design)
    {
        yield return new Heading(1, "Kits");
        if (design.Kits.IsEmpty) yield return new Paragraph("None.");
        else yield return KitPages.Overview(design);
        if (ProvisionalWords.Holds(design.Sites)) yield return new Paragraph(ProvisionalWords.Legend, TextStyle.Small);
        foreach (var kit in design.Kits)
        {
            yield return new PageBreak();
            foreach (var block in KitPages.Of(design, kit)) yield return block;
        }
    }
}
