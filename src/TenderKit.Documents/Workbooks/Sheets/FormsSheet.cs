using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Each kit on its hardest site beside the cheapest of the other form: an integrated unit or separate parts. Holds money: internal.</summary>
internal static class FormsSheet
{
    public static void Write(Book book, TenderDesign design)
    {
        if (design.SideBySide.IsEmpty) return;
        var sheet = book.Add("Integrated or separate", landscape: true);
        sheet.Columns(7, 7, 20, 10, 12, 10, 10, 11, 11, 11, 8, 10, 11, 56);
        var row = TitleBlock.Write(
            sheet, book, "Integrated unit beside separate parts",
            $"On the hardest site of each kit: the kit, and the cheapest pole of the other form that passes every check there. Direct cost of one pole in {design.Tender.Head.Currency}, works included, "
            + "before overhead, profit and tax; with few kits allowed a kit need not be the cheapest of its own form here.");
        sheet.Header(row, "Kit", "Site", "Form", "Chosen", ">Cost a pole", ">Array, Wp", ">Battery, Wh", ">Autonomy", ">Dark nights", ">Life, years", ">Poles", ">Spacing, m", ">On pole, kg", "Parts, or what fails");
        sheet.Repeat(row, row);
        foreach (var pair in design.SideBySide)
        {
            Line(sheet, ++row, pair, pair.Chosen, "yes");
            Line(sheet, ++row, pair, pair.Other, "no");
        }
    }

    private static void Line(Sheet sheet, int row, FormPair pair, PoleForm form, string chosen)
    {
        string[] words = [pair.KitId, pair.SiteId, form.IsIntegrated ? "integrated unit" : "separate parts", chosen];
        for (var c = 0; c < words.Length; c++) sheet.Words(row, c + 1, words[c], Look.Row);
        sheet.Words(row, 14, form.Design is null ? form.Fails : PartsOf(form.Design.Parts), Look.Row);
        if (form.Design is not { } d)
        {
            sheet.Fill(row, 5, 13, Look.Row);
            return;
        }

        if (form.CostPerPole is { } cost) sheet.Fixed(row, 5, decimal.Round(cost, 2), Look.Money);
        (double Value, string Format)[] figures =
        [
            (d.Parts.ArrayWp, "#,##0"), (d.Parts.BatteryRatedWh, "#,##0"), (d.Energy.AutonomyNights, "0.0"), (d.Energy.Simulated.DarkNightsUpperBound, "0.00"), (d.Energy.BatteryLifeYears, "0.0"),
            (d.Poles, "0"), (d.Light.SpacingM, "0.0"), (form.CarriedKg ?? 0, "0.0"),
        ];
        for (var c = 0; c < figures.Length; c++) sheet.Figure(row, 6 + c, figures[c].Value, Look.Number(figures[c].Format));
    }

    private static string PartsOf(PoleParts parts) => string.Join(", ", parts.Pieces.Select(p => p.Count == 1 ? p.Part.Code : FormattableString.Invariant($"{p.Count} x {p.Part.Code}")));
}
