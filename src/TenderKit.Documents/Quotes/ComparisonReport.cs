using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Quotes.Compare;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Quotes;

/// <summary>The comparison of several offers as a PDF file: ranking lot by lot, least combination, steps, sites, screens. Same offers, same bytes.</summary>
public static class ComparisonReport
{
    public static byte[] Make(ComparedOffers comparison, TenderHead head) => PdfPrinter.Print(Document(comparison, head));

    internal static PaperDocument Document(ComparedOffers comparison, TenderHead head) => new(
        "Comparison of offers", head.Employer, head.Reference, $"{head.Reference}  ·  Comparison of offers", head.IssueDate,
        [
            new Paragraph("Comparison of offers", TextStyle.Chapter, AfterSteps: 1), new Paragraph($"{head.Title}, {head.Reference}.", TextStyle.Body), new Paragraph(QuoteReport.WhoDecides, TextStyle.Small),
            .. comparison.Lots.Select(l => Ranking(l, comparison)), .. Together(comparison), new Heading(1, "Step by step"), .. comparison.Offers.Select(Steps), .. Sites(comparison), .. Screens(comparison),
        ])
    { Wording = Wording.In(head.Language, [.. Echoes.Of(head), .. comparison.Offers.SelectMany(o => Echoes.Of(o.Checked))]) };

    private static TableBlock Ranking(LotRanking lot, ComparedOffers comparison) => new(
        $"Lot {lot.Lot}, {comparison.Currency}",
        [new("Rank", FixedPt: 32), new("Offer", Share: 1), new("Evaluated", Side: Side.End, FixedPt: 76), new("Over the years", Side: Side.End, FixedPt: 76), new("Price score", Side: Side.End, FixedPt: 56), new("What the rules say", Share: 1.5)],
        [.. lot.Offers.Select(o => Row.Of(o.Rank?.ToString(CultureInfo.InvariantCulture) ?? "-", o.File, QuoteReport.Money(o.Evaluated), QuoteReport.Money(o.OverYears), QuoteReport.Money(o.Score), comparison.Offers.First(e => e.File == o.File).Checked.Overall))])
    { KeepTogether = true };

    private static IEnumerable<Block> Together(ComparedOffers comparison)
    {
        yield return new Heading(1, "All lots together");
        if (comparison.Best is not { } best)
        {
            yield return new Paragraph("No combination of awards covers every lot with offers that nothing speaks against.");
            yield break;
        }

        yield return new TableBlock(
            "Awards that cost least together, " + comparison.Currency, [new("Lot", FixedPt: 60), new("Offer"), new("Evaluated", Side: Side.End, FixedPt: 110)],
            [
                .. best.Awards.Select(a => Row.Of(a.Lot, a.File, QuoteReport.Money(a.Evaluated))), Row.Of("", "Conditional discounts earned", QuoteReport.Money(best.Discount)),
                Row.Of("", "Total", QuoteReport.Money(best.Total)) with { Strong = true },
            ])
        { KeepTogether = true };
    }

    private static TableBlock Steps(EvaluatedOffer offer) => new(
        $"{offer.File}, lots {string.Join(", ", offer.Checked.Lots)}", [new("Step"), new("Amount", Side: Side.End, FixedPt: 110), new("How", Share: 1.4)],
        [
            .. offer.Steps.Select(s => Row.Of(s.Step, QuoteReport.Money(s.Amount), s.How) with { Strong = s.Step == "evaluated price" }),
            Row.Of("over the years, with replacements", QuoteReport.Money(offer.OverYears), "batteries and integrated units at their expected life, not before the warranty ends"),
            Row.Of("for a million lumen-hours", offer.PerMegalumenHour?.ToString("0.0000", CultureInfo.InvariantCulture) ?? "-", "price over the years over the light delivered"),
        ])
    { KeepTogether = true };

    private static IEnumerable<Block> Sites(ComparedOffers comparison)
    {
        var rows = comparison.Offers.Where(o => !o.Runs.IsEmpty).Select(o => (Offer: o, Dark: o.Runs.MaxBy(r => r.DarkNightsPerYear)!, Dim: o.Runs.MinBy(r => r.AverageLx / Math.Max(0.01, r.AskedLx))!)).ToImmutableArray();
        if (rows.IsEmpty) yield break;
        yield return new Heading(1, "The offered parts at the sites");
        yield return new TableBlock(
            "Hardest site of each offer",
            [new("Offer"), new("Most dark nights", "a year, at most", Side: Side.End, FixedPt: 84), new("at site", FixedPt: 44), new("Least light", "of what is asked", Side: Side.End, FixedPt: 84), new("at site", FixedPt: 44), new("Weakest link", Share: 1.2)],
            [.. rows.Select(r => Row.Of(r.Offer.File, Figures.Number(r.Dark.DarkNightsPerYear, 2), r.Dark.SiteId, (r.Dim.AverageLx / Math.Max(0.01, r.Dim.AskedLx)).ToString("0 %", CultureInfo.InvariantCulture), r.Dim.SiteId, r.Dark.Weakest))]);
    }

    private static IEnumerable<Block> Screens(ComparedOffers comparison)
    {
        var screens = comparison.Offers.SelectMany(o => o.Screens.Select(s => (o.File, Screen: s))).ToImmutableArray();
        if (screens.IsEmpty) yield break;
        yield return new Heading(1, "Prices to be clarified");
        yield return new TableBlock(
            "Unusual prices; clarify in writing first", [new("Offer", FixedPt: 90), new("Where", FixedPt: 62), new("Code", FixedPt: 38), new("Finding", Share: 2), new("Source", Share: 1.2)],
            [.. screens.Select(s => Row.Of(s.File, QuoteReport.Where(s.Screen.Where), s.Screen.Code, s.Screen.Message, s.Screen.Source))]);
    }
}
