using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>The site schedule. Its poles drive every quantity of the bill.</summary>
internal static class SiteSheet
{
    private static readonly double[] PlainWidths = [7, 11, 34, 8, 8, 9, 11, 11, 22, 10];
    private static readonly double[] NarrowWidths = [5, 9, 27, 7, 6, 7, 9, 8, 16, 8];
    private static readonly double[] ResultWidths = [9, 10, 10, 8, 8, 12.5, 10, 8, 10, 11, 13];

    public static void Write(Book book, TenderDesign design, BillOfQuantities bill, bool results)
    {
        var sheet = book.Add("Sites", landscape: results);
        sheet.Columns(results ? [.. NarrowWidths, .. ResultWidths] : PlainWidths);
        var row = TitleBlock.Write(sheet, book, "Site schedule", "Sites stand by lot and kit. A quantity of the bill follows from the poles entered here; sites whose soil was not stated are provisional until surveyed. " + (ProvisionalWords.Of(design) + " " + ClimateWords.Of(design)).TrimStart());
        sheet.Header(row, results ? [.. Plain(), .. Results()] : Plain());
        sheet.Repeat(row, row, 3);
        var designs = design.Sites.GroupBy(s => s.Site.Id).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var first = row + 1;
        foreach (var line in bill.Schedule)
        {
            Line(sheet, ++row, row - first + 1, line, designs[line.SiteId], bill.KitPoles.First(k => k.Lot == line.Lot && k.KitId == line.KitId).Poles);
            if (results) ResultCells(sheet, row, designs[line.SiteId]);
        }

        sheet.Table = new TableArea("Sites", first - 1, row, sheet.Widths.Length);
        row++;
        sheet.Words(row, 3, "Poles in all", Look.TotalText);
        sheet.Formula(row, 10, Cells.SumOf([.. bill.Schedule.Select(s => s.Poles)]), Look.TotalMoney with { Format = Look.WholeFormat });
        sheet.Fill(row, 1, sheet.Widths.Length, Look.TotalText);
        Unmet(sheet, design, row + 2);
    }

    private static string[] Plain() => [">No.", "Site", "Name", "Lot", "Kit", "Kind", ">Length, m", ">Width, m", "Soil", ">Poles"];

    private static string[] Results() =>
    [
        ">Height, m", ">Spacing, m", ">Average, lx", ">Least, lx", ">Level, %", ">Autonomy, nights", ">Dark nights a year", ">Array, Wp", ">Battery, Wh", ">Base moment, kNm", ">Overturning factor",
    ];

    private static void Line(Sheet sheet, int row, int number, ScheduleLine line, SiteDesign design, CellId kitPoles)
    {
        sheet.Figure(row, 1, number, Look.Whole);
        sheet.Words(row, 2, line.SiteId, Look.Row);
        sheet.Words(row, 3, line.Name, Look.Row);
        sheet.Words(row, 4, line.Lot, Look.Row);
        sheet.Words(row, 5, line.KitId, Look.Row.AsLink());
        sheet.Links[(row, 5)] = kitPoles;
        sheet.Words(row, 6, Words.Of(design.Site.Kind), Look.Row);
        sheet.Figure(row, 7, design.Site.LengthM, Look.Whole);
        sheet.Figure(row, 8, design.Site.WidthM, Look.Number("#,##0.0"));
        sheet.Words(row, 9, design.Site.SoilStated ? design.Site.Soil.Name : "not stated: provisional", Look.Row with { Side = Side.Left });
        sheet.Home(row, 10, line.Poles, Look.Whole);
    }

    private static void ResultCells(Sheet sheet, int row, SiteDesign design)
    {
        var light = design.Light;
        (double Value, string Format)[] figures =
        [
            (light.Layout?.MountingHeightM ?? light.Yard?.MountingHeightM ?? 0, "0.0"), (light.SpacingM, "0.0"), (light.Result.AverageLx, "0.00"), (light.Result.MinimumLx, "0.00"),
            (light.LevelFraction, "0%"), (design.Energy.AutonomyNights, "0.0"), (design.Energy.Simulated.DarkNightsUpperBound, "0.00"),
            (design.Parts.ArrayWp, Look.WholeFormat), (design.Parts.BatteryRatedWh, Look.WholeFormat),
            (design.Structure.Load.BaseMomentNm / 1000, "0.00"), (design.Structure.Foundation.OverturningSafetyFactor, "0.00"),
        ];
        for (var i = 0; i < figures.Length; i++) sheet.Figure(row, PlainWidths.Length + 1 + i, figures[i].Value, Look.Number(figures[i].Format));
    }

    private static void Unmet(Sheet sheet, TenderDesign design, int row)
    {
        if (design.Unmet.IsEmpty) return;
        sheet.Words(row++, 1, "Sites without a design, not in the bill", Look.Heading);
        foreach (var site in design.Unmet)
        {
            sheet.Words(row, 2, site.SiteId, Look.Row);
            sheet.Words(row, 3, site.Name, Look.Row);
            sheet.Paragraph(row++, 4, PlainWidths.Length, site.Reason, Look.Row);
        }
    }
}
