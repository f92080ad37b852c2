using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>What is ordered: needed, wastage, packs, ordered, left over, and the price of the quantity ordered.</summary>
internal static class OrderSheet
{
    private const int FirstStep = 19;

    public static void Write(Book book, BillOfQuantities bill, bool excessInRates)
    {
        if (bill.Orders.IsEmpty) return;
        var steps = bill.Orders.Max(o => o.Steps.Length);
        var sheet = book.Add("Orders", landscape: true);
        sheet.Columns([14, 40, 6, 10, 9, 8, 10, 8, 8, 8, 10, 9, 11, 9, 11, 11, 12, 11, .. Enumerable.Repeat(9.5, 2 * steps)]);
        var rule = excessInRates
            ? "What must be bought beyond the bill is spread over the rate of its part: supply price = price x units bought for each unit billed."
            : "What must be bought beyond the bill is the bidder's own stock and in no rate.";
        var row = TitleBlock.Write(
            sheet, book, "Orders", "One order of each part for all lots together, in whole packs (drums, pallets) and never below the least order, at the catalogue's price of the quantity ordered. " + rule + " Costs in " + bill.Currency + ", prices in the currency of the catalogue.");
        sheet.Header(row, [
            "Part", "Description", "Unit", ">Needed", ">Wastage", ">Spares", ">Billed", ">Pack", ">Least order", ">Packs", ">Ordered", ">Left over", ">Bought a unit billed", "Currency", ">List price", ">Price", ">Cost of the order", ">Of it left over",
            .. Enumerable.Range(1, steps).SelectMany(i => new[] { FormattableString.Invariant($">From quantity {i}"), FormattableString.Invariant($">price {i}") })]);
        sheet.Repeat(row, row, 2);
        var header = row;
        List<(CellId Cost, CellId Left)> amounts = [.. bill.Orders.Select(o => Line(sheet, ++row, o, steps))];
        sheet.Table = new TableArea("Orders", header, row, sheet.Widths.Length);
        sheet.Words(++row, 2, "Together, " + bill.Currency, Look.TotalText);
        sheet.Formula(row, 17, Cells.SumOf([.. amounts.Select(a => a.Cost)]), Look.TotalMoney);
        sheet.Formula(row, 18, Cells.SumOf([.. amounts.Select(a => a.Left)]), Look.TotalMoney);
        sheet.Fill(row, 1, sheet.Widths.Length, Look.TotalText);
    }

    private static (CellId Cost, CellId Left) Line(Sheet sheet, int row, OrderLine order, int steps)
    {
        sheet.Words(row, 1, order.PartCode, Look.Row with { Wrap = false });
        sheet.Words(row, 2, order.Description.Split(';')[0], Look.Row);
        sheet.Words(row, 3, order.Unit, Look.RowCentre);
        CellId[] counts = [order.Needed, order.Wastage, order.Spares, order.Billed, order.Pack, order.Least, order.Packs, order.Ordered, order.LeftOver];
        for (var i = 0; i < counts.Length; i++) sheet.Home(row, 4 + i, counts[i], order.Unit == "m" && i < 4 ? Look.Number("#,##0.0") : Look.Whole);
        sheet.Leasts[(row, 8)] = 0.001m;
        sheet.Home(row, 13, order.PerBilled, Look.Number("0.0000"));
        sheet.Words(row, 14, order.Currency, Look.RowCentre);
        sheet.Home(row, 15, order.ListPrice, Look.Money);
        sheet.Home(row, 16, order.Price, Look.Money);
        for (var i = 0; i < order.Steps.Length; i++)
        {
            sheet.Home(row, FirstStep + (2 * i), order.Steps[i].FromQuantity, Look.Whole);
            sheet.Home(row, FirstStep + (2 * i) + 1, order.Steps[i].Price, Look.Money);
        }

        CellId Cost(int column, CellId quantity) => sheet.Formula(row, column, new Product([Cells.Ref(quantity), Cells.Ref(order.Price), Cells.Ref(order.Exchange)]), Look.Money);
        var cells = (Cost(17, order.Ordered), Cost(18, order.LeftOver));
        sheet.Fill(row, FirstStep, FirstStep + (2 * steps) - 1, Look.Row);
        return cells;
    }
}
