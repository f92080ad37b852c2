using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Price schedule: goods apart from related services, closing on the same total as the bill.</summary>
internal static class PriceScheduleSheet
{
    private const int AmountColumn = 6;

    public static void Write(Book book, BillOfQuantities bill)
    {
        var sheet = book.Add("Price schedule");
        sheet.Columns(10, 58, 7, 13, 17, 20);
        var row = TitleBlock.Write(sheet, book, "Price schedule, goods and related services", "The items of the bill, sorted. Nothing is entered here. All prices in " + bill.Currency + ".");
        sheet.Header(row, "Item", "Description", "Unit", ">Quantity", ">Unit price", ">Total price");
        sheet.Repeat(row, row);
        var lines = bill.Parts.Take(bill.Parts.Length - 1).SelectMany(p => p.Lines).ToArray();
        var (afterGoods, goods) = Block(sheet, row + 1, "Goods", [.. lines.Where(l => !l.Service)]);
        var (afterServices, services) = Block(sheet, afterGoods, "Related services", [.. lines.Where(l => l.Service)]);
        Closing(sheet, bill, afterServices, goods, services);
    }

    private static (int Row, CellId Total) Block(Sheet sheet, int row, string title, IReadOnlyList<BillLine> lines)
    {
        sheet.Words(row, 1, title, Look.Band);
        sheet.Fill(row++, 2, AmountColumn, Look.Band);
        foreach (var line in lines)
        {
            sheet.Words(row, 1, line.Code, Look.Row with { Wrap = false });
            sheet.Words(row, 2, line.Description, Look.Row);
            sheet.Words(row, 3, line.Unit, Look.RowCentre);
            sheet.Show(row, 4, line.Quantity, Look.Number(BillSheet.QuantityFormat(line)));
            sheet.Show(row, 5, line.Rate, Look.Money);
            sheet.Show(row++, AmountColumn, line.Amount, Look.Money);
        }

        return (row + 1, Total(sheet, row, title + ", total", Cells.SumOf([.. lines.Select(l => l.Amount)]), Look.TotalText, Look.TotalMoney));
    }

    private static void Closing(Sheet sheet, BillOfQuantities bill, int row, CellId goods, CellId services)
    {
        var contingency = Total(sheet, row, bill.Parts[^1].Title, Cells.Ref(bill.Parts[^1].Collection), Look.Row, Look.Money);
        var tax = Total(sheet, row + 1, "Tax", Cells.Ref(bill.Tax), Look.Row, Look.Money);
        Total(sheet, row + 2, "Total, tax included, " + bill.Currency, Cells.SumOf(goods, services, contingency, tax), Look.GrandText, Look.GrandMoney);
    }

    private static CellId Total(Sheet sheet, int row, string title, Expression expression, Look words, Look money)
    {
        sheet.Words(row, 2, title, words);
        var cell = sheet.Formula(row, AmountColumn, expression, money);
        sheet.Fill(row, 1, AmountColumn, words);
        return cell;
    }
}
