using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Weights, volumes and customs codes of the goods, spares included, and what must be declared.</summary>
internal static class TransportSheet
{
    private const string WeightFormat = "#,##0.00";
    private const string VolumeFormat = "#,##0.0000";

    public static void Write(Book book, TenderDesign design, BillOfQuantities bill)
    {
        var sheet = book.Add("Transport", landscape: true);
        sheet.Columns(14, 52, 7, 11, 12, 12, 13, 13, 14, 34);
        var row = TitleBlock.Write(sheet, book, "Transport and customs", "Customs codes are indicative, to be confirmed by the customs agent.");
        sheet.Header(row, "Part", "Description", "Unit", ">Quantity", ">kg each", ">m3 each", ">kg", ">m3", "Customs code", "To declare");
        sheet.Repeat(row, row, 2);
        var parts = design.Catalog.All.GroupBy(p => p.Code).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var totals = new List<(CellId Kg, CellId M3)>();
        var lithium = new List<(CellId Kg, CellId M3, CellId Quantity)>();
        var inside = new List<(CellId Kg, CellId M3, CellId Quantity)>();
        var order = bill.MakeUp.Select(m => m.PartCode).Distinct().Select((code, i) => (code, i)).ToDictionary(o => o.code, o => o.i, StringComparer.Ordinal);
        var goods = bill.Parts.SelectMany(p => p.Lines).Where(l => l.PartCode.Length > 0 && parts[l.PartCode] is not ServiceRate).GroupBy(l => l.PartCode);
        foreach (var lines in goods.OrderBy(g => order[g.Key]))
        {
            var (kg, m3, quantity) = Line(sheet, ++row, parts[lines.Key], [.. lines.Select(l => l.Quantity)]);
            totals.Add((kg, m3));
            if (parts[lines.Key] is Battery { Chemistry: BatteryChemistry.LithiumIronPhosphate }) lithium.Add((kg, m3, quantity));
            if (parts[lines.Key] is IntegratedUnit { Chemistry: BatteryChemistry.LithiumIronPhosphate }) inside.Add((kg, m3, quantity));
        }

        row++;
        sheet.Words(row, 2, "Together", Look.TotalText);
        sheet.Formula(row, 7, Cells.SumOf([.. totals.Select(t => t.Kg)]), Look.TotalMoney with { Format = WeightFormat });
        sheet.Formula(row, 8, Cells.SumOf([.. totals.Select(t => t.M3)]), Look.TotalMoney with { Format = "#,##0.00" });
        sheet.Fill(row, 1, 10, Look.TotalText);
        if (lithium.Count > 0) Lithium(sheet, ++row, "of which lithium batteries", "Net weight; packing, labels and papers by the dangerous-goods rules of each carrier", lithium);
        if (inside.Count > 0) Lithium(sheet, ++row, "of which units with a lithium battery inside", "Weight of whole units; packing, labels and papers by the dangerous-goods rules of each carrier", inside);
    }

    private static void Lithium(Sheet sheet, int row, string label, string remark, List<(CellId Kg, CellId M3, CellId Quantity)> batteries)
    {
        sheet.Words(row, 2, label, Look.Row);
        sheet.Words(row, 3, "No.", Look.RowCentre);
        sheet.Formula(row, 4, Cells.SumOf([.. batteries.Select(b => b.Quantity)]), Look.Whole);
        sheet.Formula(row, 7, Cells.SumOf([.. batteries.Select(b => b.Kg)]), Look.Number(WeightFormat));
        sheet.Formula(row, 8, Cells.SumOf([.. batteries.Select(b => b.M3)]), Look.Number("#,##0.00"));
        sheet.Words(row, 10, remark, Look.Row);
        sheet.Fill(row, 1, 10, Look.Row);
    }

    private static (CellId Kg, CellId M3, CellId Quantity) Line(Sheet sheet, int row, Part part, CellId[] quantities)
    {
        sheet.Words(row, 1, part.Code, Look.Row);
        sheet.Words(row, 2, PartWords.Describe(part), Look.Row);
        sheet.Words(row, 3, PartWords.Unit(part), Look.RowCentre);
        var quantity = sheet.Formula(row, 4, Cells.SumOf(quantities), Look.Whole);
        var kg = sheet.Formula(row, 5, new Literal((decimal)part.WeightKg), Look.Number(WeightFormat));
        var m3 = sheet.Formula(row, 6, new Literal((decimal)part.VolumeM3), Look.Number(VolumeFormat));
        var allKg = sheet.Formula(row, 7, Cells.Times(quantity, kg), Look.Number(WeightFormat));
        var allM3 = sheet.Formula(row, 8, Cells.Times(quantity, m3), Look.Number("#,##0.00"));
        sheet.Words(row, 9, part.CustomsCode, Look.Row);
        sheet.Words(row, 10, Declaration(part), Look.Row);
        return (allKg, allM3, quantity);
    }

    private static string Declaration(Part part) => part switch
    {
        Battery { Chemistry: BatteryChemistry.LithiumIronPhosphate } battery =>
            FormattableString.Invariant($"Lithium-ion battery of {battery.RatedWh:0} Wh: UN 3480, dangerous goods of class 9, test summary of UN 38.3 (number from memory)"),
        Battery { Chemistry: BatteryChemistry.FloodedLeadAcid } => "Wet battery: dangerous goods of class 8",
        Battery => "Valve-regulated battery: non-spillable test to be shown",
        IntegratedUnit { Chemistry: BatteryChemistry.LithiumIronPhosphate } unit =>
            FormattableString.Invariant($"Lithium-ion battery of {unit.RatedWh:0} Wh inside the unit: UN 3481, contained in equipment, dangerous goods of class 9, test summary of UN 38.3 (numbers from memory)"),
        IntegratedUnit => "Unit with a lead-acid battery inside: non-spillable test to be shown",
        _ => "",
    };
}
