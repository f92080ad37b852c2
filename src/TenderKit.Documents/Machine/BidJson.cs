using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Machine;

/// <summary>The whole bid for machines: every result, units in the key names. Lengths m, power W, energy Wh, money in the tender's currency.</summary>
public static class BidJson
{
    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>UTF-8 text of <c>bid.json</c>.</summary>
    /// <param name="design">The design.</param>
    /// <param name="bill">Its bill; null when it could not be priced.</param>
    public static byte[] Make(TenderDesign design, BillOfQuantities? bill)
    {
        var root = new JsonObject
        {
            ["format"] = "tenderkit bid, version 1",
            ["tender"] = Head(design),
            ["inputs"] = Array(design.Inputs.Select(i => new JsonObject { ["file"] = i.File, ["sha256"] = i.Sha256 })),
            ["catalogSha256"] = design.CatalogDigest,
            ["poleCount"] = design.PoleCount,
        };
        if (bill is not null) BillJson.AddTo(root, bill);
        root["choice"] = ChoiceJson.Of(design);
        root["kits"] = Array(design.Kits.Select(k => KitOf(design, k)));
        root["traceFormulas"] = TraceJson.Formulas();
        if (!design.SideBySide.IsEmpty) root["integratedBesideSeparate"] = Array(design.SideBySide.Select(FormsJson.Of));
        if (design.Region is { } region) root["region"] = TakenJson.Of(region);
        if (design.PartsStated is { } stated)
        {
            root["partsStated"] = TakenJson.Of(stated);
            root["clarifications"] = TakenJson.Questions(stated);
        }

        root["sites"] = Array(design.Sites.Select(SiteJson.Of));
        root["unmetSites"] = Array(design.Unmet.Select(u => new JsonObject { ["siteId"] = u.SiteId, ["name"] = u.Name, ["reason"] = u.Reason }));
        root["designRules"] = Array(design.Rules.Select(r => new JsonObject { ["id"] = r.Id, ["value"] = r.Value, ["low"] = r.Low, ["high"] = r.High, ["unit"] = r.Unit, ["source"] = r.Source, ["where"] = r.Where, ["changedByTender"] = r.Overridden }));
        root["diagnostics"] = Array(design.Diagnostics.Select(DiagnosticJson));
        return [.. JsonSerializer.SerializeToUtf8Bytes(root, Layout), (byte)'\n'];
    }

    /// <summary>A diagnostic with its place taken apart.</summary>
    public static JsonObject DiagnosticJson(Diagnostic d)
    {
        var json = new JsonObject { ["code"] = d.Code, ["severity"] = d.Severity switch { Severity.Note => "note", Severity.Warning => "warning", _ => "error" } };
        if (d.Place.File is { } file) json["file"] = file;
        if (d.Place.Sheet is { } sheet) json["sheet"] = sheet;
        if (d.Place.Row is { } row) json["row"] = row;
        if (d.Place.Column is { } column) json["column"] = column;
        if (d.Place.Cell is { } cell) json["cell"] = cell;
        if (d.Place.Site is { } site) json["site"] = site;
        json["message"] = d.Message;
        return json;
    }

    internal static JsonArray Array(IEnumerable<JsonNode> items) => new([.. items]);

    internal static JsonArray Numbers(ImmutableArray<double> values) => new([.. values.Select(v => Number(v))]);

    /// <summary>Six significant digits: more than any input holds, and the same on every processor.</summary>
    internal static JsonNode Number(double value)
    {
        if (value == 0 || !double.IsFinite(value)) return JsonValue.Create(double.IsFinite(value) ? 0.0 : 0.0)!;
        var scale = Math.Pow(10, 6 - (int)Math.Ceiling(Math.Log10(Math.Abs(value))));
        return JsonValue.Create(double.IsInfinity(scale) || scale == 0 ? value : (double)(decimal)(Math.Round(value * scale) / scale))!;
    }

    internal static JsonArray Checks(ImmutableArray<Check> checks) => Array(checks.Select(c => new JsonObject
    {
        ["id"] = c.Id,
        ["item"] = c.Item,
        ["property"] = c.Property,
        ["comparison"] = c.Comparison == Comparison.AtLeast ? "at least" : "at most",
        ["required"] = Number(c.Required),
        ["offered"] = Number(c.Offered),
        ["unit"] = c.Unit,
        ["requiredText"] = c.RequiredWords,
        ["offeredText"] = c.OfferedWords,
        ["clause"] = c.Clause.Length == 0 ? null : c.Clause,
        ["complies"] = c.Complies,
        ["basis"] = c.Basis,
    }));

    private static JsonObject Head(TenderDesign design)
    {
        var head = design.Tender.Head;
        return new JsonObject
        {
            ["reference"] = head.Reference,
            ["language"] = head.Language,
            ["title"] = head.Title,
            ["employer"] = head.Employer,
            ["bidder"] = head.Bidder,
            ["issueDate"] = head.IssueDate.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
            ["validityDays"] = head.ValidityDays,
            ["deliveryDays"] = head.DeliveryDays,
            ["autonomyNightsRequired"] = design.Tender.Reliability.AutonomyNights,
            ["darkNightsPerYearAllowed"] = design.Tender.Reliability.DarkNightsPerYear,
        };
    }

    private static JsonObject KitOf(TenderDesign design, Kit kit) => new()
    {
        ["id"] = kit.Id,
        ["poleCount"] = kit.Poles,
        ["siteIds"] = new JsonArray([.. kit.SiteIds.Select(id => JsonValue.Create(id))]),
        ["parts"] = PartsJson.Of(kit.Parts),
        ["checks"] = Checks(kit.Checks),
        ["checkSiteIds"] = new JsonArray([.. kit.CheckSites.Select(id => JsonValue.Create(id))]),
        ["trace"] = TraceJson.Of(design, kit),
    };
}
