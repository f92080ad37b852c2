using System.Collections.Immutable;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Kits;

/// <summary>One form of pole on a site: an integrated unit, or separate parts.</summary>
/// <param name="Design">The design, or null where nothing of this form passes.</param>
/// <param name="CostPerPole">Direct cost of one pole in the tender's currency; null without a design. Money: not for the technical envelope.</param>
/// <param name="Fails">Why nothing of this form passes, with its nearest miss; empty with a design.</param>
public sealed record PoleForm(bool IsIntegrated, SiteDesign? Design, decimal? CostPerPole, string Fails)
{
    /// <summary>Weight of all that the pole carries, kg; null without a design.</summary>
    public double? CarriedKg => Design?.Parts is { } p
        ? p.Integrated?.WeightKg ?? (p.Luminaire.WeightKg + (p.Module.WeightKg * p.ModuleCount) + (p.Bracket?.WeightKg ?? 0) + (p.Enclosure?.WeightKg ?? 0)
            + (p.Battery.WeightKg * p.BatteryCount) + (p.Controller.WeightKg * p.ControllerCount))
        : null;
}

/// <summary>A kit on its hardest site beside the cheapest of the other form there.</summary>
public sealed record FormPair(string KitId, string SiteId, PoleForm Chosen, PoleForm Other);

/// <summary>Sets an integrated unit beside separate parts: for each kit one more search, on its hardest site, among the parts of the other form.</summary>
public static class SideBySide
{
    /// <summary>One pair a kit; none where the catalogue has only one form.</summary>
    public static ImmutableArray<FormPair> Of(ImmutableArray<SiteDesign> sites, ImmutableArray<Kit> kits, DesignInputs inputs) =>
        inputs.Catalog.IntegratedUnits.IsEmpty || inputs.Catalog.Luminaires.IsEmpty
            ? []
            : [.. kits.AsParallel().AsOrdered().Select(kit => PairOf(kit, KitCurves.HardestSite(sites, kit), inputs))];

    private static FormPair PairOf(Kit kit, SiteDesign design, DesignInputs inputs)
    {
        var weather = inputs.Shared.WeatherOf(design.Site, design.Climate.Monthly, inputs);
        var isIntegrated = kit.Parts.Integrated is not null;
        var cost = KitTrial.Run(design.Site, weather, kit.Parts, inputs)?.FirstCost;
        return new FormPair(
            kit.Id, design.Site.Id, new PoleForm(isIntegrated, design, cost / design.Poles, ""), Cheapest(!isIntegrated, design, weather, inputs));
    }

    private static PoleForm Cheapest(bool isIntegrated, SiteDesign chosen, SiteWeather weather, DesignInputs all)
    {
        var inputs = all with { Catalog = isIntegrated ? all.Catalog with { Luminaires = [] } : all.Catalog with { IntegratedUnits = [] } };
        var dark = new Rejections();
        var lights = LightStage.Options(chosen.Site, weather.Climate, inputs, dark);
        if (lights.IsEmpty) return new PoleForm(isIntegrated, null, null, "no light: " + dark.NearestMiss);
        var search = new LeastCostSearch(chosen.Site, weather, inputs);
        if (search.Find(lights) is not { } proven) return new PoleForm(isIntegrated, null, null, search.WhyNothing);
        var costs = new Costs(inputs.Tender);
        var support = new SupportStage(chosen.Site, weather.Climate, inputs, costs, new Rejections());
        var cost = new CostBounds(weather.Climate, inputs, costs, support).Of(proven.Candidate);
        return new PoleForm(isIntegrated, SiteDesigner.DesignOf(chosen.Site, weather, proven, inputs, []), cost / proven.Candidate.Light.Poles, "");
    }
}
