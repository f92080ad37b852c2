using System.Collections.Immutable;

namespace TenderKit.Tendering.Design;

/// <summary>Why a kit was chosen, at the site that leaves it the least margin of energy. Costs are of the whole site, by what the tender chooses by.</summary>
/// <param name="ChosenCost">The kit on the site.</param>
/// <param name="CheapestCost">The cheapest design for this site alone, which differs from the kit where kits were brought down to a few.</param>
/// <param name="RunnerUpCost">The next cheapest design that differs from kit and cheapest in some part; null when none was found within the balances allowed.</param>
/// <param name="RunnerUpDiffers">What it has in place of the kit's parts.</param>
/// <param name="Demands">What each demand costs.</param>
public sealed record ChoiceExplanation(
    string KitId, string SiteId, decimal ChosenCost, decimal CheapestCost, decimal? RunnerUpCost, ImmutableArray<string> RunnerUpDiffers, ImmutableArray<DemandPrice> Demands);

/// <summary>What the site's cheapest design would cost if one demand were another.</summary>
/// <param name="Demand">The demand as changed, in words.</param>
/// <param name="Cost">Cost of the cheapest design then; null when nothing meets it, or none was found within the balances allowed.</param>
/// <param name="Difference">That over the cheapest design under the demands of the tender; negative where the demand costs money.</param>
public sealed record DemandPrice(string Demand, decimal? Cost, decimal? Difference);
