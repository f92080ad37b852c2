using System.Text.Json.Nodes;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Trace;

namespace TenderKit.Documents.Machine;

/// <summary>The trace of headline figures for machines.</summary>
internal static class TraceJson
{
    public static JsonArray Of(TenderDesign design, Kit kit) => BidJson.Array(KitTrace.Of(design, kit).Select(p => new JsonObject
    {
        ["siteId"] = p.Site.Site.Id,
        ["id"] = p.Figure.Id,
        ["name"] = p.Figure.Name,
        ["value"] = BidJson.Number(p.Figure.Value),
        ["unit"] = p.Figure.Unit,
        ["formula"] = p.Figure.FormulaId,
        ["inputs"] = BidJson.Array(p.Figure.Inputs.Select(InputOf)),
    }));

    public static JsonArray Formulas() => BidJson.Array(TraceFormulas.All.Select(f => new JsonObject
    {
        ["id"] = f.Id,
        ["text"] = f.Text,
        ["arithmetic"] = f.IsArithmetic,
        ["source"] = f.Source,
    }));

    private static JsonObject InputOf(TraceInput input) => new()
    {
        ["symbol"] = input.Symbol,
        ["name"] = input.Name,
        ["values"] = BidJson.Numbers(input.Values),
        ["unit"] = input.Unit,
        ["origin"] = input.Origin.ToString().ToLowerInvariant(),
        ["key"] = input.Key.Length == 0 ? null : input.Key,
    };
}
