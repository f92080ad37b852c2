using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Quotes.Compare;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Quotes;

/// <summary>The comparison of several offers as a workbook: every step of the evaluation as a formula over what was read.</summary>
public static class ComparisonWorkbook
{
    private static readonly (string Head, Func<LotCells, CellId?> Cell, Look Look)[] Columns =
    [
        (">Items, corrected", c => c.Items, Look.Money), (">Transport", c => c.Transport, Look.Money), (">Discounts", c => c.Discount, Look.Money), (">Net, tax left out", c => c.Net, Look.Money),
        (">Exchange rate", c => c.Rate, Look.Number("0.000000")), (">In one currency", c => c.Converted, Look.Money), (">Added for items missing", c => c.Added, Look.Money),
        (">Preference, share", c => c.Share, Look.Percent), (">Preference", c => c.Preference, Look.Money), (">Evaluated price", c => c.Evaluated, Look.Money), (">Replaced over the years", c => c.Replaced, Look.Money),
        (">Times, discounted", c => c.Factor, Look.Number("0.000000")), (">Cost over the years", c => c.OverYears, Look.Money), (">Million lumen-hours", c => c.MegalumenHours, Look.Number("#,##0.000")),
        (">For a million lumen-hours", c => c.PerMegalumenHour, Look.Number("0.0000")),
    ];

    public static byte[] Make(ComparedOffers comparison, TenderHead head)
    {
        using var culture = InvariantScope.Enter();
        var book = new Book(head, "Comparison of offers", comparison.Ledger);
        var ranking = book.Add("Ranking");
        Steps(book.Add("Steps", landscape: true), comparison);
        Ranking(ranking, comparison, head);
        AsRead(book.Add("As read", landscape: true), comparison);
        Sites(book.Add("Sites", landscape: true), comparison);
        Screens(book.Add("To clarify", landscape: true), comparison);
        return book.Save();
    }

    private static void Ranking(Sheet sheet, ComparedOffers comparison, TenderHead head)
    {
        sheet.Columns(8, 8, 30, 18, 18, 46);
        sheet.Words(1, 1, "Comparison of offers", Look.Title);
        sheet.Paragraph(2, 1, 6, $"{head.Title}, {head.Reference}. Amounts in {comparison.Currency}.", Look.Paragraph);
        sheet.Paragraph(3, 1, 6, QuoteReport.WhoDecides, Look.Paragraph with { Faint = true });
        sheet.Header(5, "Lot", ">Rank", "Offer", ">Evaluated price", ">Cost over the years", "What the rules say");
        var row = 5;
        foreach (var (lot, offer) in comparison.Lots.SelectMany(l => l.Offers.Select(o => (l.Lot, o))))
        {
            row++;
            var evaluated = comparison.Offers.First(o => o.File == offer.File);
            sheet.Words(row, 1, lot, Look.Row);
            if (offer.Rank is { } rank) sheet.Figure(row, 2, rank, Look.Whole);
            else sheet.Words(row, 2, "-", Look.RowCentre);
            sheet.Words(row, 3, offer.File, Look.Row);
            if (evaluated.Lots.FirstOrDefault(l => l.Lot == lot) is { } cells)
            {
                sheet.Show(row, 4, cells.Cells.Evaluated, Look.Money);
                sheet.Show(row, 5, cells.Cells.OverYears, Look.Money);
            }

            sheet.Fill(row, 4, 5, Look.Row);
            sheet.Words(row, 6, evaluated.Checked.Overall, Look.Row);
        }

        row += 2;
        sheet.Words(row, 1, "Awards that cost least together", Look.Heading);
        if (comparison.Best is not { } best)
        {
            sheet.Paragraph(row + 1, 1, 6, "No combination of awards covers every lot with offers that nothing speaks against.", Look.Paragraph);
            return;
        }

        var terms = new List<Expression>();
        foreach (var award in best.Awards)
        {
            row++;
            var cell = comparison.Offers.First(o => o.File == award.File).Lots.First(l => l.Lot == award.Lot).Cells.Evaluated;
            sheet.Words(row, 1, award.Lot, Look.Row);
            sheet.Fill(row, 2, 2, Look.Row);
            sheet.Words(row, 3, award.File, Look.Row);
            sheet.Formula(row, 4, new Reference(cell), Look.Money);
            terms.Add(new Reference(cell));
        }

        row++;
        sheet.Words(row, 3, "Conditional discounts earned", Look.Row);
        var discount = sheet.Fixed(row, 4, best.Discount, Look.Money);
        row++;
        sheet.Words(row, 3, "Total", Look.TotalText);
        sheet.Formula(row, 4, new Sum([.. terms, new Reference(discount)]), Look.TotalMoney);
    }

    private static void Steps(Sheet sheet, ComparedOffers comparison)
    {
        sheet.Columns([6, 26, .. Columns.Select(_ => 13.0)]);
        sheet.Header(1, ["Lot", "Offer", .. Columns.Select(c => c.Head)]);
        sheet.Repeat(1, 1, 2);
        var row = 1;
        foreach (var (offer, lot) in comparison.Offers.SelectMany(o => o.Lots.Select(l => (o, l))).OrderBy(p => p.l.Lot, StringComparer.Ordinal).ThenBy(p => p.o.File, StringComparer.Ordinal))
        {
            row++;
            sheet.Words(row, 1, lot.Lot, Look.Row);
            sheet.Words(row, 2, offer.File, Look.Row);
            for (var c = 0; c < Columns.Length; c++)
            {
                if (Columns[c].Cell(lot.Cells) is { } cell) sheet.Home(row, c + 3, cell, Columns[c].Look);
                else sheet.Words(row, c + 3, "-", Look.RowCentre);
            }
        }

        sheet.Paragraph(row + 2, 1, 12, comparison.ExchangeDate is { } date ? $"Exchange rates of {date}, from the tender file." : "Exchange rates from the tender file; it states no date for them.", Look.Paragraph with { Faint = true });
        if (comparison.Offers.SelectMany(o => o.Lots).Any(l => l.IsShared)) sheet.Paragraph(row + 3, 1, 12, "Where an offer does not say its lots row by row, common rows are shared by the poles of each lot.", Look.Paragraph with { Faint = true });
    }

    private static void AsRead(Sheet sheet, ComparedOffers comparison)
    {
        sheet.Columns(28, 12, 34, 18, 60);
        sheet.Header(1, "Offer", "Lots", "Step", ">Amount", "How");
        sheet.Repeat(1, 1);
        var row = 1;
        foreach (var (offer, step) in comparison.Offers.SelectMany(o => o.Steps.Select(s => (o, s))))
        {
            row++;
            sheet.Words(row, 1, offer.File, Look.Row);
            sheet.Words(row, 2, string.Join(", ", offer.Checked.Lots), Look.Row);
            sheet.Words(row, 3, step.Step, Look.Row);
            if (step.Amount is { } amount) sheet.Figure(row, 4, (double)amount, Look.Money);
            else sheet.Words(row, 4, "-", Look.RowCentre);
            sheet.Words(row, 5, step.How, Look.Row);
        }
    }

    private static void Sites(Sheet sheet, ComparedOffers comparison)
    {
        sheet.Columns(28, 10, 8, 11, 11, 12, 16, 11, 11, 44);
        sheet.Header(1, "Offer", "Site", "Kit", ">Lamp, W", ">Array, Wp", ">Battery, Wh", ">Dark nights a year, at most", ">Light, lx", ">Asked, lx", "Weakest link");
        sheet.Repeat(1, 1);
        var row = 1;
        foreach (var (offer, run) in comparison.Offers.SelectMany(o => o.Runs.Select(r => (o, r))))
        {
            row++;
            sheet.Words(row, 1, offer.File, Look.Row);
            sheet.Words(row, 2, run.SiteId, Look.Row);
            sheet.Words(row, 3, run.KitId, Look.Row);
            sheet.Figure(row, 4, run.LampW, Look.Number("0.0"));
            sheet.Figure(row, 5, run.ArrayWp, Look.Whole);
            sheet.Figure(row, 6, run.BatteryWh, Look.Whole);
            sheet.Figure(row, 7, run.DarkNightsPerYear, Look.Number("0.00"));
            sheet.Figure(row, 8, run.AverageLx, Look.Number("0.0"));
            sheet.Figure(row, 9, run.AskedLx, Look.Number("0.0"));
            sheet.Words(row, 10, run.Weakest, Look.Row);
        }
    }

    private static void Screens(Sheet sheet, ComparedOffers comparison)
    {
        sheet.Columns(28, 20, 9, 70, 44, 60);
        sheet.Header(1, "Offer", "Where", "Code", "Finding", "Source", "Question to the bidder");
        sheet.Repeat(1, 1);
        var row = 1;
        foreach (var (offer, screen) in comparison.Offers.SelectMany(o => o.Screens.Select(s => (o, s))))
        {
            row++;
            var cells = new[] { offer.File, QuoteReport.Where(screen.Where), screen.Code, screen.Message, screen.Source, screen.Question ?? "" };
            for (var c = 0; c < cells.Length; c++) sheet.Words(row, c + 1, cells[c], Look.Row);
        }
    }
}
