using System.Collections.Immutable;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Kits;

/// <summary>Arrays and batteries of equal reliability for a kit at its hardest site, with what was chosen.</summary>
/// <param name="SiteId">Site that leaves the least margin of energy.</param>
/// <param name="Points">Smallest battery for each array, by growing array; the kit's own array is among them where any battery serves it.</param>
/// <param name="Chosen">The kit's array and battery.</param>
/// <param name="AutonomyBatteryWh">Rated energy of a battery of the kit's kind that just gives the nights of autonomy asked for, Wh.</param>
/// <param name="HandArrayWp">Array the hand method asks for, Wp.</param>
/// <param name="DarkNightsPerYear">Dark nights a year allowed, upper 90 % bound of the mean.</param>
public sealed record KitCurve(
    string KitId, string SiteId, ImmutableArray<CurvePoint> Points, CurvePoint Chosen, double AutonomyBatteryWh, double HandArrayWp, double DarkNightsPerYear)
{
    /// <summary>Smallest battery that keeps the target with the kit's array, Wh; null when none was found.</summary>
    public double? SmallestBatteryWh => Points.FirstOrDefault(p => p.ArrayWp == Chosen.ArrayWp)?.BatteryWh;
}

/// <summary>Draws up the curve of each kit.</summary>
public static class KitCurves
{
    private static readonly string[] EnergyChecks = ["energy.", "battery.autonomy", "array.ratio", "array.recovery"];

    /// <summary>One curve a kit, in the order of the kits.</summary>
    public static ImmutableArray<KitCurve> Of(ImmutableArray<SiteDesign> sites, ImmutableArray<Kit> kits, DesignInputs inputs) =>
        [.. kits.AsParallel().AsOrdered().Select(kit => CurveOf(kit, HardestSite(sites, kit), inputs))];

    /// <summary>The site with the least margin among the checks of energy; else the kit's first.</summary>
    public static SiteDesign HardestSite(ImmutableArray<SiteDesign> sites, Kit kit)
    {
        var hardest = kit.Checks.Zip(kit.CheckSites)
            .Where(pair => EnergyChecks.Any(prefix => pair.First.Id.StartsWith(prefix, StringComparison.Ordinal)))
            .OrderBy(pair => pair.First.MarginFraction ?? double.PositiveInfinity)
            .Select(pair => pair.Second)
            .FirstOrDefault();
        return sites.FirstOrDefault(s => s.Site.Id == hardest) ?? sites.First(s => s.KitId == kit.Id);
    }

    private static KitCurve CurveOf(Kit kit, SiteDesign site, DesignInputs inputs)
    {
        var weather = ClimateStage.Run(site.Site, site.Climate.Monthly, inputs);
        var reliability = inputs.Tender.Reliability;
        var (system, energy) = (site.Energy.System, site.Energy);
        var points = CoarseCurve.Of(weather.Plane, weather.Climate.Lamp, system, new DarkNightTarget(reliability.DarkNightsPerYear, ByUpperBound: true));
        return new KitCurve(
            kit.Id, site.Site.Id, points, new CurvePoint(system.Array.ArrayWp, system.Battery.RatedWh),
            system.Battery.RatedWh * reliability.AutonomyNights / energy.AutonomyNights, energy.Hand.ArrayWp, reliability.DarkNightsPerYear);
    }
}
