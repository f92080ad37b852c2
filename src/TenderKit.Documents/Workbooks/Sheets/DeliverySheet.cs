using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Programme;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Delivery schedule: goods with their lead times and the days they are in store, then the end of the works, lot by lot.</summary>
internal sealed class DeliverySheet(Sheet sheet, BillOfQuantities bill)
{
    private const int LastColumn = 9;

    /// <summary>Days late in words that need no colour.</summary>
    public const string LateFormat = "\"late by \"0;;\"in time\"";

    private readonly HashSet<CellId> _placed = [];
    private int _row;

    public static void Write(Book book, BillOfQuantities bill)
    {
        if (bill.Programme is not { } plan) return;
        var sheet = book.Add("Delivery", landscape: true);
        sheet.Columns(10, 54, 7, 11, 20, 11, 13, 13, 13);
        var row = TitleBlock.Write(
            sheet, book, "Delivery schedule",
            "Goods are ordered on the day of the contract and are in the site store after their lead time and the shipping stated on the sheet Programme. "
            + "The last day is the latest that still allows completion in time with the gangs there are; goods that come later are flagged with the days a part with a shorter lead time, or an earlier order, must gain.");
        sheet.Header(row, "Item", "Description", "Unit", ">Quantity", "Destination", ">Lead time, days", ">In store", ">Last day", ">Days late");
        sheet.Repeat(row, row);
        var delivery = new DeliverySheet(sheet, bill) { _row = row + 1 };
        foreach (var lot in plan.Lots) delivery.Lot(lot, plan.Goods.Where(g => g.Lot == lot.Lot).ToDictionary(g => g.PartCode, StringComparer.Ordinal), bill.Schedule.Count(s => s.Lot == lot.Lot));
    }

    private void Lot(LotPlanCells lot, Dictionary<string, GoodsPlan> plans, int sites)
    {
        var many = bill.Lots.Length > 1;
        sheet.Words(_row, 1, many ? TitleBlock.LotLabel(lot.Lot) : "Works", Look.Band with { Wrap = false });
        sheet.Fill(_row++, 2, LastColumn, Look.Band);
        var store = many ? "site store, " + TitleBlock.LotLabel(lot.Lot) : "site store";
        foreach (var line in bill.Parts.SelectMany(p => bill.LinesOf(p, lot.Lot)).Where(l => plans.ContainsKey(l.PartCode))) Goods(line, plans[line.PartCode], store);
        sheet.Words(_row, 2, sites == 1 ? "Works complete and commissioned on 1 site" : FormattableString.Invariant($"Works complete and commissioned on {sites} sites"), Look.TotalText);
        sheet.Show(_row, 7, lot.Finish, Look.TotalMoney with { Format = Look.DateFormat });
        sheet.Show(_row, 8, lot.Completion, Look.TotalMoney with { Format = Look.DateFormat });
        sheet.Show(_row, 9, lot.LateDays, Look.TotalMoney with { Format = LateFormat });
        sheet.Fill(_row++, 1, LastColumn, Look.TotalText);
    }

    private void Goods(BillLine line, GoodsPlan plan, string store)
    {
        sheet.Words(_row, 1, line.Code, Look.Row with { Wrap = false });
        sheet.Words(_row, 2, line.Description, Look.Row);
        sheet.Words(_row, 3, line.Unit, Look.RowCentre);
        sheet.Show(_row, 4, line.Quantity, Look.Number(BillSheet.QuantityFormat(line)));
        sheet.Words(_row, 5, store, Look.Row with { Side = Side.Left });
        Place(6, plan.LeadDays, Look.Whole);
        Place(7, plan.InStore, Look.Date);
        sheet.Show(_row, 8, plan.Latest, Look.Date);
        Place(9, plan.LateDays, Look.Number(LateFormat));
        _row++;
    }

    /// <summary>A spare shows again what stands at the item it is for, another lot the lead time of the first.</summary>
    private void Place(int column, CellId cell, Look look)
    {
        if (_placed.Add(cell)) sheet.Home(_row, column, cell, look);
        else sheet.Show(_row, column, cell, look);
    }
}
