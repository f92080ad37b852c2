using System.Text.Json.Nodes;
using TenderKit.Tendering.Kits;

namespace TenderKit.Documents.Machine;

/// <summary>Integrated units beside separate parts, for machines. Holds money: internal.</summary>
internal static class FormsJson
{
    public static JsonObject Of(FormPair pair) => new()
    {
        ["kitId"] = pair.KitId,
        ["siteId"] = pair.SiteId,
        ["chosen"] = FormOf(pair.Chosen),
        ["other"] = FormOf(pair.Other),
    };

    private static JsonObject FormOf(PoleForm form)
    {
        var json = new JsonObject { ["form"] = form.IsIntegrated ? "integrated" : "separate", ["costPerPole"] = form.CostPerPole is { } cost ? decimal.Round(cost, 2) : null };
        if (form.Design is not { } d)
        {
            json["fails"] = form.Fails;
            return json;
        }

        json["parts"] = new JsonArray([.. d.Parts.Pieces.Select(p => JsonValue.Create(p.Part.Code))]);
        json["arrayWp"] = BidJson.Number(d.Parts.ArrayWp);
        json["batteryRatedWh"] = BidJson.Number(d.Parts.BatteryRatedWh);
        json["autonomyNights"] = BidJson.Number(d.Energy.AutonomyNights);
        json["darkNightsUpperBound"] = BidJson.Number(d.Energy.Simulated.DarkNightsUpperBound);
        json["batteryLifeYears"] = BidJson.Number(d.Energy.BatteryLifeYears);
        json["poles"] = d.Poles;
        json["spacingM"] = BidJson.Number(d.Light.SpacingM);
        json["carriedKg"] = BidJson.Number(form.CarriedKg ?? 0);
        json["headings"] = d.Energy.HeadingCount;
        return json;
    }
}
