using System.Text.Json.Nodes;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Compare;

namespace TenderKit.Documents.Quotes;

/// <summary>A checked offer and a comparison for machines.</summary>
public static class QuoteJson
{
    public static JsonObject Check(CheckedOffer offer, IEnumerable<SiteRun> runs) => new()
    {
        ["offer"] = offer.Offer.File,
        ["sha256"] = offer.Offer.Sha256,
        ["lots"] = new JsonArray([.. offer.Lots.Select(l => JsonValue.Create(l))]),
        ["currency"] = offer.Offer.Terms.Currency,
        ["incoterm"] = offer.Offer.Terms.Incoterm,
        ["validityDays"] = offer.Offer.Terms.Validity?.Days,
        ["deliveryDays"] = offer.Offer.Terms.Delivery?.Days,
        ["lines"] = new JsonArray([.. offer.Lines.Select(Line)]),
        ["findings"] = new JsonArray([.. offer.Findings.Select(Finding)]),
        ["statedTotal"] = offer.Price.Stated,
        ["correctedTotal"] = offer.Price.Corrected,
        ["overall"] = offer.Overall,
        ["questions"] = new JsonArray([.. offer.Questions.Select(q => JsonValue.Create(q))]),
        ["sites"] = new JsonArray([.. runs.Select(Run)]),
    };

    public static JsonObject Compare(ComparedOffers comparison) => new()
    {
        ["currency"] = comparison.Currency,
        ["exchangeDate"] = comparison.ExchangeDate,
        ["lots"] = new JsonArray([.. comparison.Lots.Select(l => new JsonObject
        {
            ["lot"] = l.Lot,
            ["ranking"] = new JsonArray([.. l.Offers.Select(o => new JsonObject { ["offer"] = o.File, ["rank"] = o.Rank, ["evaluated"] = o.Evaluated, ["overYears"] = o.OverYears, ["priceScore"] = o.Score })]),
        })]),
        ["combination"] = comparison.Best is not { } best ? null : new JsonObject
        {
            ["awards"] = new JsonArray([.. best.Awards.Select(a => new JsonObject { ["lot"] = a.Lot, ["offer"] = a.File, ["evaluated"] = a.Evaluated })]),
            ["sum"] = best.Sum,
            ["conditionalDiscounts"] = best.Discount,
            ["total"] = best.Total,
        },
        ["offers"] = new JsonArray([.. comparison.Offers.Select(o => new JsonObject
        {
            ["offer"] = o.Checked.Offer.File,
            ["rank"] = o.Rank,
            ["responsive"] = o.Responsive,
            ["overall"] = o.Checked.Overall,
            ["lots"] = new JsonArray([.. o.Checked.Lots.Select(l => JsonValue.Create(l))]),
            ["evaluated"] = o.Evaluated,
            ["overYears"] = o.OverYears,
            ["perMegalumenHour"] = o.PerMegalumenHour,
            ["priceScore"] = o.Score,
            ["steps"] = new JsonArray([.. o.Steps.Select(s => new JsonObject { ["step"] = s.Step, ["amount"] = s.Amount, ["how"] = s.How })]),
            ["byLot"] = new JsonArray([.. o.Lots.Select(l => new JsonObject
            {
                ["lot"] = l.Lot,
                ["rowsSharedByPoles"] = l.IsShared,
                ["net"] = comparison.Values[l.Cells.Net],
                ["rate"] = comparison.Values[l.Cells.Rate],
                ["converted"] = comparison.Values[l.Cells.Converted],
                ["added"] = comparison.Values[l.Cells.Added],
                ["preference"] = comparison.Values[l.Cells.Preference],
                ["evaluated"] = comparison.Values[l.Cells.Evaluated],
                ["overYears"] = comparison.Values[l.Cells.OverYears],
                ["perMegalumenHour"] = l.Cells.PerMegalumenHour is { } per ? comparison.Values[per] : null,
            })]),
            ["sites"] = new JsonArray([.. o.Runs.Select(Run)]),
            ["screens"] = new JsonArray([.. o.Screens.Select(Finding)]),
        })]),
    };

    private static JsonObject Line(JudgedLine line)
    {
        var read = new JsonObject();
        foreach (var rating in line.Line.Ratings) read[rating.Name] = double.TryParse(rating.Text, System.Globalization.CultureInfo.InvariantCulture, out var number) ? number : rating.Text;
        return new JsonObject
        {
            ["row"] = line.Line.Place.Row,
            ["sheet"] = line.Line.Place.Sheet,
            ["family"] = line.Line.Family,
            ["kits"] = new JsonArray([.. line.KitIds.Select(k => JsonValue.Create(k))]),
            ["read"] = read,
            ["quantity"] = line.Line.Quantity,
            ["rate"] = line.Line.Rate,
            ["amount"] = line.Line.Amount,
            ["correctedAmount"] = line.CorrectedAmount,
            ["verdict"] = line.Verdict,
            ["findings"] = new JsonArray([.. line.Findings.Select(Finding)]),
        };
    }

    private static JsonObject Finding(QuoteFinding finding) => new()
    {
        ["code"] = finding.Code,
        ["severity"] = finding.Severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "note" },
        ["where"] = Where(finding.Where),
        ["row"] = finding.Where.Row,
        ["message"] = finding.Message,
        ["source"] = finding.Source,
    };

    private static string Where(Place place) => place.Row is 0 ? "whole offer" : (place with { File = null }).ToString();

    private static JsonObject Run(SiteRun run) => new()
    {
        ["site"] = run.SiteId,
        ["kit"] = run.KitId,
        ["lampW"] = Math.Round(run.LampW, 2),
        ["arrayWp"] = run.ArrayWp,
        ["batteryWh"] = run.BatteryWh,
        ["darkNightsPerYear"] = Math.Round(run.DarkNightsPerYear, 2),
        ["averageLx"] = Math.Round(run.AverageLx, 2),
        ["askedLx"] = Math.Round(run.AskedLx, 2),
        ["weakest"] = run.Weakest,
    };
}
