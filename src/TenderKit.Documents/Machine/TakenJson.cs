using System.Text.Json.Nodes;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.PartsStated;
using TenderKit.Tendering.Regions;
using static TenderKit.Documents.Machine.BidJson;

namespace TenderKit.Documents.Machine;

/// <summary>What a tender states in place of sites or of a duty, for machines.</summary>
internal static class TakenJson
{
    public static JsonObject Of(RegionDesign region) => new()
    {
        ["name"] = region.Ask.Name,
        ["placesLookedAt"] = region.Sampled,
        ["governingSiteId"] = region.GoverningSiteId,
        ["governingPlace"] = region.Governing.Name,
        ["mildestPlace"] = region.Mild.Name,
        ["directCostPerPoleBeyondMildest"] = decimal.Round(region.ExtraCost, 2),
        ["unservedPlaces"] = new JsonArray([.. region.Unserved.Select(u => JsonValue.Create(u))]),
        ["places"] = Array(region.Places.Select(PlaceOf)),
        ["governs"] = Array(region.Governs.Select(g => new JsonObject
        {
            ["item"] = g.Item,
            ["property"] = g.Property,
            ["places"] = g.Places.IsEmpty ? "all alike" : string.Join("; ", g.Places),
            ["marginFraction"] = g.MarginFraction is { } margin ? Number(margin) : null,
        })),
    };

    private static JsonObject PlaceOf(RegionPlaceDesign place) => new()
    {
        ["siteId"] = place.SiteId,
        ["name"] = place.Name,
        ["latitudeDegrees"] = place.LatitudeDegrees,
        ["longitudeDegrees"] = place.LongitudeDegrees,
        ["grade"] = ClimateGrades.Words(place.Grade),
        ["cautiousFactor"] = Number(place.CautiousFactor),
        ["darkestMonth"] = place.DarkestMonth,
        ["sunOverLampKWhPerM2PerH"] = Number(place.SunOverLamp),
        ["ownArrayWp"] = Number(place.ArrayWp),
        ["ownBatteryWh"] = Number(place.BatteryWh),
        ["ownDirectCostPerPole"] = decimal.Round(place.OwnCost, 2),
        ["commonDirectCostPerPole"] = decimal.Round(place.CommonCost, 2),
        ["darkNightsPerYearUpperBound"] = Number(place.DarkNightsPerYear),
        ["autonomyNights"] = Number(place.AutonomyNights),
    };

    public static JsonArray Of(StatedPartsResult result) => Array(result.Studies.Select(s => new JsonObject
    {
        ["name"] = s.Parts.Name,
        ["clause"] = s.Parts.Clause,
        ["moduleWp"] = Number(s.Parts.ModuleWp),
        ["batteryV"] = Number(s.Parts.BatteryV),
        ["batteryAh"] = Number(s.Parts.BatteryAh),
        ["lampW"] = Number(s.Parts.LampW),
        ["batteryChemistry"] = s.Chemistry.ToString(),
        ["batteryChemistryStated"] = s.Parts.Chemistry is not null,
        ["controllerA"] = s.Parts.ControllerA is { } amps ? Number(amps) : null,
        ["neededControllerA"] = Number(s.ChargeA),
        ["autonomyNightsAsked"] = Number(s.AskedNights),
        ["darkNightsPerYearAllowed"] = Number(s.AskedDarkNights),
        ["sites"] = Array(s.Sites.Select(SiteOf)),
    }));

    private static JsonObject SiteOf(StatedPartsAtSite site) => new()
    {
        ["siteId"] = site.SiteId,
        ["luminaire"] = site.LampCode,
        ["fluxLm"] = Number(site.FluxLm),
        ["spacingM"] = Number(site.SpacingM),
        ["averageLx"] = Number(site.AverageLx),
        ["minimumLx"] = Number(site.MinimumLx),
        ["lightMet"] = site.IsLightMet,
        ["hoursAsked"] = Number(site.AskedHours),
        ["hoursLit"] = Number(site.LitHours),
        ["darkNightsPerYearUpperBound"] = Number(site.DarkNightsPerYear),
        ["autonomyNights"] = Number(site.AutonomyNights),
        ["neededArrayWp"] = site.NeededArrayWp is { } wp ? Number(wp) : null,
        ["neededBatteryWh"] = Number(site.NeededBatteryWh),
    };

    public static JsonArray Questions(StatedPartsResult result) => Array(result.Questions.Select(q => new JsonObject
    {
        ["number"] = q.Number,
        ["clause"] = q.Clause,
        ["kit"] = q.Kit,
        ["question"] = q.Question,
        ["found"] = q.Found,
        ["why"] = q.Why,
        ["proposal"] = q.Proposal,
    }));
}
