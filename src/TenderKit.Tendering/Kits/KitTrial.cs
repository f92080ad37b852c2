using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Kits;

/// <summary>Tries one make-up on one site: the same checks and the same energy balance as a free design, with nothing left to choose but layout and level.</summary>
public static class KitTrial
{
    /// <summary>The candidate proven on the site with its direct cost, or null when the make-up does not suit the site.</summary>
    public static (ProvenCandidate Proven, decimal Cost)? Run(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs)
    {
        var only = inputs with { Catalog = Only(kit, inputs.Catalog) };
        var unused = new Rejections();
        var costs = new Costs(inputs.Tender);
        foreach (var light in LightStage.Options(site, weather.Climate, only, unused))
        {
            if (BankStage.Exactly(kit.Battery, kit.BatteriesInSeries, kit.BatteryStrings, kit.Controller, light, site, weather.Climate, only, unused) is not { } bank) continue;
            if (ArrayStage.Exactly(bank, kit.Module, kit.ModuleCount, kit.ModulesInSeries, weather.Climate, only, unused) is not { } power) continue;
            var stage = new SupportStage(site, weather.Climate, only, costs, unused);
            if (stage.Find(light, power) is not { } support) continue;
            if (new WiringStage(only, costs, unused).Given(light, power, kit) is not { } wiring) continue;
            var candidate = new Candidate(light, power, support, wiring);
            if (new LeastCostSearch(site, weather, only).Prove(candidate) is { } proven) return (proven, new CostBounds(weather.Climate, only, costs, stage).Of(candidate));
        }

        return null;
    }

    private static PartsCatalog Only(PoleParts kit, PartsCatalog all) => all with
    {
        Luminaires = [kit.Luminaire],
        Modules = [kit.Module],
        Batteries = [kit.Battery],
        Controllers = [kit.Controller],
        Poles = [kit.Pole],
        Brackets = kit.Bracket is { } bracket ? [bracket] : [],
        Enclosures = kit.Enclosure is { } enclosure ? [enclosure] : [],
        Foundations = [kit.Foundation],
    };
}
