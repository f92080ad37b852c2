using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.PartsStated;

namespace TenderKit.Documents.Forms;

/// <summary>
/// A request for clarification ready to send: what the parts a tender states give at its places, and each question with its clause, what was found,
/// why it matters and what is proposed. Holds no amount of money. Same design, same bytes.
/// </summary>
public static class ClarificationRequest
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
            $"{head.Reference} {head.Title}: request for clarification", head.Bidder, "Request for clarification", $"{head.Reference}  ·  Request for clarification",
            head.IssueDate, [.. Blocks(design, design.PartsStated ?? throw new ArgumentException("no parts are stated", nameof(design)))])
        { Wording = Echoes.WordingOf(design) };
    }

    private static IEnumerable<Block> Blocks(TenderDesign design, StatedPartsResult result)
    {
        var head = design.Tender.Head;
        yield return new Paragraph("Request for clarification", TextStyle.BodyStrong);
        yield return new Paragraph($"{head.Reference}, {head.Title}", TextStyle.Section, AfterSteps: 1);
        yield return new Paragraph($"To: {head.Employer}", TextStyle.Body, AfterSteps: 0);
        yield return new Paragraph($"From: {head.Bidder}", TextStyle.Body, AfterSteps: 2);
        yield return new Paragraph(
            "The tender names parts in place of a duty. We have worked out, hour by hour through synthetic years of the weather of each place, what these parts give there. "
            + "The results lead to the questions below; each names what was found, why it matters and what we propose. Please answer them to all bidders.");
        foreach (var study in result.Studies)
        {
            yield return new Paragraph($"What the parts give: {study.Parts.Name}, {Clarifications.Text(study.Parts)}", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
            yield return new Paragraph(
                "Light with the luminaire of our catalogue nearest in power, undimmed. Dark nights: upper bound of the mean, 90 % sure. Reserve: of an old battery in the coldest month.", TextStyle.Small, AfterSteps: 0)
            { KeepWithNext = true };
            yield return Table(study);
        }

        yield return new Paragraph("Questions", TextStyle.Section, AfterSteps: 1) { KeepWithNext = true };
        foreach (var question in result.Questions)
        {
            var clause = question.Clause.Length == 0 ? $"{question.Kit}" : $"{question.Kit}, clause {question.Clause}";
            yield return new Paragraph($"Question {question.Number} ({clause}). {question.Question}", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
            yield return new Paragraph($"Found: {question.Found}", TextStyle.Body, IndentPt: 12, AfterSteps: 0) { KeepWithNext = true };
            yield return new Paragraph($"Why it matters: {question.Why}", TextStyle.Body, IndentPt: 12, AfterSteps: 0) { KeepWithNext = true };
            yield return new Paragraph($"Proposed: {question.Proposal}", TextStyle.Body, IndentPt: 12, AfterSteps: 0) { KeepWithNext = true };
            yield return new Paragraph("Answer: ______________________________________________________________", TextStyle.Body, IndentPt: 12, AfterSteps: 2);
        }

        yield return new Paragraph("Date and signature for the bidder: ______________________________", TextStyle.Body, AfterSteps: 1);
        yield return new Paragraph(
            "The figures are a screening with usual ratings for what the tender does not state; local code and the judgement of a licensed engineer prevail.", TextStyle.Small);
    }

    private static TableBlock Table(StatedPartsStudy study) => new(
        $"{study.Parts.Name} at its places",
        [
            new("Place", Share: 1.4), new("Class", FixedPt: 38), new("Average", "lx", 1, Side.End, 44), new("Minimum", "lx", 1, Side.End, 46), new("Spacing", "m", 1, Side.End, 44),
            new("Met", FixedPt: 24), new("Lit hours", "of asked", 1, Side.End, 62), new("Dark nights", "a year", 1, Side.End, 60), new("Reserve", "nights", 1, Side.End, 44),
        ],
        [.. study.Sites.Select(s => Row.Of(
            $"{s.SiteId} {s.SiteName}", s.ClassName, Figures.Number(s.LampCode is null ? double.NaN : s.AverageLx, 1), Figures.Number(s.LampCode is null ? double.NaN : s.MinimumLx, 2),
            Figures.Number(s.LampCode is null ? double.NaN : s.SpacingM, 1), s.IsLightMet ? "yes" : "NO", $"{Figures.Number(s.LitHours, 1)} of {Figures.Number(s.AskedHours, 1)}",
            Figures.Number(s.DarkNightsPerYear, 1), Figures.Number(s.AutonomyNights, 1)))]);
}
