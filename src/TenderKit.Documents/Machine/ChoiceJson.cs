using System.Text.Json.Nodes;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;
using static TenderKit.Documents.Machine.BidJson;

namespace TenderKit.Documents.Machine;

/// <summary>What the designs were chosen by, why each kit was chosen, and cost against the number of kits; direct cost or present value in the tender's currency.</summary>
internal static class ChoiceJson
{
    public static JsonObject Of(TenderDesign design)
    {
        var basis = design.Tender.Choice;
        var root = new JsonObject { ["by"] = basis.ByPresentValue ? "present value" : "first cost" };
        if (basis.ByPresentValue)
        {
            root["years"] = basis.Years;
            root["discountFraction"] = basis.DiscountFraction;
        }

        if (!design.Choices.IsEmpty) root["kits"] = Array(design.Choices.Select(Kit));
        if (!design.KitCounts.IsEmpty) root["costByKits"] = Array(design.KitCounts.Select(Count));
        return root;
    }

    private static JsonObject Kit(ChoiceExplanation choice) => new()
    {
        ["kitId"] = choice.KitId,
        ["siteId"] = choice.SiteId,
        ["cost"] = Money(choice.ChosenCost),
        ["cheapestForSiteAlone"] = Money(choice.CheapestCost),
        ["runnerUpCost"] = choice.RunnerUpCost is { } cost ? Money(cost) : null,
        ["runnerUpDiffers"] = Array(choice.RunnerUpDiffers.Select(d => (JsonNode)d)),
        ["demands"] = Array(choice.Demands.Select(d => new JsonObject
        {
            ["demand"] = d.Demand, ["cost"] = d.Cost is { } c ? Money(c) : null, ["difference"] = d.Difference is { } over ? Money(over) : null,
        })),
    };

    private static JsonObject Count(KitCount count) => new()
    {
        ["kits"] = count.Kits,
        ["cost"] = count.Cost is { } cost ? Money(cost) : null,
        ["known"] = count.Cost is null ? "no selection serves every site" : count.Proof switch { KitCountProof.Least => "least", KitCountProof.AtLeast => "at least", _ => "best found" },
    };

    private static JsonValue Money(decimal value) => JsonValue.Create(decimal.Round(value, 2));
}
