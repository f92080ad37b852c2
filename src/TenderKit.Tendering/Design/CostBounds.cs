using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Costs of a design at each step of the search, on the whole site. What is not chosen yet counts with the cheapest it could cost,
/// so a cost never falls from one step to the next and the search may trust it as a lower bound. Each bound is a sum of terms, none of which exceeds
/// the same term of any whole candidate below it: parts already chosen at their price; parts not yet chosen at the cheapest of those that could do
/// by a check whose required figure is at its mildest (least own use, no loss in the controller, smallest modules and box in the wind).
/// </summary>
public sealed class CostBounds(SiteClimate climate, DesignInputs inputs, Costs costs, SupportStage support)
{
    private const double ModuleStepM2 = 0.25;
    private const double BoxStepM2 = 0.05;

    private readonly CivilCosts _civil = new(inputs.Catalog, costs, inputs.Tender.Prices.MaintenanceYears);
    private readonly Dictionary<(double LuminaireM2, double LuminaireKg, string? Unit, PoleShape Shape, double? ModuleM2, double? BoxM2), decimal> _poleUnder = [];
    private readonly decimal _leastProtection = LeastProtection(inputs.Catalog, costs);
    private readonly decimal _leastController = Least(inputs.Catalog.Controllers, costs);
    private readonly decimal _leastCable = Least(inputs.Catalog.Cables, costs);
    private readonly double _bestChargeFraction = inputs.Catalog.Batteries.Select(b => b.ChargeEfficiency).DefaultIfEmpty(1).Max();
    private readonly double _bestDischargeFraction = inputs.Catalog.Batteries.Select(b => b.DischargeEfficiency).DefaultIfEmpty(1).Max();
    private readonly decimal _leastModule = Least(inputs.Catalog.Modules, costs);
    private readonly decimal _leastBracket = Least(inputs.Catalog.Brackets, costs);
    private readonly decimal _leastEnclosure = Least(inputs.Catalog.Enclosures, costs);
    private ImmutableArray<(double UsableWh, decimal Cost)>? _banks;
    private ImmutableArray<(double RatedWp, decimal Cost)>? _modules;
    private readonly double _leastOwnUseW = inputs.Catalog.Controllers.Select(c => c.OwnUseW).DefaultIfEmpty(0).Min();

    public decimal Of(LightOption light) => light.Integrated is { } unit
        ? light.Poles * (costs.Of(unit) + Rest(light))
        : light.Poles * (costs.Of(light.Luminaire) + LeastBank(light) + _leastController + LeastArray(light) + _leastBracket + _leastEnclosure + LeastWiring(light) + Rest(light));

    /// <param name="strings">Fewest strings in the bank.</param>
    /// <param name="controller">Cost of the cheapest controller that suits; null for the cheapest there is.</param>
    /// <param name="enclosure">Cost of the cheapest box that takes the batteries; null for the cheapest there is.</param>
    public decimal Of(LightOption light, Battery battery, int inSeries, int strings, decimal? controller = null, decimal? enclosure = null) => light.Poles * (
        costs.Of(light.Luminaire) + (costs.Of(battery) * inSeries * strings) + (controller ?? _leastController)
        + LeastArray(BankStage.Ideal(battery, inSeries, strings, _leastOwnUseW, light, climate, inputs)) + _leastBracket + (enclosure ?? _leastEnclosure) + LeastWiring(light) + Rest(light));

    /// <param name="enclosure">The enclosure of the bank.</param>
    public decimal Of(LightOption light, BankOption bank, Enclosure enclosure) =>
        light.Poles * (costs.Of(light.Luminaire) + CostOf(bank) + costs.Of(enclosure) + LeastArray(bank) + _leastBracket + LeastWiring(light) + Rest(light, null, enclosure.WindAreaM2));

    /// <param name="count">Fewest modules.</param>
    public decimal Of(LightOption light, BankOption bank, Enclosure enclosure, Module module, int count) =>
        light.Poles * (costs.Of(light.Luminaire) + CostOf(bank) + costs.Of(enclosure) + (costs.Of(module) * count) + _leastBracket + LeastWiring(light) + Rest(light, AreaM2(module, count), enclosure.WindAreaM2));

    /// <summary>All is known but the pole and its foundation.</summary>
    public decimal Of(LightOption light, PowerOption power, Enclosure enclosure, Bracket bracket, WiringOption wiring) => light.Poles * (
        costs.Of(light.Luminaire) + CostOf(power.Bank) + (costs.Of(power.Module) * power.ModuleCount) + costs.Of(enclosure) + costs.Of(bracket) + CostOf(wiring)
        + Rest(light, AreaM2(power.Module, power.ModuleCount), enclosure.WindAreaM2));

    /// <summary>The cost itself: nothing is left to choose.</summary>
    public decimal Of(Candidate candidate) => candidate.Light.Poles * (
        (candidate.Light.Integrated is { } unit
            ? costs.Of(unit)
            : costs.Of(candidate.Light.Luminaire) + CostOf(candidate.Power.Bank) + (costs.Of(candidate.Power.Module) * candidate.Power.ModuleCount))
        + CostOf(candidate.Support)
        + CostOf(candidate.Wiring)
        + _civil.PerPole);

    private decimal CostOf(BankOption bank) => (costs.Of(bank.Battery) * bank.InSeries * bank.Strings) + (costs.Of(bank.Controller) * bank.ControllerCount);

    private decimal CostOf(WiringOption wiring) =>
        wiring.Circuits.Sum(c => (costs.Of(c.Cable) * (decimal)c.LengthM) + (c.Fuse is null ? 0 : costs.Of(c.Fuse))) + wiring.Other.Sum(costs.Of);

    private decimal CostOf(SupportOption support) =>
        costs.Of(support.Pole) + (support.Bracket is { } bracket ? costs.Of(bracket) : 0) + (support.Enclosure is { } enclosure ? costs.Of(enclosure) : 0) + costs.Of(support.Foundation) + _civil.Of(support.Foundation, support.Structure.Foundation);

    /// <summary>Pole, foundation and works: with the wind on what is known of modules and box.</summary>
    private decimal Rest(LightOption light, double? moduleM2 = null, double? boxM2 = null)
    {
        (moduleM2, boxM2) = (Floored(moduleM2, ModuleStepM2), Floored(boxM2, BoxStepM2));
        var key = (light.Luminaire.WindAreaM2, light.Luminaire.WeightKg, light.Integrated?.Code, light.Shape, moduleM2, boxM2);
        if (!_poleUnder.TryGetValue(key, out var least))
            _poleUnder[key] = least = support.LeastCost(light, moduleM2, boxM2);
        return least + _civil.PerPole;
    }

    /// <summary>Areas are taken down to whole steps: less wind is still a bound, and near areas share one.</summary>
    private static double? Floored(double? areaM2, double stepM2) => areaM2 is { } a ? Math.Floor(a / stepM2) * stepM2 : null;

    private static double AreaM2(Module module, int count) => module.LengthM * module.WidthM * count;

    /// <summary>
    /// Cables at the cheapest by the metre, and the protection every pole has. The three circuits have these lengths whatever is chosen, summed as the
    /// circuits themselves are so that rounding cannot lift the bound; each costs no less by the metre.
    /// </summary>
    private decimal LeastWiring(LightOption light)
    {
        var rules = inputs.Rules;
        var up = light.Shape.HeightM - rules["wiring.box_height"] + rules["wiring.slack"];
        return (_leastCable * ((decimal)up + (decimal)rules["wiring.slack"] + (decimal)(up + light.Shape.ArmReachM))) + _leastProtection;
    }

    /// <summary>
    /// Two fuses, since the circuits of battery and lamp are refused without, a holder for each where the catalogue lists holders, an electrode where it has one,
    /// and an arrester where one of them stands the highest voltage two modules in series can give: then every pole gets some arrester.
    /// </summary>
    private static decimal LeastProtection(PartsCatalog catalog, Costs costs)
    {
        ImmutableArray<ProtectionDevice> Of(ProtectionKind kind) => [.. catalog.Protection.Where(p => p.Kind == kind)];
        var highestV = 2 * catalog.Modules.Select(m => m.OpenCircuitV).DefaultIfEmpty(0).Max();
        var arresters = Of(ProtectionKind.SurgeArrester);
        return (2 * (Least(Of(ProtectionKind.Fuse), costs) + Least(Of(ProtectionKind.FuseHolder), costs))) + Least(Of(ProtectionKind.EarthElectrode), costs) + (arresters.Any(a => a.RatedV >= highestV) ? Least(arresters, costs) : 0);
    }

    /// <summary>The cheapest bank that gives the autonomy with a controller of the least own use; zero when none does.</summary>
    private decimal LeastBank(LightOption light)
    {
        var neededWh = BankStage.NightlyWh(BankStage.LampInputW(light, inputs.Rules), _leastOwnUseW, climate);
        foreach (var (usableWh, cost) in _banks ??= BanksByCost())
        {
            if (usableWh / neededWh >= inputs.Tender.Reliability.AutonomyNights) return cost;
        }

        return 0;
    }

    /// <summary>Usable energy and cost of every size of bank that no cheaper one holds more than, cheapest first.</summary>
    private ImmutableArray<(double UsableWh, decimal Cost)> BanksByCost()
    {
        var sizes = inputs.Shared.BanksOf(climate, inputs);
        var mostWh = double.NegativeInfinity;
        var kept = ImmutableArray.CreateBuilder<(double, decimal)>();
        foreach (var (usableWh, cost) in inputs.Catalog.Batteries
            .SelectMany(b => BankStage.Sizes.Select(n => (sizes.Of(b, n.InSeries, n.Strings).UsableWh, Cost: costs.Of(b) * n.InSeries * n.Strings)))
            .OrderBy(b => b.Cost).ThenByDescending(b => b.UsableWh))
        {
            if (usableWh <= mostWh) continue;
            mostWh = usableWh;
            kept.Add((usableWh, cost));
        }

        return kept.ToImmutable();
    }

    /// <summary>
    /// The cheapest modules that satisfy the hand method with a controller that loses nothing. What the hand method asks for never falls with the controller's
    /// own use: the design month is that of the most demand over sun, and more own use can only move it to a month of less sun.
    /// </summary>
    private decimal LeastArray(BankOption bank)
    {
        var neededWp = HandMethod.Size(ArrayStage.HandInputsFor(bank, 1, climate, inputs)).ArrayWp;
        decimal? least = null;
        foreach (var (ratedWp, cost) in _modules ??= ModulesByCost())
        {
            if (least is null || cost < least) least = Min(least, cost * (decimal)Math.Max(1, Math.Ceiling(Math.Min(neededWp / ratedWp, 1000) - 1e-9)));
        }

        return least ?? 0;
    }

    /// <summary>Modules that no cheaper one has more power than, cheapest first.</summary>
    private ImmutableArray<(double RatedWp, decimal Cost)> ModulesByCost()
    {
        var mostWp = double.NegativeInfinity;
        var kept = ImmutableArray.CreateBuilder<(double, decimal)>();
        foreach (var module in inputs.Catalog.Modules.OrderBy(costs.Of).ThenByDescending(m => m.RatedWp))
        {
            if (module.RatedWp <= mostWp) continue;
            mostWp = module.RatedWp;
            kept.Add((module.RatedWp, costs.Of(module)));
        }

        return kept.ToImmutable();
    }

    /// <summary>The cheapest modules for a light whatever its battery: with the efficiencies of the best.</summary>
    private decimal LeastArray(LightOption light)
    {
        if (inputs.Catalog.Batteries.IsEmpty) return _leastModule;
        var ideal = BankStage.Ideal(inputs.Catalog.Batteries[0], 1, 1, _leastOwnUseW, light, climate, inputs);
        return LeastArray(ideal with { Model = ideal.Model with { ChargeEfficiency = _bestChargeFraction, DischargeEfficiency = _bestDischargeFraction } });
    }

    private static decimal Min(decimal? one, decimal other) => one < other ? one.Value : other;

    private static decimal Least(IEnumerable<Part> parts, Costs costs) => parts.Select(costs.Of).DefaultIfEmpty(0).Min();
}
