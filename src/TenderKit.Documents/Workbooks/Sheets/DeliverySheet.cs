using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Delivery and completion schedule: goods with their lead times, then the end of the works, lot by lot.</summary>
internal static class DeliverySheet
{
    public static void Write(Book book, TenderDesign design, BillOfQuantities bill)
    {
        var sheet = book.Add("Delivery");
        sheet.Columns(10, 58, 7, 12, 24, 13, 13);
        var row = TitleBlock.Write(sheet, book, "Delivery and completion schedule", "Days count from the contract. A lead time runs from the order to the store; all goods are on site in time for the completion of the works.");
        sheet.Header(row, "Item", "Description", "Unit", ">Quantity", "Destination", ">Lead time, days", ">Complete, days");
        sheet.Repeat(row, row);
        var parts = design.Catalog.All.GroupBy(p => p.Code).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        foreach (var lot in bill.LotSummaries) row = Lot(sheet, design, bill, lot, parts, row + 1);
    }

    private static int Lot(Sheet sheet, TenderDesign design, BillOfQuantities bill, LotSummary lot, Dictionary<string, Part> parts, int row)
    {
        var sites = bill.Schedule.Count(s => s.Lot == lot.Lot);
        var store = bill.Lots.Length > 1 ? "site store, " + TitleBlock.LotLabel(lot.Lot) : "site store";
        sheet.Words(row, 1, bill.Lots.Length > 1 ? TitleBlock.LotLabel(lot.Lot) : "Works", Look.Band);
        sheet.Fill(row, 2, 7, Look.Band);
        var goods = bill.Parts.SelectMany(p => bill.LinesOf(p, lot.Lot)).Where(l => !l.Service && l.PartCode.Length > 0);
        foreach (var line in goods) Goods(sheet, ++row, line, store, parts[line.PartCode].LeadTimeDays);
        sheet.Words(++row, 2, FormattableString.Invariant($"Works complete and commissioned on {sites} site{(sites == 1 ? "" : "s")}"), Look.TotalText);
        sheet.Figure(row, 7, design.Tender.Head.DeliveryDays, Look.TotalMoney with { Format = Look.WholeFormat });
        sheet.Fill(row, 1, 7, Look.TotalText);
        return row;
    }

    private static void Goods(Sheet sheet, int row, BillLine line, string store, int leadDays)
    {
        sheet.Words(row, 1, line.Code, Look.Row with { Wrap = false });
        sheet.Words(row, 2, line.Description, Look.Row);
        sheet.Words(row, 3, line.Unit, Look.RowCentre);
        sheet.Show(row, 4, line.Quantity, Look.Number(BillSheet.QuantityFormat(line)));
        sheet.Words(row, 5, store, Look.Row with { Side = Side.Left });
        if (leadDays > 0) sheet.Figure(row, 6, leadDays, Look.Whole);
        sheet.Fill(row, 6, 7, Look.Row);
    }
}
