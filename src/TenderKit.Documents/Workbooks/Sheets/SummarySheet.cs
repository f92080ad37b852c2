using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Grand summary: parts by lot, contingency, tax, total.</summary>
internal static class SummarySheet
{
    private const double MoneyWidth = 24;

    /// <param name="percentagesElsewhere">Contingency and tax live on another sheet and are only shown here.</param>
    public static void Write(Book book, BillOfQuantities bill, string title, bool percentagesElsewhere = false)
    {
        var many = bill.Lots.Length > 1;
        var sheet = book.Add("Summary", landscape: bill.Lots.Length > 3);
        sheet.Columns([8, 46, .. Enumerable.Repeat(MoneyWidth, many ? bill.Lots.Length + 1 : 1)]);
        var row = Facts(sheet, book, bill, TitleBlock.Write(sheet, book, title));
        row = Percentages(sheet, bill, row, percentagesElsewhere);
        row = Table(sheet, bill, row + 1, many) + 2;
        if (!percentagesElsewhere) Sign(sheet, WordsBlock.Write(sheet, row, sheet.Widths.Length, bill.GrandTotal, book.ValueOf(bill.GrandTotal), bill.Currency));
    }

    private static void Sign(Sheet sheet, int row)
    {
        foreach (var what in new[] { "Signed for the bidder", "Name and office", "Place and date" })
        {
            sheet.Words(row, 2, what, Look.Row);
            sheet.Fill(row, 3, sheet.Widths.Length, Look.Row);
            row += 2;
        }
    }

    private static int Facts(Sheet sheet, Book book, BillOfQuantities bill, int row)
    {
        var head = book.Head;
        string[] facts =
        [
            "Currency of all prices: " + bill.Currency,
            FormattableString.Invariant($"Bid valid for {head.ValidityDays} days, until {head.IssueDate.AddDays(head.ValidityDays):yyyy-MM-dd}"),
            FormattableString.Invariant($"Completion {head.DeliveryDays} days from the contract"),
        ];
        foreach (var fact in facts) sheet.Paragraph(row++, 2, sheet.Widths.Length, fact);
        sheet.Words(row, 2, "Poles in all", Look.Text);
        sheet.Formula(row, 3, Cells.SumOf([.. bill.KitPoles.Select(k => k.Poles)]), new Look(Look.WholeFormat, Side: Side.Right));
        return row + 1;
    }

    private static int Percentages(Sheet sheet, BillOfQuantities bill, int row, bool elsewhere)
    {
        var look = new Look(Look.PercentFormat, Side: Side.Right);
        foreach (var (label, name) in new[] { ("Contingency, on the sum of parts 1 to 7", "in.contingency"), ("Tax, on the sum with contingency", "in.tax") })
        {
            sheet.Words(row, 2, label, Look.Text);
            if (elsewhere) sheet.Show(row++, 3, bill.Input(name), look);
            else sheet.Home(row++, 3, bill.Input(name), look);
        }

        if (elsewhere) return row;
        TitleBlock.Legend(sheet, ++row, 1, sheet.Widths.Length, "marks a cell that may be changed; every other figure follows from these.");
        return row + 1;
    }

    /// <summary>Returns its last row.</summary>
    private static int Table(Sheet sheet, BillOfQuantities bill, int row, bool many)
    {
        sheet.Header(row, ["No.", "Title", .. many ? bill.Lots.Select(l => ">" + TitleBlock.LotLabel(l.Lot)) : [], many ? ">All lots" : ">" + bill.Currency]);
        foreach (var part in bill.Parts.Take(bill.Parts.Length - 1))
        {
            Line(sheet, bill, ++row, Number(part), part.Title, s => s.Collections[part.Number - 1], part.Collection, Look.Row, Look.Money);
        }

        var last = bill.Parts[^1];
        Line(sheet, bill, ++row, "", "Sum of parts 1 to 7", s => s.PartsTotal, bill.PartsTotal, Look.TotalText, Look.TotalMoney);
        Line(sheet, bill, ++row, Number(last), last.Title, s => s.Collections[^1], last.Collection, Look.Row, Look.Money);
        BeforeTax(sheet, bill, ++row);
        Line(sheet, bill, ++row, "", "Tax", s => s.Tax, bill.Tax, Look.Row, Look.Money);
        Line(sheet, bill, ++row, "", "Total, tax included, " + bill.Currency, s => s.Total, bill.GrandTotal, Look.GrandText, Look.GrandMoney);
        return row;
    }

    private static void BeforeTax(Sheet sheet, BillOfQuantities bill, int row)
    {
        sheet.Words(row, 2, "Total before tax", Look.TotalText);
        var column = 3;
        if (bill.Lots.Length > 1)
        {
            foreach (var lot in bill.LotSummaries) sheet.Show(row, column++, lot.WithContingency, Look.TotalMoney);
        }

        sheet.Formula(row, column, Cells.SumOf([.. bill.LotSummaries.Select(s => s.WithContingency)]), Look.TotalMoney);
        sheet.Fill(row, 1, column, Look.TotalText);
    }

    private static void Line(
        Sheet sheet, BillOfQuantities bill, int row, string number, string title, Func<LotSummary, CellId> ofLot, CellId ofAll, Look words, Look money)
    {
        sheet.Words(row, 1, number, words with { Side = Side.Left });
        sheet.Words(row, 2, title, words);
        var column = 3;
        if (bill.Lots.Length > 1)
        {
            foreach (var lot in bill.LotSummaries) sheet.Show(row, column++, ofLot(lot), money);
        }

        sheet.Home(row, column, ofAll, money);
    }

    private static string Number(BillPart part) => part.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
