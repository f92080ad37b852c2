using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Direct costs of a design at each step of the search, on the whole site. What is not chosen yet counts with the cheapest it could cost,
/// so a cost never falls from one step to the next and the search may trust it as a lower bound.
/// </summary>
public sealed class CostBounds(SiteClimate climate, DesignInputs inputs, Costs costs)
{
    private readonly CivilCosts _civil = new(inputs.Catalog, costs, inputs.Tender.Prices.MaintenanceYears);
    private readonly Dictionary<PoleShape, decimal> _supportByShape = [];

    public decimal Of(LightOption light) => light.Poles * (costs.Of(light.Luminaire) + LeastBank(light) + Least(inputs.Catalog.Controllers) + Least(inputs.Catalog.Modules) + Rest(light));

    public decimal Of(LightOption light, BankOption bank) => light.Poles * (costs.Of(light.Luminaire) + CostOf(bank) + LeastArray(bank) + Rest(light));

    public decimal Of(LightOption light, PowerOption power) =>
        light.Poles * (costs.Of(light.Luminaire) + CostOf(power.Bank) + (costs.Of(power.Module) * power.ModuleCount) + Rest(light));

    /// <summary>The cost itself: nothing is left to choose.</summary>
    public decimal Of(Candidate candidate) => candidate.Light.Poles * (
        costs.Of(candidate.Light.Luminaire)
        + CostOf(candidate.Power.Bank)
        + (costs.Of(candidate.Power.Module) * candidate.Power.ModuleCount)
        + CostOf(candidate.Support)
        + candidate.Wiring.Circuits.Sum(c => (costs.Of(c.Cable) * (decimal)c.LengthM) + (c.Fuse is null ? 0 : costs.Of(c.Fuse)))
        + candidate.Wiring.Other.Sum(costs.Of)
        + _civil.PerPole);

    private decimal CostOf(BankOption bank) => (costs.Of(bank.Battery) * bank.InSeries * bank.Strings) + costs.Of(bank.Controller);

    private decimal CostOf(SupportOption support) =>
        costs.Of(support.Pole) + (support.Bracket is { } bracket ? costs.Of(bracket) : 0) + (support.Enclosure is { } enclosure ? costs.Of(enclosure) : 0) + costs.Of(support.Foundation) + _civil.Of(support.Foundation, support.Structure.Foundation);

    private decimal Rest(LightOption light) => LeastSupport(light.Shape) + _civil.PerPole;

    private decimal LeastSupport(PoleShape shape)
    {
        if (_supportByShape.TryGetValue(shape, out var known)) return known;
        var poles = inputs.Catalog.Poles.Where(shape.IsShapeOf);
        return _supportByShape[shape] = Least(poles) + Least(inputs.Catalog.Brackets) + Least(inputs.Catalog.Enclosures)
            + inputs.Catalog.Foundations.Select(f => costs.Of(f) + _civil.LeastOf(f)).DefaultIfEmpty(0).Min();
    }

    /// <summary>The cheapest bank that gives the autonomy with a controller of no own use; zero when none does.</summary>
    private decimal LeastBank(LightOption light) => inputs.Catalog.Batteries
        .SelectMany(b => BankStage.Sizes.Select(n => (Battery: b, n.InSeries, n.Strings)))
        .Where(n => BankStage.AutonomyNights(n.Battery, n.InSeries, n.Strings, 0, light, climate, inputs) >= inputs.Tender.Reliability.AutonomyNights)
        .Select(n => costs.Of(n.Battery) * n.InSeries * n.Strings)
        .DefaultIfEmpty(0)
        .Min();

    /// <summary>The cheapest modules that satisfy the hand method with a controller that loses nothing.</summary>
    private decimal LeastArray(BankOption bank)
    {
        var neededWp = HandMethod.Size(ArrayStage.HandInputsFor(bank, 1, climate, inputs)).ArrayWp;
        return inputs.Catalog.Modules.Select(m => costs.Of(m) * (decimal)Math.Max(1, Math.Ceiling(Math.Min(neededWp / m.RatedWp, 1000) - 1e-9))).DefaultIfEmpty(0).Min();
    }

    private decimal Least(IEnumerable<Part> parts) => parts.Select(costs.Of).DefaultIfEmpty(0).Min();
}
