using TenderKit.Catalog.Families;
using TenderKit.Sizing.Structure;

namespace TenderKit.Tendering.Design;

/// <summary>A whole pole design: nothing left to choose, the energy balance not yet run.</summary>
public sealed record Candidate(LightOption Light, PowerOption Power, SupportOption Support, WiringOption Wiring);

/// <summary>A whole candidate with its energy balance.</summary>
/// <param name="Weather">What its module sees: with an integrated unit the heading that governs.</param>
public sealed record ProvenCandidate(Candidate Candidate, EnergyDesign Energy, SiteWeather Weather);

/// <summary>A proven candidate with its cost on the whole site.</summary>
/// <param name="FirstCost">Direct first cost.</param>
/// <param name="Value">What the tender chooses by: the first cost, or the present value.</param>
public sealed record ValuedCandidate(ProvenCandidate Proven, decimal FirstCost, decimal Value);

/// <summary>Civil works and erection of one pole at the catalogue's rates.</summary>
public sealed class CivilCosts
{
    private readonly decimal _excavatePerM3;
    private readonly decimal _concretePerM3;
    private readonly decimal _steelPerKg;
    private readonly decimal _backfillPerM3;

    public CivilCosts(PartsCatalog catalog, Costs costs, int maintenanceYears)
    {
        decimal Rate(ServiceUse use) => catalog.Services.FirstOrDefault(s => s.Use == use) is { } s ? costs.Of(s) : 0;
        _excavatePerM3 = Rate(ServiceUse.Excavate);
        _concretePerM3 = Rate(ServiceUse.Concrete);
        _steelPerKg = Rate(ServiceUse.Reinforcement);
        _backfillPerM3 = Rate(ServiceUse.Backfill);
        PerPole = Rate(ServiceUse.ErectPole) + Rate(ServiceUse.FitKit) + Rate(ServiceUse.FixingsPerPole) + Rate(ServiceUse.Commission) + (Rate(ServiceUse.MaintainYear) * maintenanceYears);
    }

    /// <summary>Cost that every pole bears alike.</summary>
    public decimal PerPole { get; }

    /// <summary>Excavation, concrete, reinforcement and backfill of one foundation.</summary>
    public decimal Of(FoundationSet set, BlockResult block) =>
        (_excavatePerM3 * (decimal)block.ExcavationM3) + (_concretePerM3 * (decimal)block.ConcreteM3) + (_steelPerKg * (decimal)set.ReinforcementKg) + (_backfillPerM3 * (decimal)block.BackfillM3);

    /// <summary>
    /// The least that can be: the set's own volume dug and filled, with its steel. A pole set into the ground digs just that; a block digs its working
    /// space besides and fills it back (both rates 0 or more, <c>structure.working_space</c> 0 or more), so <see cref="Of"/> is never less.
    /// </summary>
    public decimal LeastOf(FoundationSet set) =>
        ((_excavatePerM3 + _concretePerM3) * (decimal)(set.LengthM * set.WidthM * set.DepthM)) + (_steelPerKg * (decimal)set.ReinforcementKg);
}
