using TenderKit.Tendering.Forms;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>How the employer's form was filled: line by line, what was asked and what answers it; then what has no line of its own.</summary>
internal static class FormSheet
{
    public static void Write(Book book, PriceForm form, PricedForm priced)
    {
        var sheet = book.Add("Price form", landscape: true);
        sheet.Columns(14, 7, 9, 46, 8, 12, 12, 14, 16, 24, 46);
        var row = TitleBlock.Write(
            sheet, book, "The employer's form, line by line",
            $"File {form.Settings.File}. Quantities are the employer's and are not changed. Rates carry what has no line of its own by the factor below, in proportion to the amounts.");
        foreach (var (words, value, look) in new (string, decimal, Look)[]
        {
            ("Factor on the rates", priced.SpreadFactor, new Look("0.000000", Side: Side.Right)), ("Sum of the form, tax left out", priced.FormTotal, new Look(Look.MoneyFormat, Side: Side.Right)),
            ("Our total before tax at our quantities", priced.OurTotal, new Look(Look.MoneyFormat, Side: Side.Right)), ("The form less our total", priced.FormTotal - priced.OurTotal, new Look(Look.MoneyFormat, Side: Side.Right)),
        })
        {
            sheet.Paragraph(row, 1, 4, words);
            sheet.Figure(row++, 6, (double)value, look);
        }

        Answers(sheet, priced, ref row);
        Unplaced(sheet, priced, row + 2);
    }

    private static void Answers(Sheet sheet, PricedForm priced, ref int row)
    {
        sheet.Header(++row, "Sheet", ">Row", "Item", "Description in the form", "Unit", ">Quantity", ">Ours", ">Rate written", ">Amount", "Our items", "Remark");
        sheet.Repeat(row, row);
        foreach (var answer in priced.Answers)
        {
            var line = answer.Line;
            sheet.Words(++row, 1, line.Sheet, Look.Row);
            sheet.Figure(row, 2, line.Row, Look.Whole);
            sheet.Words(row, 3, line.Item, Look.Row);
            sheet.Words(row, 4, line.Description, Look.Row);
            sheet.Words(row, 5, line.Unit, Look.RowCentre);
            sheet.Figure(row, 6, (double)line.Quantity, Look.Number("#,##0.00"));
            if (answer.OurQuantity is { } ours) sheet.Figure(row, 7, (double)ours, Look.Number("#,##0.00"));
            if (answer.Rate is { } rate)
            {
                sheet.Figure(row, 8, (double)rate, Look.Money);
                sheet.Figure(row, 9, (double)answer.Amount, Look.Money);
            }

            sheet.Words(row, 10, string.Join(" + ", answer.BillCodes), Look.Row);
            sheet.Words(row, 11, answer.Remark, Look.Row);
            sheet.Fill(row, 1, 11, Look.Row);
        }
    }

    private static void Unplaced(Sheet sheet, PricedForm priced, int row)
    {
        if (priced.Unplaced.IsEmpty) return;
        sheet.Words(row++, 1, "Our items without a line in the form", Look.Heading);
        sheet.Words(row, 1, "Item", Look.Head);
        sheet.Words(row, 4, "Description", Look.Head);
        sheet.Words(row, 9, "Amount", Look.HeadRight);
        sheet.Words(row, 11, "What becomes of it", Look.Head);
        sheet.Fill(row, 1, 11, Look.Head);
        foreach (var item in priced.Unplaced)
        {
            sheet.Words(++row, 1, item.BillCode, Look.Row);
            sheet.Words(row, 4, item.Description, Look.Row);
            sheet.Figure(row, 9, (double)item.Amount, Look.Money);
            sheet.Words(row, 11, item.Spread ? "spread over the rates" : "not in the price of the form", Look.Row);
            sheet.Fill(row, 1, 11, Look.Row);
        }
    }
}
