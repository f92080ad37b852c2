using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The first page: who, what, when, and out of which inputs.</summary>
internal static class CoverPage
{
    public static IEnumerable<Block> Of(TenderDesign design)
    {
        var head = design.Tender.Head;
        yield return new Gap(16);
        yield return new Paragraph("Technical schedule", TextStyle.BodyStrong);
        yield return new Paragraph(head.Title, TextStyle.Title, AfterSteps: 2);
        yield return new Paragraph(head.Reference, TextStyle.Section, AfterSteps: 6);
        yield return new TableBlock(
            null,
            [new("", FixedPt: 110), new("")],
            [Row.Of("Employer", head.Employer), Row.Of("Bidder", head.Bidder), Row.Of("Date of issue", Figures.Date(head.IssueDate)),
                Row.Of("Delivery", $"{Figures.Number(head.DeliveryDays, 0)} days"), Row.Of("Offer valid for", $"{Figures.Number(head.ValidityDays, 0)} days")]);
        yield return new Gap(4);
        yield return new Paragraph("Digest of inputs", TextStyle.BodyStrong, AfterSteps: 0);
        yield return new Paragraph("Each figure in this document follows from these inputs alone; the first twelve digits of the SHA-256 of each file tell "
            + "whether it is the same.", TextStyle.Small);
        yield return Inputs(design);
    }

    private static TableBlock Inputs(TenderDesign design) => new(
        null,
        [new("Input", FixedPt: 110), new("Is"), new("SHA-256", FixedPt: 96)],
        [
            .. design.Inputs.Select(i => Row.Of("File", i.File, Figures.ShortDigest(i.Sha256))),
            Row.Of("Parts catalogue", design.Tender.CatalogPath, Figures.ShortDigest(design.CatalogDigest)),
            .. design.Sites.GroupBy(s => s.Climate.Monthly.Grade).OrderBy(g => g.Key)
                .Select(g => Row.Of("Climate", $"{Words.Of(g.Key)}: {Figures.Count(g.Count(), "site", "sites")}", "")),
        ]);
}
