using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary>The files a tender is made from, which no document may replace.</summary>
internal static class TenderInputs
{
    public static IEnumerable<string> Of(string tenderPath, Tender tender)
    {
        string?[] named =
        [
            tender.SitesFile, tender.RulesFile, tender.CatalogPath, tender.HorizonsFile, tender.SpecificationFile, tender.PriceForm?.File, tender.PriceForm?.LinesFile,
            tender.Quotes.AskedFile, .. tender.Climates.Named.Values.Select(c => c.File), tender.Climates.Default,
        ];
        return named.OfType<string>().Where(f => f.Length > 0).Select(f => Path.Combine(tender.Folder, f)).Prepend(tenderPath);
    }
}
