using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Build-up of every rate in formulas, from the catalogue's price to the rate as billed.</summary>
internal static class RateSheet
{
    public static void Write(Book book, BillOfQuantities bill)
    {
        var sheet = book.Add("Rates", landscape: true);
        sheet.Columns(14, 52, 6, 9, 13, 10, 13, 12, 12, 13, 12, 12, 12, 14);
        var row = TitleBlock.Write(sheet, book, "Rate build-up", "Prices of the catalogue in their own currency; all other figures in " + bill.Currency + " for one unit. Goods are priced at the quantity ordered, see the sheet Orders. Works and services carry no freight and no duty.");
        sheet.Header(row, "Part", "Description", "Unit", "Currency", ">Price", ">Bought a unit billed", ">Supply", ">Freight", ">Duty", ">Direct cost", ">Overhead", ">Finance", ">Profit", ">Rate");
        sheet.Repeat(row, row, 2);
        var header = row;
        foreach (var rate in bill.BuildUps) Line(sheet, ++row, rate);
        sheet.Table = new TableArea("Rates", header, row, sheet.Widths.Length);
    }

    private static void Line(Sheet sheet, int row, RateBuildUp rate)
    {
        sheet.Words(row, 1, rate.PartCode, Look.Row);
        sheet.Words(row, 2, rate.Description, Look.Row);
        sheet.Words(row, 3, rate.Unit, Look.RowCentre);
        sheet.Words(row, 4, rate.Currency, Look.RowCentre);
        sheet.Home(row, 5, rate.Price, Look.Money);
        if (rate.PerBilled is { } bought) sheet.Show(row, 6, bought, Look.Number("0.0000"));
        else sheet.Words(row, 6, "", Look.Row);
        var column = 7;
        foreach (var cell in new[] { rate.Supply, rate.Freight, rate.Duty, rate.Cost, rate.Overhead, rate.Finance, rate.Profit }) sheet.Home(row, column++, cell, Look.Money);
        sheet.Home(row, column, rate.Rate, Look.Money with { Bold = true });
    }
}
