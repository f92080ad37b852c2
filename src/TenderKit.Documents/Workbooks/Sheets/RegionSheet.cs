using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>What a kit for a whole region costs at each place beside one designed for the place alone.</summary>
internal static class RegionSheet
{
    public static void Write(Book book, TenderDesign design)
    {
        if (design.Region is not { } region) return;
        var sheet = book.Add("Region");
        sheet.Columns(34, 14, 14, 18, 18, 18);
        var row = TitleBlock.Write(
            sheet, book, "Region",
            $"Direct cost of a pole in {design.Tender.Head.Currency}, before freight, duty and shares: designed for the place alone, and as the one kit that serves every place. {region.Governing.Name} governs; at {region.Mild.Name}, the mildest, the common kit costs {region.ExtraCost:N2} more than one of its own.");
        sheet.Header(row++, "Place", ">Own array Wp", ">Own battery Wh", ">Own design", ">Common kit", ">More");
        foreach (var place in region.Places)
        {
            sheet.Words(row, 1, place.Name, Look.Row);
            sheet.Figure(row, 2, Math.Round(place.ArrayWp), Look.Number("#,##0"));
            sheet.Figure(row, 3, Math.Round(place.BatteryWh), Look.Number("#,##0"));
            sheet.Figure(row, 4, (double)decimal.Round(place.OwnCost, 2), Look.Number("#,##0.00"));
            sheet.Figure(row, 5, (double)decimal.Round(place.CommonCost, 2), Look.Number("#,##0.00"));
            sheet.Figure(row, 6, (double)decimal.Round(place.CommonCost - place.OwnCost, 2), Look.Number("#,##0.00"));
            row++;
        }
    }
}
