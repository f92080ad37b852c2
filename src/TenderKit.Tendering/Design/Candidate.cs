using TenderKit.Catalog.Families;

namespace TenderKit.Tendering.Design;

/// <summary>A whole pole design on its way: light and power first, support and wiring once it is worth looking at.</summary>
public sealed record Candidate(LightOption Light, PowerOption Power, SupportOption? Support, WiringOption? Wiring)
{
    public bool IsWhole => Support is not null && Wiring is not null;

    /// <summary>Direct cost on the whole site, a lower bound while the candidate is not whole.</summary>
    public decimal SiteCost(Costs costs, CivilCosts civil) => Light.Poles * (PowerCost(costs) + SupportCost(costs, civil) + WiringCost(costs) + civil.PerPole);

    private decimal PowerCost(Costs costs) =>
        costs.Of(Light.Luminaire)
        + (costs.Of(Power.Module) * Power.ModuleCount)
        + (costs.Of(Power.Bank.Battery) * Power.Bank.InSeries * Power.Bank.Strings)
        + costs.Of(Power.Bank.Controller);

    private decimal SupportCost(Costs costs, CivilCosts civil) => Support is null
        ? 0
        : costs.Of(Support.Pole) + costs.Of(Support.Bracket) + costs.Of(Support.Enclosure) + costs.Of(Support.Foundation) + civil.Of(Support);

    private decimal WiringCost(Costs costs) => Wiring is null
        ? 0
        : Wiring.Circuits.Sum(c => (costs.Of(c.Cable) * (decimal)c.LengthM) + (c.Fuse is null ? 0 : costs.Of(c.Fuse))) + Wiring.Other.Sum(costs.Of);
}

/// <summary>Civil works and erection of one pole at the catalogue's rates.</summary>
public sealed class CivilCosts
{
    private readonly decimal _excavatePerM3;
    private readonly decimal _concretePerM3;
    private readonly decimal _steelPerKg;

    public CivilCosts(PartsCatalog catalog, Costs costs, int maintenanceYears)
    {
        decimal Rate(ServiceUse use) => catalog.Services.FirstOrDefault(s => s.Use == use) is { } s ? costs.Of(s) : 0;
        _excavatePerM3 = Rate(ServiceUse.Excavate);
        _concretePerM3 = Rate(ServiceUse.Concrete);
        _steelPerKg = Rate(ServiceUse.Reinforcement);
        PerPole = Rate(ServiceUse.ErectPole) + Rate(ServiceUse.FitKit) + Rate(ServiceUse.FixingsPerPole) + Rate(ServiceUse.Commission) + (Rate(ServiceUse.MaintainYear) * maintenanceYears);
    }

    /// <summary>Cost that every pole bears alike.</summary>
    public decimal PerPole { get; }

    /// <summary>Excavation, concrete and reinforcement of one foundation.</summary>
    public decimal Of(SupportOption support) =>
        (_excavatePerM3 * (decimal)support.Structure.Foundation.ExcavationM3)
        + (_concretePerM3 * (decimal)support.Structure.Foundation.ConcreteM3)
        + (_steelPerKg * (decimal)support.Foundation.ReinforcementKg);
}

/// <summary>A whole candidate with its simulation.</summary>
public sealed record ProvenCandidate(Candidate Candidate, EnergyDesign Energy);
