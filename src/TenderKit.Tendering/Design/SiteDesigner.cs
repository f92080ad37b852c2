using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Designs one site from climate to foundation.</summary>
public static class SiteDesigner
{
    /// <summary>Below this no battery bridges the month, kWh/m2 a day on the module.</summary>
    private const double LeastPlaneKWhPerM2 = 0.3;

    /// <summary>The cheapest design that passes every check, its kit not yet named; without value when nothing fits, with the reason as an error.</summary>
    public static Outcome<SiteDesign> Run(Site site, DesignInputs inputs)
    {
        var monthly = ClimateStage.ClimateOf(SharedWork.AtPlace(site), inputs);
        var noticed = NoticedOf(site, monthly, inputs);
        if (noticed.Any(d => d.Severity == Severity.Error)) return Outcome.None<SiteDesign>(noticed);
        var weather = inputs.Shared.WeatherOf(site, monthly, inputs);
        if (NoSun(site, weather.Climate) is { } dark) return Outcome.None<SiteDesign>([.. noticed, dark]);
        var lightRejections = new Rejections();
        var lights = LightStage.Options(site, weather.Climate, inputs, lightRejections);
        if (inputs.Catalog.Luminaires.IsEmpty && inputs.Catalog.IntegratedUnits.IsEmpty)
            return Nothing(site, "TK230", "the catalogue has no luminaire that can be offered: its prices ended before the issue date, or their currency has no exchange rate", noticed);
        if (lights.IsEmpty) return Nothing(site, "TK230", "no luminaire of the catalogue meets the light asked for: " + lightRejections.NearestMiss, noticed);
        var search = new LeastCostSearch(site, weather, inputs);
        return search.Find(lights) is { } proven
            ? Outcome.Of(DesignOf(site, weather, proven, inputs, noticed), noticed)
            : Nothing(site, "TK330", search.WhyNothing, noticed);
    }

    /// <summary>The month in which a lit site has next to no sun: nothing that stands alone can work there.</summary>
    private static Diagnostic? NoSun(Site site, SiteClimate climate)
    {
        var month = Enumerable.Range(0, 12).Where(m => climate.Lamp.MonthlyFullHours[m] > 0).OrderBy(m => climate.PlaneKWhPerM2[m]).Select(m => (int?)m).FirstOrDefault();
        if (month is not { } m || climate.PlaneKWhPerM2[m] >= LeastPlaneKWhPerM2) return null;
        return Diagnostic.Error(
            "TK332",
            FormattableString.Invariant($"no design: in month {m + 1} the module would get {climate.PlaneKWhPerM2[m]:0.00} kWh/m2 a day, less than {LeastPlaneKWhPerM2:0.00}; light from the sun alone is not possible there in winter: ask for another supply or for a seasonal schedule"),
            new Place(Site: site.Id));
    }

    /// <summary>What is noticed about a site before it is designed.</summary>
    public static ImmutableArray<Diagnostic> NoticedOf(Site site, MonthlyClimate monthly, DesignInputs inputs) =>
        [.. ClimateStage.Examine(site, monthly, inputs), .. SiteNotes(site)];

    private static Outcome<SiteDesign> Nothing(Site site, string code, string reason, IEnumerable<Diagnostic> noticed) =>
        Outcome.None<SiteDesign>(noticed.Append(Diagnostic.Error(code, $"no design: {reason}; add such a part to the catalogue or change what is asked", new Place(Site: site.Id))));

    /// <summary>The record of a proven candidate.</summary>
    /// <param name="noticed">What was noticed about the site before.</param>
    public static SiteDesign DesignOf(Site site, SiteWeather weather, ProvenCandidate proven, DesignInputs inputs, ImmutableArray<Diagnostic> noticed)
    {
        var candidate = proven.Candidate;
        var checks = candidate.Light.Checks
            .Concat(PowerStages.ChecksOf(candidate, site, weather, inputs))
            .Concat(LeastCostSearch.EnergyChecks(proven.Energy, inputs))
            .Concat(candidate.Wiring.Checks)
            .Concat(candidate.Support.Checks)
            .ToImmutableArray();
        var design = new SiteDesign(
            site, proven.Weather.Climate, candidate.Light.Poles, "", PartsOf(candidate), candidate.Light.Light, candidate.Light.MaintenanceFactor,
            proven.Energy, candidate.Support.Structure, checks, [.. noticed, .. DesignNotes(site, weather, proven, inputs)]);
        return design with { Checks = [.. checks, .. Specification.ClauseChecks.Of(inputs.Clauses, design)] };
    }

    internal static PoleParts PartsOf(Candidate candidate) => new(
        candidate.Light.Luminaire,
        candidate.Power.Module,
        candidate.Power.ModuleCount,
        candidate.Power.ModulesInSeries,
        candidate.Power.Bank.Battery,
        candidate.Power.Bank.InSeries,
        candidate.Power.Bank.Strings,
        candidate.Power.Bank.Controller,
        candidate.Support.Pole,
        candidate.Support.Bracket,
        candidate.Support.Enclosure,
        candidate.Support.Foundation,
        candidate.Wiring.Circuits,
        candidate.Wiring.Other)
    {
        Integrated = candidate.Light.Integrated,
        ControllerCount = candidate.Power.Bank.ControllerCount,
    };

    private static IEnumerable<Diagnostic> SiteNotes(Site site)
    {
        if (SiteLighting.Problem(site) is { } problem) yield return problem;
        if (!site.SoilStated)
            yield return Diagnostic.Note("TK520", "no soil is stated, so the worst class is taken; survey the ground before the foundations are firm", new Place(Site: site.Id));
    }

    private static IEnumerable<Diagnostic> DesignNotes(Site site, SiteWeather weather, ProvenCandidate proven, DesignInputs inputs) =>
        EnergyFindings.Examine(proven.Weather.Plane, proven.Energy.System, new Place(Site: site.Id)).Concat(SulphationNote(site, proven, inputs));

    private static IEnumerable<Diagnostic> SulphationNote(Site site, ProvenCandidate proven, DesignInputs inputs)
    {
        var energy = proven.Energy.Simulated;
        var lead = proven.Candidate.Power.Bank.Battery.Chemistry != BatteryChemistry.LithiumIronPhosphate;
        if (lead && energy.LongestWithoutFullDays > inputs.Rules["battery.days_to_full"])
            yield return Diagnostic.Warning(
                "TK331",
                FormattableString.Invariant($"the lead-acid battery goes {energy.LongestWithoutFullDays} days without a full charge, more than {inputs.Rules["battery.days_to_full"]:0} days; it may sulphate: give it more array"),
                new Place(Site: site.Id));
    }
}
