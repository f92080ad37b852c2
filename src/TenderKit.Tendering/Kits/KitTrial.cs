using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Kits;

/// <summary>Tries one make-up on one site: the same checks and the same energy balance as a free design, with nothing left to choose but layout and level.</summary>
public static class KitTrial
{
    /// <summary>The cheapest candidate proven on the site, by what the tender chooses by, or null when the make-up does not suit the site.</summary>
    public static ValuedCandidate? Run(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs)
    {
        var search = new LeastCostSearch(site, weather, inputs);
        var later = new LaterCosts(weather.Climate, inputs, new Costs(inputs.Tender));
        ValuedCandidate? best = null;
        foreach (var (candidate, first, least) in Candidates(site, weather, kit, inputs).OrderBy(c => c.Least))
        {
            if (best?.Value <= least) break;
            if (search.Prove(candidate) is not { } proven) continue;
            var value = first + later.Of(candidate, proven.Energy.BatteryLifeYears);
            if (best is null || value < best.Value) best = new ValuedCandidate(proven, first, value);
        }

        return best;
    }

    /// <summary>What the make-up would cost on the site if the energy balance let it stand: never more than what it costs when it does; null when a check refuses it.</summary>
    public static decimal? LeastCost(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs) =>
        Candidates(site, weather, kit, inputs).Select(c => (decimal?)c.Least).Min();

    /// <summary>Each with its first cost and the least it can come to by what the tender chooses by.</summary>
    private static IEnumerable<(Candidate Candidate, decimal FirstCost, decimal Least)> Candidates(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs)
    {
        var later = new LaterCosts(weather.Climate, inputs, new Costs(inputs.Tender));
        return Wholes(site, weather, kit, inputs).Select(w => (w.Candidate, w.Cost, w.Cost + later.LeastOf(w.Candidate)));
    }

    private static IEnumerable<(Candidate Candidate, decimal Cost)> Wholes(Site site, SiteWeather weather, PoleParts kit, DesignInputs inputs)
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
