using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>The offered parts at one site.</summary>
/// <param name="DarkNightsPerYear">Upper 90 % bound of the mean, hourly energy balance.</param>
/// <param name="AverageLx">Average illuminance by ratio of flux: our computed average times offered over our flux, a screening.</param>
/// <param name="Weakest">The part with the least margin, in words.</param>
public sealed record SiteRun(string SiteId, string KitId, double LampW, double ArrayWp, double BatteryWh, double DarkNightsPerYear, double AverageLx, double AskedLx, string Weakest)
{
    /// <summary>Dark nights of the kit as the tender states it, or null when our own design is the measure.</summary>
    public double? DarkNightsAsAsked { get; init; }
}

/// <summary>
/// Runs what an offer would put on a pole through the light and the energy of every site. An offer has no photometric file: its light is
/// our computed light times the ratio of the fluxes, at the same places, so a screening only. What an offer does not state of its parts is
/// taken as in our own design or as usual for the chemistry.
/// </summary>
public static class WholeRun
{
    public static ImmutableArray<SiteRun> Of(TenderDesign design, DesignInputs inputs, ImmutableArray<OfferedKit> kits, StatedAsk? stated = null) =>
        [.. design.Sites.AsParallel().AsOrdered().Select(s => (Site: s, Kit: kits.FirstOrDefault(k => IsAt(k, s, stated)))).Where(p => p.Kit is { FluxLm: > 0, InputPowerW: > 0, ArrayWp: > 0, BatteryWh: > 0 }).Select(p => Run(p.Site, p.Kit!, inputs, stated?.Kits.First(k => k.Id == p.Kit!.Asked.Id)))];

    private static bool IsAt(OfferedKit kit, SiteDesign site, StatedAsk? stated) =>
        stated is null ? kit.Asked.PolesBySite.ContainsKey(site.Site.Id) : kit.Asked.Id == stated.Kits.FirstOrDefault(k => k.SiteIds.Contains(site.Site.Id))?.Id;

    /// <summary>Sites that stay dark more often, or darker, than asked; one finding for each kit and kind, at its hardest site.</summary>
    public static IEnumerable<QuoteFinding> Findings(ImmutableArray<SiteRun> runs, ImmutableArray<OfferedKit> kits, Asked asked, double darkNightsAsked)
    {
        foreach (var group in runs.GroupBy(r => r.KitId))
        {
            var kit = kits.First(k => k.Asked.Id == group.Key);
            var dark = group.MaxBy(r => r.DarkNightsPerYear - (r.DarkNightsAsAsked ?? 0))!;
            if (dark.DarkNightsPerYear > Math.Max(darkNightsAsked, dark.DarkNightsAsAsked ?? 0) * (1 + asked.Settings.ToleranceFraction))
                yield return new QuoteFinding("TK820", Severity.Error, (kit.Module ?? kit.Luminaire)!.Place, $"kit {group.Key} as offered stays dark up to {Say.Number(dark.DarkNightsPerYear)} nights a year at site {dark.SiteId} (90 % sure at most); asked: {Say.Number(darkNightsAsked)}; weakest: {dark.Weakest}", "tender: reliability; hourly energy balance", $"With the parts of kit {group.Key} the lamps at site {dark.SiteId} would stay dark about {Say.Number(dark.DarkNightsPerYear)} nights a year; {Say.Number(darkNightsAsked)} are asked. What do you change?") { KitIds = [group.Key] };
            var dim = group.MinBy(r => r.AverageLx / r.AskedLx)!;
            if (dim.AverageLx < dim.AskedLx * (1 - asked.Settings.ToleranceFraction))
                yield return new QuoteFinding("TK819", Severity.Error, kit.Luminaire!.Place, $"kit {group.Key} as offered gives about {Say.Number(dim.AverageLx)} lx at site {dim.SiteId}, by the ratio of the fluxes; asked: {Say.Number(dim.AskedLx)} lx", "our light calculation times the ratio of fluxes, a screening", $"Please send the photometric file of the luminaire for kit {group.Key}: by its flux it gives about {Say.Number(dim.AverageLx)} lx at site {dim.SiteId}, {Say.Number(dim.AskedLx)} lx are asked.") { KitIds = [group.Key] };
        }
    }

    private static SiteRun Run(SiteDesign site, OfferedKit kit, DesignInputs inputs, StatedKit? stated)
    {
        var weather = ClimateStage.Run(site.Site, ClimateStage.ClimateOf(site.Site, inputs), inputs);
        var own = site.Energy.System;
        var ownFlux = site.Parts.Luminaire.FluxLm;
        if (stated is not null) return RunStated(site, kit, inputs, stated, weather);
        if (kit.Asked.LightBySite.TryGetValue(site.Site.Id, out var reached)) return RunShaped(site, kit, inputs, weather, reached);
        var level = Math.Min(1, site.Light.LevelFraction * ownFlux / kit.FluxLm!.Value);
        var system = SystemOf(own, kit, kit.InputPowerW!.Value * level * own.LampInputW / (site.Parts.Luminaire.InputPowerW * site.Light.LevelFraction), inputs.Rules);
        var result = EnergyBalance.Run(weather.Plane, weather.Climate.Lamp, system);
        var asked = site.Site.Target.AverageLx;
        // level 1 of the offered lamp against the level our own lamp burns at
        var lux = site.Light.Result.AverageLx * Math.Min(kit.FluxLm.Value * level / (ownFlux * site.Light.LevelFraction), 1);
        return new SiteRun(site.Site.Id, kit.Asked.Id, system.LampInputW, kit.ArrayWp!.Value, kit.BatteryWh!.Value, result.DarkNightsUpperBound, lux, Math.Min(asked > 0 ? asked : site.Light.Result.AverageLx, site.Light.Result.AverageLx), Weakest(kit, inputs.Tender.Reliability.AutonomyNights));
    }

    /// <summary>The offered lamp at the level its site needs with the poles offered.</summary>
    private static SiteRun RunShaped(SiteDesign site, OfferedKit kit, DesignInputs inputs, SiteWeather weather, double reachedFraction)
    {
        var level = Math.Min(1, kit.Asked.FluxBySite.GetValueOrDefault(site.Site.Id, kit.Asked.FluxLm) / kit.FluxLm!.Value);
        var system = SystemOf(site.Energy.System, kit, kit.InputPowerW!.Value * level, inputs.Rules);
        var dark = EnergyBalance.Run(weather.Plane, weather.Climate.Lamp, system).DarkNightsUpperBound;
        var lux = site.Site.Target.AverageLx is var target and > 0 ? target : site.Light.Result.AverageLx;
        return new SiteRun(site.Site.Id, kit.Asked.Id, system.LampInputW, kit.ArrayWp!.Value, kit.BatteryWh!.Value, dark, lux * reachedFraction, lux, Weakest(kit, inputs.Tender.Reliability.AutonomyNights));
    }

    /// <summary>The offered lamp at the level that gives the stated flux; light is the flux against the flux stated, the kit as stated runs beside it.</summary>
    private static SiteRun RunStated(SiteDesign site, OfferedKit kit, DesignInputs inputs, StatedKit stated, SiteWeather weather)
    {
        var own = site.Energy.System;
        var level = Math.Min(1, stated.LevelFraction * stated.FluxLm / kit.FluxLm!.Value);
        var offered = EnergyBalance.Run(weather.Plane, weather.Climate.Lamp, SystemOf(own, kit, kit.InputPowerW!.Value * level, inputs.Rules));
        var dark = DarkNightsAsStated(own, BatteryOf(own.Battery, kit, inputs.Rules), stated, weather);
        var lux = site.Site.Target.AverageLx is var target and > 0 ? target : site.Light.Result.AverageLx;
        return new SiteRun(
            site.Site.Id, kit.Asked.Id, kit.InputPowerW.Value * level, kit.ArrayWp!.Value, kit.BatteryWh!.Value, offered.DarkNightsUpperBound, lux * Math.Min(1, kit.FluxLm.Value / stated.FluxLm), lux, Weakest(kit, inputs.Tender.Reliability.AutonomyNights))
        { DarkNightsAsAsked = dark };
    }

    /// <summary>Dark nights a year, upper bound, of a kit exactly as the tender states it.</summary>
    private static double DarkNightsAsStated(PowerSystem own, BatteryModel battery, StatedKit stated, SiteWeather weather)
    {
        var asAsked = own with
        {
            Array = own.Array with { ArrayWp = stated.ModuleWp, MaximumPowerCurrentA = own.Array.MaximumPowerCurrentA * stated.ModuleWp / own.Array.ArrayWp },
            Battery = battery with { RatedWh = stated.BatteryWh },
            Control = own.Control with { ChargeCurrentA = Math.Max(stated.ChargeA, stated.ModuleWp / stated.BankV) },
            LampInputW = stated.InputPowerW * stated.LevelFraction,
        };
        return EnergyBalance.Run(weather.Plane, weather.Climate.Lamp, asAsked).DarkNightsUpperBound;
    }

    /// <summary>Stated kits that do not do themselves what the tender asks: a fault of the tender, to be mended by an addendum, and no bidder's.</summary>
    public static ImmutableArray<Diagnostic> OfTender(TenderDesign design, DesignInputs inputs, StatedAsk stated)
    {
        var found = ImmutableArray.CreateBuilder<Diagnostic>();
        var asked = inputs.Tender.Reliability.DarkNightsPerYear;
        foreach (var kit in stated.Kits)
        {
            var runs = design.Sites.Where(s => kit.SiteIds.Contains(s.Site.Id)).AsParallel().AsOrdered().Select(s =>
            {
                var weather = ClimateStage.Run(s.Site, ClimateStage.ClimateOf(s.Site, inputs), inputs);
                return (s.Site.Id, Dark: DarkNightsAsStated(s.Energy.System, s.Energy.System.Battery, kit, weather));
            }).ToList();
            foreach (var id in kit.SiteIds.Where(id => !design.Sites.Any(s => s.Site.Id == id)))
                found.Add(new Diagnostic("TK837", Severity.Warning, $"quotes.asked: kit {kit.Id} names site {id}, which the tender does not have or could not design; correct the table", new Place(Site: id)));
            if (runs.Count == 0) continue;
            var worst = runs.MaxBy(r => r.Dark);
            if (worst.Dark > asked)
                found.Add(new Diagnostic("TK837", Severity.Warning, $"quotes.asked: kit {kit.Id} as the tender states it ({Say.Number(kit.ModuleWp)} Wp, {Say.Number(kit.BatteryWh)} Wh) would itself stay dark up to {Say.Number(worst.Dark)} nights a year at site {worst.Id}; asked: {Say.Number(asked)}; raise the rating by an addendum, or state that the kit prevails", new Place(Site: worst.Id)));
            foreach (var site in SiteNeedsOf(kit, design, inputs))
                found.Add(new Diagnostic("TK837", Severity.Warning, $"quotes.asked: kit {kit.Id} states {site.Stated} poles of {Say.Number(kit.FluxLm * kit.LevelFraction)} lm for site {site.Id}; our light calculation needs {site.Needed} poles with that lamp; check the number of poles", new Place(Site: site.Id)));
        }

        return found.ToImmutable();
    }

    private static IEnumerable<(string Id, int Stated, int Needed)> SiteNeedsOf(StatedKit kit, TenderDesign design, DesignInputs inputs) =>
        kit.PolesBySite.IsEmpty ? [] : Own.SiteNeed.Of(design with { Sites = [.. design.Sites.Where(s => kit.PolesBySite.ContainsKey(s.Site.Id))] }, inputs)
            .Select(n => (n.Id, Stated: kit.PolesBySite[n.Id], With: n.With(kit.FluxLm, kit.HeightM, inputs.Tender.Quotes.ToleranceFraction)))
            .Where(n => n.With.ReachedFraction < 1 || n.With.Poles > n.Stated).Select(n => (n.Id, n.Stated, n.With.Poles));

    private static PowerSystem SystemOf(PowerSystem own, OfferedKit kit, double lampW, RuleSet rules)
    {
        var scale = kit.ArrayWp!.Value / own.Array.ArrayWp;
        var array = own.Array with { ArrayWp = kit.ArrayWp.Value, MaximumPowerCurrentA = own.Array.MaximumPowerCurrentA * scale };
        var control = own.Control with { ChargeCurrentA = kit.Controller?.Value("rated_charge_a") ?? own.Control.ChargeCurrentA };
        return own with { Array = array, Battery = BatteryOf(own.Battery, kit, rules), Control = control, LampInputW = lampW };
    }

    /// <summary>Same chemistry: our own figures at the offered energy; another: the usual figures of that chemistry.</summary>
    private static BatteryModel BatteryOf(BatteryModel own, OfferedKit kit, RuleSet rules)
    {
        if (!Enum.TryParse<BatteryChemistry>(kit.Chemistry, out var chemistry) || chemistry == own.Chemistry) return own with { RatedWh = kit.BatteryWh!.Value };
        var usual = TypicalParts.Battery(chemistry);
        return own with
        {
            Chemistry = chemistry,
            RatedWh = kit.BatteryWh!.Value,
            RatedHours = usual.RatedHours,
            PeukertExponent = usual.PeukertExponent,
            UsableDepthFraction = rules["battery.depth." + chemistry],
            ChargeEfficiency = usual.ChargeEfficiency,
            DischargeEfficiency = usual.DischargeEfficiency,
            SelfDischargePerMonthFraction = usual.SelfDischargePerMonthFraction,
            LeastChargeC = usual.LeastChargeC,
        };
    }

    private static string Weakest(OfferedKit kit, double nightsAsked)
    {
        var duty = kit.Asked.Duty;
        var night = kit.NightlyWh ?? duty.NightlyWh;
        var links = new List<(string Name, double Ratio)>
        {
            ("luminaire flux", kit.FluxLm!.Value / kit.Asked.FluxLm),
            ("module", kit.ArrayWp!.Value / (duty.NeededArrayWp * night / duty.NightlyWh)),
            ("battery, new", kit.BatteryWh!.Value * duty.FreshFraction.GetValueOrDefault(kit.Chemistry, 0.9) / night / nightsAsked),
        };
        if (kit.Controller?.Value("rated_charge_a") is { } amps) links.Add(("controller", amps / kit.Asked.ChargeA));
        var least = links.MinBy(l => l.Ratio);
        return $"{least.Name}, {Say.Number(Math.Round(least.Ratio * 100))} % of what is needed";
    }
}
