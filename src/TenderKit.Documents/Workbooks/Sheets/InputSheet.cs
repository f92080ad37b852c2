using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Every input of the price: exchange, freight, duty, overhead, margin, allowances, contingency, tax.</summary>
internal static class InputSheet
{
    public static void Write(Book book, BillOfQuantities bill)
    {
        var sheet = book.Add("Inputs");
        sheet.Columns(8, 62, 18);
        var row = TitleBlock.Write(sheet, book, "Inputs of the price");
        TitleBlock.Legend(sheet, row, 1, 3, "marks a cell that may be changed; every other figure follows from these.");
        row += 2;
        sheet.Header(row, "", "Input", ">Value");
        foreach (var (name, cell) in bill.Inputs)
        {
            sheet.Words(++row, 2, name, Look.Row);
            sheet.Home(row, 3, cell, QuantitySheet.FormatOf(cell));
            sheet.Fill(row, 1, 1, Look.Row);
        }
    }
}
