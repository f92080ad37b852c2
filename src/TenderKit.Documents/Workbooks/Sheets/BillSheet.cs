using System.Globalization;
using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>The bill of one lot: items by part, each part closed by a collection that is carried to the summary of the lot.</summary>
internal sealed class BillSheet(Sheet sheet, BillOfQuantities bill, LotSummary lot, bool priced)
{
    private int _row;

    private int LastColumn => priced ? 6 : 4;

    public static void Write(Book book, BillOfQuantities bill, LotSummary lot, bool priced, string remark = "")
    {
        var many = bill.Lots.Length > 1;
        var sheet = book.Add(many ? "Bill " + lot.Lot : "Bill");
        sheet.Columns(priced ? [10, 58, 7, 13, 17, 20] : [10, 76, 9, 14]);
        new BillSheet(sheet, bill, lot, priced).Write(book, many, remark);
    }

    private void Write(Book book, bool many, string remark)
    {
        var title = (priced ? "Bill of quantities" : "Bill of quantities, unpriced") + (many ? ", " + TitleBlock.LotLabel(lot.Lot) : "");
        _row = TitleBlock.Write(sheet, book, title, remark.Length == 0 ? null : remark);
        if (priced) TitleBlock.Legend(sheet, _row, 1, LastColumn, "marks a cell that may be changed. Amount = quantity x rate, rounded to the cent. All prices in " + bill.Currency + ".");
        if (priced) _row += 2;
        var header = _row;
        sheet.Header(_row++, priced ? ["Item", "Description", "Unit", ">Quantity", ">Rate", ">Amount"] : ["Item", "Description", "Unit", ">Quantity"]);
        sheet.Repeat(header, header);
        foreach (var part in bill.Parts.Where(p => priced || p.Number < bill.Parts.Length)) Part(part);
        if (priced) Closing(book, many);
    }

    private void Part(BillPart part)
    {
        sheet.Words(_row, 1, part.Number.ToString(CultureInfo.InvariantCulture), Look.Band with { Side = Side.Left });
        sheet.Words(_row, 2, part.Title, Look.Band);
        sheet.Fill(_row++, 3, LastColumn, Look.Band);
        foreach (var line in bill.LinesOf(part, lot.Lot)) Line(line);
        if (!bill.LinesOf(part, lot.Lot).Any()) Empty();
        if (priced) Collection(part);
    }

    private void Line(BillLine line)
    {
        var takeOff = bill.MakeUp.FirstOrDefault(m => m.PartCode == line.PartCode);
        sheet.Words(_row, 1, line.Code, takeOff is null ? Look.Row with { Wrap = false } : (Look.Row with { Wrap = false }).AsLink());
        if (takeOff is not null) sheet.Links[(_row, 1)] = takeOff.PerPole;
        sheet.Words(_row, 2, line.Description, Look.Row);
        sheet.Words(_row, 3, line.Unit, Look.RowCentre);
        sheet.Home(_row, 4, line.Quantity, Look.Number(QuantityFormat(line)));
        if (priced)
        {
            sheet.Home(_row, 5, line.Rate, Look.Money);
            sheet.Home(_row, 6, line.Amount, Look.Money);
        }

        _row++;
    }

    private void Empty()
    {
        sheet.Words(_row, 2, "No item", Look.Row);
        sheet.Fill(_row++, 1, LastColumn, Look.Row);
    }

    private void Collection(BillPart part)
    {
        sheet.Words(_row, 2, string.Create(CultureInfo.InvariantCulture, $"Collection of part {part.Number}, carried to the summary"), Look.TotalText with { Side = Side.Right });
        sheet.Home(_row, 6, lot.Collections[part.Number - 1], Look.TotalMoney);
        sheet.Fill(_row, 1, LastColumn, Look.TotalText);
        _row += 2;
    }

    private void Closing(Book book, bool many)
    {
        sheet.BreaksBefore.Add(_row);
        sheet.Words(_row, 1, "", Look.Band);
        sheet.Words(_row, 2, "Summary of this bill", Look.Band);
        sheet.Fill(_row++, 3, LastColumn, Look.Band);
        foreach (var part in bill.Parts.Take(bill.Parts.Length - 1)) Sum(part.Title, Number(part), lot.Collections[part.Number - 1], home: false, Look.Row, Look.Money);
        Sum("Sum of parts 1 to 7", "", lot.PartsTotal, home: true, Look.TotalText, Look.TotalMoney);
        Sum(bill.Parts[^1].Title, Number(bill.Parts[^1]), lot.Collections[^1], home: false, Look.Row, Look.Money);
        Sum("Total before tax", "", lot.WithContingency, home: true, Look.TotalText, Look.TotalMoney);
        Sum("Tax", "", lot.Tax, home: true, Look.Row, Look.Money);
        Sum("Total, tax included, " + bill.Currency, "", lot.Total, home: true, Look.GrandText, Look.GrandMoney);
        if (many) WordsBlock.Write(sheet, _row + 1, 6, lot.Total, book.ValueOf(lot.Total), bill.Currency);
    }

    private void Sum(string title, string number, CellId cell, bool home, Look words, Look money)
    {
        sheet.Words(_row, 1, number, words with { Side = Side.Left });
        sheet.Words(_row, 2, title, words);
        if (home) sheet.Home(_row, 6, cell, money);
        else sheet.Show(_row, 6, cell, money);
        sheet.Fill(_row++, 3, LastColumn, words);
    }

    private static string Number(BillPart part) => part.Number.ToString(CultureInfo.InvariantCulture);

    public static string QuantityFormat(BillLine line) => line.Unit switch
    {
        "%" => Look.PercentFormat,
        "m3" or "m2" or "kg" or "h" => Look.MoneyFormat,
        "m" when line.Service => Look.MoneyFormat,
        _ => Look.WholeFormat,
    };
}
