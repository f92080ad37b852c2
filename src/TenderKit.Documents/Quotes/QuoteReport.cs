using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Quotes;

/// <summary>The check of one offer as a PDF file: verdict, price, findings, lines, sites, questions. Same offer, same bytes.</summary>
public static class QuoteReport
{
    internal const string WhoDecides = "This report says what the offer states, what the tender asks and what the published rules say. It rejects nobody: whether a deviation is material, and what follows from an answer, the evaluation committee decides.";

    public static byte[] Make(CheckedOffer offer, ImmutableArray<SiteRun> runs, TenderHead head) => PdfPrinter.Print(Document(offer, runs, head));

    internal static PaperDocument Document(CheckedOffer offer, ImmutableArray<SiteRun> runs, TenderHead head) => new(
        "Check of an offer", head.Employer, head.Reference, $"{head.Reference}  ·  Check of {offer.Offer.File}", head.IssueDate,
        [.. Front(offer, head), .. Findings(offer), .. Sites(runs), .. Lines(offer), .. Questions(offer)])
    { Wording = Echoes.WordingOf(head, offer) };

    private static IEnumerable<Block> Front(CheckedOffer offer, TenderHead head)
    {
        yield return new Paragraph("Check of an offer", TextStyle.Chapter, AfterSteps: 1);
        yield return new Paragraph($"{head.Title}, {head.Reference}. Offer {offer.Offer.File}, {offer.Offer.Bidder}; lots {string.Join(", ", offer.Lots)}.", TextStyle.Body);
        yield return new Paragraph("Overall: " + offer.Overall, TextStyle.BodyStrong);
        yield return new Paragraph(WhoDecides, TextStyle.Small);
        var price = offer.Price;
        var currency = offer.Offer.Terms.Currency ?? "currency not stated";
        yield return new TableBlock(
            "Price, " + currency, [new("Step"), new("Amount", Side: Side.End, FixedPt: 110)],
            [
                Row.Of("Total as stated", Money(price.Stated)), Row.Of("Items after the correction rules", Money(price.Items)), Row.Of("Transport", Money(price.Transport)), Row.Of("Discount", Money(price.Discount)),
                Row.Of("Tax", Money(price.Tax)), Row.Of("Corrected total", Money(price.Corrected)) with { Strong = true },
            ])
        { KeepTogether = true };
        yield return new Paragraph($"Digest of the file (SHA-256): {offer.Offer.Sha256}", TextStyle.Small);
    }

    private static IEnumerable<Block> Findings(CheckedOffer offer)
    {
        yield return new Heading(1, "Findings");
        if (offer.Findings.IsEmpty)
        {
            yield return new Paragraph("Nothing was found.");
            yield break;
        }

        yield return new TableBlock(
            "Findings in the order of the offer", [new("Where", FixedPt: 62), new("Code", FixedPt: 38), new("", FixedPt: 40), new("Finding", Share: 2.2), new("Source", Share: 1)],
            [.. offer.Findings.Select(f => Row.Of(Where(f.Where), f.Code, Word(f.Severity), f.Message, f.Source))]);
    }

    private static IEnumerable<Block> Sites(ImmutableArray<SiteRun> runs)
    {
        if (runs.IsEmpty) yield break;
        yield return new Heading(1, "The offered parts at every site");
        yield return new Paragraph("Energy: the offered lamp, module, battery and controller hour by hour through the same years as our own design. Light: our computed light times the ratio of the fluxes, a screening; ask for the photometric file.", TextStyle.Small);
        yield return new TableBlock(
            "Dark nights a year and light",
            [new("Site", FixedPt: 32), new("Kit", FixedPt: 26), new("Lamp", "W", Side: Side.End, FixedPt: 40), new("Array", "Wp", Side: Side.End, FixedPt: 42), new("Battery", "Wh", Side: Side.End, FixedPt: 46),
                new("Dark nights", "a year, at most", Side: Side.End, FixedPt: 60), new("Light", "lx", Side: Side.End, FixedPt: 34), new("Asked", "lx", Side: Side.End, FixedPt: 34), new("Weakest link")],
            [.. runs.Select(r => Row.Of(r.SiteId, r.KitId, Figures.Number(r.LampW, 1), Figures.Number(r.ArrayWp, 0), Figures.Number(r.BatteryWh, 0), Figures.Number(r.DarkNightsPerYear, 2), Figures.Number(r.AverageLx, 1), Figures.Number(r.AskedLx, 1), r.Weakest))]);
    }

    private static IEnumerable<Block> Lines(CheckedOffer offer)
    {
        yield return new Heading(1, "Lines as read");
        yield return new TableBlock(
            "Every line with what was read and its verdict",
            [new("Row", FixedPt: 34), new("Family", FixedPt: 52), new("Text", Share: 1.5), new("Read", Share: 1.5), new("Kits", FixedPt: 44), new("Corrected", Side: Side.End, FixedPt: 58), new("Verdict", FixedPt: 66)],
            [.. offer.Lines.Select(l => Row.Of(
                (l.Line.Place.Sheet is { } s && offer.Lines.Select(x => x.Line.Place.Sheet).Distinct().Skip(1).Any() ? s + " " : "") + Figures.Number(l.Line.Place.Row ?? 0, 0), l.Line.Family, l.Line.Text,
                string.Join("; ", l.Line.Ratings.Select(r => $"{r.Name.Replace('_', ' ')} {r.Text}{(r.CorrectedBy is { } by ? $" (corrected by {by})" : r.Confidence < 0.8 ? " (unsure)" : "")}")),
                string.Join(" ", l.KitIds), Money(l.CorrectedAmount), l.Verdict) with { Strong = l.Verdict != OfferChecker.AsAsked })])
        { Compact = true };
    }

    private static IEnumerable<Block> Questions(CheckedOffer offer)
    {
        var questions = offer.Questions.ToImmutableArray();
        if (questions.IsEmpty) yield break;
        yield return new Heading(1, "Questions to the bidder");
        yield return new ItemList(questions, Numbered: true);
    }

    internal static string Where(Place place) => place.Row is 0 or null ? "whole offer" : (place.Sheet is { } sheet ? sheet + ", " : "") + FormattableString.Invariant($"row {place.Row}");

    internal static string Word(Severity severity) => severity switch { Severity.Error => "serious", Severity.Warning => "ask", _ => "note" };

    internal static string Money(decimal? value) => value?.ToString("#,##0.00", CultureInfo.InvariantCulture) ?? "-";
}
