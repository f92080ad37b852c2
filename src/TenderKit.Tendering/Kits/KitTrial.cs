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
        var search = new LeastCostSearch(site, weather, inputs);
        foreach (var (candidate, cost) in Candidates(site, weather, kit, inputs))
        {
            if (search.Prove(candidate) is { } proven) return (proven, cost);
        }

        return null;
    }

    /// <summary>What the make-up would cost on the site if the energy balance let it stand: never more than what it costs when it does; null when a check refuses it.</summary>
    public static decimal? LeastCost(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs) =>
        Candidates(site, weather, kit, inputs).Select(c => (decimal?)c.Cost).Min();

    private static IEnumerable<(Candidate Candidate, decimal Cost)> Candidates(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs)
    {
        var only = inputs with { Catalog = Only(kit, inputs.Catalog) };
        var unused = new Rejections();
        var costs = new Costs(inputs.Tender);
        foreach (var light in LightStage.Options(site, weather.Climate, only, unused))
        {
            if (light.Integrated is { } unit)
            {
                if (new LeastCostSearch(site, weather, only).WholeOf(light, unit) is { } whole)
                    yield return (whole, new CostBounds(weather.Climate, only, costs, new SupportStage(site, weather.Climate, only, costs, unused)).Of(whole));
                continue;
            }

            if (BankStage.Exactly(kit.Battery, kit.BatteriesInSeries, kit.BatteryStrings, kit.Controller, light, site, weather.Climate, only, unused, kit.ControllerCount) is not { } bank) continue;
            if (ArrayStage.Exactly(bank, kit.Module, kit.ModuleCount, kit.ModulesInSeries, weather.Climate, only, unused) is not { } power) continue;
            var stage = new SupportStage(site, weather.Climate, only, costs, unused);
            if (stage.Find(light, power) is not { } support) continue;
            if (new WiringStage(only, costs, unused).Given(light, power, kit) is not { } wiring) continue;
            var candidate = new Candidate(light, power, support, wiring);
            yield return (candidate, new CostBounds(weather.Climate, only, costs, stage).Of(candidate));
        }
    }

    private static PartsCatalog Only(PoleParts kit, PartsCatalog all) => all with
    {
        Luminaires = kit.Integrated is null ? [kit.Luminaire] : [],
        IntegratedUnits = kit.Integrated is { } unit ? [unit] : [],
        Modules = [kit.Module],
        Batteries = [kit.Battery],
        Controllers = [kit.Controller],
        Poles = [kit.Pole],
        Brackets = kit.Bracket is { } bracket ? [bracket] : [],
        Enclosures = kit.Enclosure is { } enclosure ? [enclosure] : [],
        Foundations = [kit.Foundation],
    };
}
