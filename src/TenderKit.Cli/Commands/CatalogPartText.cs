using System.Text.Json.Nodes;
using TenderKit.Catalog.Explain;
using TenderKit.Catalog.Families;

namespace TenderKit.Cli.Commands;

/// <summary>One part in words and for machines.</summary>
internal static class CatalogPartText
{
    private const int MostNamed = 8;

    /// <summary>Columns that have a place of their own above the table.</summary>
    private static readonly string[] SaidAbove =
        ["code", "description", "unit_price", "currency", "price_valid_until", "price_date", "price_breaks", "minimum_order", "order_multiple", "certificates", "data_sheet_file", "data_sheet_page"];

    public static void Show(Part part, PartsCatalog parts, PartUse? use, DateOnly? issued, Terminal terminal)
    {
        terminal.Result($"{part.Code}: {part.Description}");
        terminal.Result("family: " + PartFamily.Of(part).Name);
        terminal.Result("price: " + Price(part, issued));
        terminal.Result("certificates: " + (part.Certificates.Length == 0 ? "none claimed" : part.Certificates.Replace(";", ", ", StringComparison.Ordinal)));
        terminal.Result("data sheet: " + (part.DataSheetFile.Length == 0 ? "none named" : part.DataSheetFile + (part.DataSheetPage is { } page ? Text($", page {page}") : "")));
        foreach (var figure in PlausibleFigure.Of(part)) terminal.Result("plausible: " + Words(figure));
        foreach (var doubt in PartContradiction.Of(part)) terminal.Result("in doubt: " + doubt.Message);
        terminal.Table(["Property", "Value", "Unit"], PropertyWords.Of(part).Where(p => !SaidAbove.Contains(p.Column)).Select(p => (IReadOnlyList<string>)[p.Words, p.Value.Replace(";", ", ", StringComparison.Ordinal), p.Unit]));
        foreach (var (family, codes) in PartFit.Of(part, parts)) terminal.Result(Text($"fits {codes.Length} of {family}: {Some(codes)}"));
        if (use is not null) Show(use, terminal);
    }

    public static JsonObject Json(Part part, PartsCatalog parts, PartUse? use, DateOnly? issued) => new()
    {
        ["code"] = part.Code,
        ["family"] = PartFamily.Of(part).Name,
        ["properties"] = new JsonObject(PropertyWords.Of(part).Select(p => KeyValuePair.Create<string, JsonNode?>(p.Column, JsonValue.Create(p.Value)))),
        ["priceExpired"] = issued is { } day && part.PriceValidUntil is { } until ? until < day : null,
        ["plausibility"] = new JsonArray([.. PlausibleFigure.Of(part).Select(f => new JsonObject
        {
            ["what"] = f.What,
            ["value"] = Math.Round(f.Value, 1),
            ["unit"] = f.Unit,
            ["least"] = f.Least,
            ["greatest"] = f.Greatest,
            ["plausible"] = f.IsPlausible,
        })]),
        ["doubts"] = new JsonArray([.. PartContradiction.Of(part).Select(c => JsonValue.Create(c.Message))]),
        ["fits"] = new JsonObject(PartFit.Of(part, parts).Select(f => KeyValuePair.Create<string, JsonNode?>(f.Key, new JsonArray([.. f.Value.Select(c => JsonValue.Create(c))])))),
        ["kits"] = use is null ? null : new JsonArray([.. use.Kits.Select(k => new JsonObject { ["kit"] = k.KitId, ["perPole"] = k.PerPole, ["poles"] = k.Poles })]),
        ["billItems"] = use is null ? null : new JsonArray([.. use.Items.Select(i => new JsonObject { ["item"] = i.Item, ["lot"] = i.Lot, ["quantity"] = i.Quantity, ["unit"] = i.Unit })]),
    };

    private static void Show(PartUse use, Terminal terminal)
    {
        foreach (var (kit, perPole, poles) in use.Kits) terminal.Result(Text($"used in kit {kit}: {perPole:0.##} a pole on {Terminal.Count(poles, "pole")}, {perPole * poles:0.##} in all"));
        foreach (var (item, lot, quantity, unit) in use.Items) terminal.Result(Text($"bought by item {item}{(lot.Length == 0 ? "" : " of lot " + lot)}: {quantity:0.##} {unit}"));
        if (use.Kits.IsEmpty && use.Items.IsEmpty) terminal.Result("the tender does not use it");
    }

    private static string Price(Part part, DateOnly? issued)
    {
        var words = Text($"{part.UnitPrice:0.00##} {part.Currency}");
        foreach (var step in part.PriceBreaks) words += Text($", from {step.FromQuantity:0.##} {step.UnitPrice:0.00##}");
        if (part.PriceDate is { } given) words += Text($"; given {given:yyyy-MM-dd}");
        if (part.PriceValidUntil is { } until) words += Text($"; valid until {until:yyyy-MM-dd}") + (until < issued ? ", before the issue date: left out" : "");
        if (part.MinimumOrder != 1) words += Text($"; at least {part.MinimumOrder:0.##}");
        if (part.OrderMultiple != 1) words += Text($"; in packs of {part.OrderMultiple:0.##}");
        return words;
    }

    private static string Words(PlausibleFigure figure)
    {
        var limits = (figure.Least, figure.Greatest) switch
        {
            ({ } least, { } greatest) => Text($"{least:0} to {greatest:0}"),
            (null, { } greatest) => Text($"at most {greatest:0}"),
            ({ } least, null) => Text($"at least {least:0}"),
            _ => "no limit",
        };
        return Text($"{figure.What} {figure.Value:0} {figure.Unit}, to be expected {limits}: ") + (figure.IsPlausible ? "yes" : "no");
    }

    private static string Some(IReadOnlyCollection<string> codes) =>
        string.Join(", ", codes.Take(MostNamed)) + (codes.Count > MostNamed ? Text($" and {codes.Count - MostNamed} more") : "");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
