using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Quantity take-off: poles by lot and kit, allowances, and what one pole of each kit takes.</summary>
internal static class QuantitySheet
{
    private static readonly double[] ColumnWidths = [8, 16, 70, 8, 13];

    /// <param name="allowances">Input cells that the quantities hang on.</param>
    public static void Write(Book book, BillOfQuantities bill, IReadOnlyCollection<KeyValuePair<string, CellId>> allowances)
    {
        var sheet = book.Add("Quantities");
        sheet.Columns(ColumnWidths);
        var row = TitleBlock.Write(sheet, book, "Quantity take-off", "Quantity of an item in a lot = poles of each kit in the lot x what one pole of that kit takes.");
        row = Poles(sheet, bill, row);
        row = Allowances(sheet, allowances, row + 1);
        MakeUp(sheet, bill, row + 1);
    }

    private static int Poles(Sheet sheet, BillOfQuantities bill, int row)
    {
        sheet.Words(row++, 1, "Poles by lot and kit", Look.Heading);
        sheet.Header(row, "Kit", "Lot", "", "", ">Poles");
        foreach (var kit in bill.KitPoles)
        {
            sheet.Words(++row, 1, kit.KitId, Look.Row);
            sheet.Words(row, 2, kit.Lot, Look.Row);
            sheet.Home(row, 5, kit.Poles, Look.Whole);
            sheet.Fill(row, 3, 4, Look.Row);
        }

        return row + 1;
    }

    private static int Allowances(Sheet sheet, IReadOnlyCollection<KeyValuePair<string, CellId>> allowances, int row)
    {
        if (allowances.Count == 0) return row;
        sheet.Words(row++, 1, "Allowances", Look.Heading);
        foreach (var (name, cell) in allowances)
        {
            sheet.Paragraph(row, 1, 4, name, Look.Row);
            sheet.Home(row++, 5, cell, FormatOf(cell));
        }

        return row;
    }

    private static void MakeUp(Sheet sheet, BillOfQuantities bill, int row)
    {
        sheet.Words(row++, 1, "Make-up of one pole", Look.Heading);
        sheet.Header(row, "Kit", "Part", "Description", "Unit", ">Per pole");
        foreach (var item in bill.MakeUp)
        {
            sheet.Words(++row, 1, item.KitId, Look.Row);
            sheet.Words(row, 2, item.PartCode, Look.Row);
            sheet.Words(row, 3, item.Description, Look.Row);
            sheet.Words(row, 4, item.Unit, Look.RowCentre);
            sheet.Home(row, 5, item.PerPole, Look.Number(item.Unit is "No." or "set" ? Look.WholeFormat : "#,##0.000"));
        }
    }

    public static Look FormatOf(CellId input) => input.Name switch
    {
        "in.years" => Look.Whole,
        _ when input.Name.StartsWith("in.exchange", StringComparison.Ordinal) => Look.Number("#,##0.0000"),
        _ => Look.Percent,
    };
}
