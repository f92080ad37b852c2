using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>One site with a random small catalogue and two synthetic years, designed by the search and by trying everything, in no clever order and with costs added up anew.</summary>
internal sealed class SmallTender
{
    private static readonly DesignInputs _base = StarterTender.Inputs with
    {
        Rules = new RuleSet([.. StarterTender.Inputs.Rules.Rules.Select(r => r.Id == "climate.years" ? r with { Value = 2 } : r)]),
        Shared = new SharedWork(),
    };

    public static readonly Site Site = _base.Sites.First(s => s.Id == "S02") with { LengthM = 120 };

    public static readonly SiteWeather Weather = ClimateStage.Run(Site, ClimateStage.ClimateOf(Site, _base), _base);

    private readonly Costs _costs;
    private readonly LeastCostSearch _search;

    public SmallTender(int seed, ChoiceBasis basis)
    {
        Inputs = _base with { Catalog = Small(new Random(seed)), Tender = _base.Tender with { Choice = basis, Reliability = new ReliabilityTarget(20, 2) } };
        _costs = new Costs(Inputs.Tender);
        _search = new LeastCostSearch(Site, Weather, Inputs);
    }

    public DesignInputs Inputs { get; }

    /// <summary>Parts of the sample catalogue, each twice at prices of their own where the design may have two of a kind.</summary>
    private static PartsCatalog Small(Random random)
    {
        var all = StarterTender.Inputs.Catalog;
        ImmutableArray<T> Some<T>(IEnumerable<T> parts, int count)
            where T : Part => [.. parts.OrderBy(_ => random.Next()).Take(count).Select(Priced)];
        T Priced<T>(T part)
            where T : Part => part with { UnitPrice = Math.Round(part.UnitPrice * (decimal)(0.4 + (1.2 * random.NextDouble())), 2) };
        var poles = Some(all.Poles.Where(p => p.HeightM is >= 5 and <= 6), 2);
        ImmutableArray<FoundationSet> sets = [.. poles.SelectMany(pole => Some(all.Foundations.Where(f => FoundationChecks.Suits(f, pole)), 1)).DistinctBy(f => f.Code)];
        return new PartsCatalog(
            Some(all.Luminaires, 2), Some(all.Modules, 2), Some(all.Batteries.OrderBy(b => b.RatedWh).Skip(1), 2), Some(all.Controllers, 2), poles, sets,
            Some(all.Cables, 6), [.. all.Protection.Select(Priced)], Some(all.Enclosures, 3), Some(all.Brackets, 3), all.Services)
        {
            IntegratedUnits = [StarterTender.Unit with { UnitPrice = random.Next(150, 900) }],
        };
    }

    public (decimal Value, bool IsIntegrated)? Searched()
    {
        var inputs = Inputs with { Catalog = Dominance.Undominated(Inputs.Catalog, _costs) };
        var lights = LightStage.Options(Site, Weather.Climate, inputs, new Rejections());
        return new LeastCostSearch(Site, Weather, inputs).InOrder(lights).FirstOrDefault() is { } first ? (Math.Round(first.Value, 6), first.Proven.Candidate.Light.Integrated is not null) : null;
    }

    /// <summary>The least of all that pass; a balance is left out only where the first cost alone is above the best found.</summary>
    public (decimal Value, bool IsIntegrated)? Enumerated()
    {
        var later = new LaterCosts(Weather.Climate, Inputs, _costs);
        (decimal Value, bool IsIntegrated)? best = null;
        foreach (var (candidate, first) in Wholes().Select(c => (Candidate: c, First: FirstCostOf(c))).OrderBy(p => p.First))
        {
            if (first > best?.Value) break;
            if (Prove(candidate) is not { } proven) continue;
            var value = Math.Round(first + later.Of(candidate, proven.Energy.BatteryLifeYears), 6);
            if (best is null || value < best.Value.Value) best = (value, candidate.Light.Integrated is not null);
        }

        return best;
    }

    public ProvenCandidate? Prove(Candidate candidate) => _search.Prove(candidate);

    /// <summary>Every candidate that passes all checks but those of the energy balance, on every pole with every foundation.</summary>
    public IEnumerable<Candidate> Wholes()
    {
        var rejections = new Rejections();
        var wiring = new WiringStage(Inputs, _costs, rejections);
        SupportStage[] supports = [.. from pole in Inputs.Catalog.Poles
            from set in Inputs.Catalog.Foundations
            select new SupportStage(Site, Weather.Climate, Inputs with { Catalog = Inputs.Catalog with { Poles = [pole], Foundations = [set] } }, _costs, rejections)];
        foreach (var light in LightStage.Options(Site, Weather.Climate, Inputs, rejections))
        {
            if (light.Integrated is { } unit)
            {
                if (_search.WholeOf(light, unit) is { } complete) yield return complete;
                continue;
            }

            foreach (var power in Powers(light, rejections))
            {
                if (wiring.Find(light, power) is not { } wired) continue;
                foreach (var carried in supports.Select(s => s.Find(light, power)).OfType<SupportOption>()) yield return new Candidate(light, power, carried, wired);
            }
        }
    }

    private IEnumerable<PowerOption> Powers(LightOption light, Rejections rejections) =>
        from battery in Inputs.Catalog.Batteries
        from size in BankStage.Sizes
        from controller in Inputs.Catalog.Controllers
        let bank = BankStage.Exactly(battery, size.InSeries, size.Strings, controller, light, Site, Weather.Climate, Inputs, rejections)
        where bank is not null
        from module in Inputs.Catalog.Modules
        from inSeries in controller.Kind == ControlKind.Tracking || controller.SystemVoltagesV.Max() > 12 ? new[] { 1, 2 } : [1]
        from strings in Enumerable.Range(1, 4 / inSeries)
        let power = ArrayStage.Exactly(bank, module, strings * inSeries, inSeries, Weather.Climate, Inputs, rejections)
        where power is not null
        select power;

    /// <summary>Part by part, then the works.</summary>
    public decimal FirstCostOf(Candidate candidate)
    {
        var (power, support) = (candidate.Power, candidate.Support);
        var bank = power.Bank;
        var electric = candidate.Light.Integrated is { } unit
            ? _costs.Of(unit)
            : _costs.Of(candidate.Light.Luminaire) + (power.ModuleCount * _costs.Of(power.Module)) + (bank.InSeries * bank.Strings * _costs.Of(bank.Battery)) + _costs.Of(bank.Controller)
                + _costs.Of(support.Bracket!) + _costs.Of(support.Enclosure!);
        var wires = candidate.Wiring.Circuits.Sum(c => ((decimal)c.LengthM * _costs.Of(c.Cable)) + (c.Fuse is { } fuse ? _costs.Of(fuse) : 0)) + candidate.Wiring.Other.Sum(_costs.Of);
        return candidate.Light.Poles * (electric + wires + _costs.Of(support.Pole) + _costs.Of(support.Foundation) + Works(support));
    }

    private decimal Works(SupportOption support)
    {
        decimal Rate(ServiceUse use) => Inputs.Catalog.Services.Where(s => s.Use == use).Select(_costs.Of).FirstOrDefault();
        var block = support.Structure.Foundation;
        return (Rate(ServiceUse.Excavate) * (decimal)block.ExcavationM3) + (Rate(ServiceUse.Concrete) * (decimal)block.ConcreteM3) + (Rate(ServiceUse.Backfill) * (decimal)block.BackfillM3)
            + (Rate(ServiceUse.Reinforcement) * (decimal)support.Foundation.ReinforcementKg)
            + Rate(ServiceUse.ErectPole) + Rate(ServiceUse.FitKit) + Rate(ServiceUse.FixingsPerPole) + Rate(ServiceUse.Commission)
            + (Rate(ServiceUse.MaintainYear) * Inputs.Tender.Prices.MaintenanceYears);
    }
}
