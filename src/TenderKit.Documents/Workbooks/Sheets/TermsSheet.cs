using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>What the price stands on: currency, validity, rounding, what is provisional and what is left out.</summary>
internal static class TermsSheet
{
    public static void Write(Book book, TenderDesign design)
    {
        var sheet = book.Add("Terms");
        sheet.Columns(6, 100);
        var row = TitleBlock.Write(sheet, book, "Currency, validity and basis of the price");
        var number = 1;
        foreach (var text in Paragraphs(design))
        {
            sheet.Figure(row, 1, number++, Look.Whole with { Lines = Lines.None, Side = Side.Left });
            sheet.Words(row++, 2, text, Look.Paragraph);
        }
    }

    private static IEnumerable<string> Paragraphs(TenderDesign design)
    {
        var head = design.Tender.Head;
        yield return $"All rates and amounts are in {head.Currency}. No other currency is payable.";
        yield return FormattableString.Invariant($"The bid is valid for {head.ValidityDays} days from {head.IssueDate:yyyy-MM-dd}, that is until {head.IssueDate.AddDays(head.ValidityDays):yyyy-MM-dd}.");
        yield return "An amount is the quantity times the rate, rounded half up to the cent. Where they differ, the rate and the quantity prevail over the amount. A spare has the rate of the item it is for.";
        yield return "Rates hold everything needed for the item: supply, carriage, duties, work, plant, overheads, insurances and margin. Tax is added once, at the end.";
        yield return "Contingency is a percentage on the sum of parts 1 to 7 and is spent only on the written order of the employer.";
        if (design.Tender.Prices.SpareFractions.Any(s => s.Value > 0)) yield return "Spares are a percentage, stated on the sheet Quantities, of what a lot is supplied with of each part, rounded up to whole units: at least one of each.";
        if (design.Tender.Prices.MaintenanceYears > 0) yield return "Maintenance is priced for each pole and year, for the years stated on the sheet Quantities. Replacement of batteries at the end of their life is not part of it.";
        yield return "Foundation quantities come from a screening calculation. They are confirmed or changed once a licensed structural engineer has checked the foundation under the local code; the rates stand.";
        var provisional = design.Sites.Where(s => !s.Site.SoilStated).Select(s => s.Site.Id).ToArray();
        if (provisional.Length > 0) yield return "Quantities of civil works are provisional, the soil not having been stated, on " + Listed(provisional, "site") + "; they are items of their own in part 3 and are measured again once the ground is surveyed.";
        yield return ClimateWords.Of(design);
        if (!design.Unmet.IsEmpty) yield return "Not priced, no design having been found: " + Listed([.. design.Unmet.Select(u => u.SiteId)], "site") + ".";
    }

    private static string Listed(string[] ids, string noun) =>
        FormattableString.Invariant($"{ids.Length} {noun}{(ids.Length == 1 ? "" : "s")}: ") + string.Join(", ", ids.Take(40)) + (ids.Length > 40 ? " and others, see the site schedule" : "");
}
