using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Quantity take-off: a column for each kit; poles by lot, what one pole takes, and the allowances.</summary>
internal sealed class QuantitySheet(Sheet sheet, BillOfQuantities bill, string[] kits)
{
    private const int FirstKit = 4;

    private int _row;

    private int LastColumn => FirstKit + kits.Length - 1;

    /// <param name="allowances">Input cells that the quantities hang on.</param>
    public static void Write(Book book, BillOfQuantities bill, IReadOnlyCollection<KeyValuePair<string, CellId>> allowances)
    {
        string[] kits = [.. bill.KitPoles.Select(k => k.KitId).Distinct().OrderBy(k => k.Length).ThenBy(k => k, StringComparer.Ordinal)];
        var sheet = book.Add("Quantities", landscape: kits.Length > 4);
        sheet.Columns([13, 54, 7, .. Enumerable.Repeat(8.5, kits.Length)]);
        var writer = new QuantitySheet(sheet, bill, kits) { _row = TitleBlock.Write(sheet, book, "Quantity take-off", "Quantity of an item in a lot = poles of each kit in the lot x what one pole of that kit takes.") };
        writer.Kits();
        writer.Poles();
        writer.MakeUp();
        writer.Allowances(allowances);
    }

    public static Look FormatOf(CellId input) => input.Name switch
    {
        "in.years" => Look.Whole,
        _ when input.Name.StartsWith("in.exchange", StringComparison.Ordinal) => Look.Number("#,##0.0000"),
        _ => Look.Percent,
    };

    private void Kits()
    {
        sheet.Header(_row, "Part", "Description", "Unit");
        foreach (var kit in kits)
        {
            sheet.Words(_row, ColumnOf(kit), kit, Look.HeadRight.AsLink());
            sheet.Links[(_row, ColumnOf(kit))] = bill.Schedule.First(s => s.KitId == kit).Poles;
        }

        sheet.Repeat(_row, _row, FirstKit - 1);
        _row++;
    }

    private void Poles()
    {
        Band("Poles by lot");
        foreach (var lot in bill.KitPoles.GroupBy(k => k.Lot))
        {
            sheet.Words(_row, 2, lot.Key.Length == 0 ? "All sites" : TitleBlock.LotLabel(lot.Key), Look.Row);
            sheet.Words(_row, 3, "No.", Look.RowCentre);
            foreach (var kit in lot) sheet.Home(_row, ColumnOf(kit.KitId), kit.Poles, Look.Whole);
            EndRow();
        }
    }

    private void MakeUp()
    {
        Band("One pole takes");
        foreach (var part in bill.MakeUp.GroupBy(m => m.PartCode))
        {
            var item = part.First();
            sheet.Words(_row, 1, item.PartCode, Look.Row with { Wrap = false });
            sheet.Words(_row, 2, item.Description, Look.Row);
            sheet.Words(_row, 3, item.Unit, Look.RowCentre);
            var look = item.Unit is "No." or "set" ? Look.Whole : Look.Number("#,##0.000");
            foreach (var kit in part) sheet.Home(_row, ColumnOf(kit.KitId), kit.PerPole, look);
            EndRow();
        }
    }

    private void Allowances(IReadOnlyCollection<KeyValuePair<string, CellId>> allowances)
    {
        if (allowances.Count == 0) return;
        Band("Allowances");
        foreach (var (name, cell) in allowances)
        {
            sheet.Words(_row, 2, name, Look.Row);
            sheet.Home(_row, FirstKit, cell, FormatOf(cell));
            EndRow();
        }
    }

    private void Band(string title)
    {
        sheet.Words(_row, 1, title, Look.Band with { Wrap = false });
        sheet.Fill(_row++, 2, LastColumn, Look.Band);
    }

    private void EndRow() => sheet.Fill(_row++, 1, LastColumn, Look.Row);

    private int ColumnOf(string kit) => FirstKit + Array.IndexOf(kits, kit);
}
