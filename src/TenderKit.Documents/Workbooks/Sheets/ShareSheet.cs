using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>What the price is made of, item by item and in all: direct cost, overhead, finance, profit, and what rounding leaves.</summary>
internal sealed class ShareSheet(Sheet sheet, BillOfQuantities bill, bool anythingBilled)
{
    private const int FirstShare = 5;
    private const int Billed = FirstShare + 4;

    private int _row;

    public static void Write(Book book, BillOfQuantities bill)
    {
        var sheet = book.Add("Make-up of the price", landscape: true);
        sheet.Columns(14, 56, 7, 12, 15, 14, 14, 14, 15);
        var remark = "All lots together, in " + bill.Currency + ". Rates are rounded before they are billed, so the columns differ from the amounts by the rounding shown at the foot.";
        new ShareSheet(sheet, bill, book.ValueOf(bill.PartsTotal) > 0) { _row = TitleBlock.Write(sheet, book, "Make-up of the price", remark) }.All();
    }

    private void All()
    {
        sheet.Header(_row, "Part", "Description", "Unit", ">Quantity", ">Direct cost", ">Overhead", ">Finance", ">Profit", ">As billed");
        sheet.Repeat(_row, _row, 2);
        _row++;
        var lines = bill.Parts.SelectMany(p => p.Lines).ToLookup(l => l.PartCode);
        List<CellId[]> rows = [.. bill.BuildUps.Select(b => Line(b, [.. lines[b.PartCode]]))];
        var totals = Totals(rows);
        if (anythingBilled) Percentages(totals);
        sheet.Words(_row, 2, "Rounding of the rates and amounts", Look.Row);
        sheet.Formula(_row, Billed, new Difference(Cells.Ref(totals[^1]), Cells.SumOf(totals.AsSpan(..^1))), Look.Money);
        Fill(Look.Row);
        sheet.Words(_row, 2, "Sum of parts 1 to 7 on the summary, less the sum above: must be nothing", Look.Row);
        sheet.Formula(_row, Billed, new Rounded(new Difference(Cells.Ref(bill.PartsTotal), Cells.Ref(totals[^1])), 2), Look.Money);
        Fill(Look.Row);
    }

    private CellId[] Line(RateBuildUp rate, BillLine[] lines)
    {
        sheet.Words(_row, 1, rate.PartCode, Look.Row with { Wrap = false });
        sheet.Words(_row, 2, rate.Description.Split(';')[0], Look.Row);
        sheet.Words(_row, 3, rate.Unit, Look.RowCentre);
        var quantity = sheet.Formula(_row, 4, Cells.SumOf([.. lines.Select(l => l.Quantity)]), Look.Money);
        CellId[] steps = [rate.Cost, rate.Overhead, rate.Finance, rate.Profit];
        CellId[] shares = [.. steps.Select((s, i) => sheet.Formula(_row, FirstShare + i, Cells.Times(quantity, s), Look.Money))];
        var billed = sheet.Formula(_row++, Billed, Cells.SumOf([.. lines.Select(l => l.Amount)]), Look.Money);
        return [.. shares, billed];
    }

    private CellId[] Totals(List<CellId[]> rows)
    {
        sheet.Words(_row, 2, "Together, before contingency and tax", Look.TotalText);
        CellId[] totals = [.. Enumerable.Range(0, 5).Select(i => sheet.Formula(_row, FirstShare + i, Cells.SumOf([.. rows.Select(r => r[i])]), Look.TotalMoney))];
        Fill(Look.TotalText);
        return totals;
    }

    private void Percentages(CellId[] totals)
    {
        sheet.Words(_row, 2, "Share of what is billed", Look.Row);
        for (var i = 0; i < totals.Length - 1; i++) sheet.Formula(_row, FirstShare + i, new Quotient(Cells.Ref(totals[i]), Cells.Ref(totals[^1])), Look.Percent);
        Fill(Look.Row);
    }

    private void Fill(Look look) => sheet.Fill(_row++, 1, Billed, look);
}
