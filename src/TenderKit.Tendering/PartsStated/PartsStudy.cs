using System.Collections.Immutable;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.PartsStated;

/// <summary>
/// What parts that a tender names give at its places: light with the luminaire of the catalogue nearest in power, and every night of the synthetic
/// years. What the tender does not state of them is taken as usual for their kind and asked for.
/// </summary>
public static class PartsStudy
{
    /// <summary>Sites studied, those with the dullest months; common practice, no source.</summary>
    private const int MostPlaces = 24;

    /// <summary>A luminaire within this of the power stated stands for it. Common practice, no source.</summary>
    private const double PowerTolerance = 0.35;

    /// <summary>From so many hours a night the whole night is meant.</summary>
    private const double WholeNightH = 11.5;

    private static readonly SizeSteps Steps = new(5, 10);

    /// <summary>Every set of stated parts of the tender, and what is to be asked; null where none is stated or no site is known.</summary>
    public static StatedPartsResult? Of(DesignInputs inputs)
    {
        var studies = inputs.Tender.PartsStated.Select(p => StudyOf(p, inputs)).OfType<StatedPartsStudy>().ToImmutableArray();
        return studies.IsEmpty ? null : new StatedPartsResult(studies, Clarifications.Of(studies));
    }

    private static StatedPartsStudy? StudyOf(StatedParts parts, DesignInputs inputs)
    {
        var sites = inputs.Sites.Where(s => parts.SiteIds.IsEmpty || parts.SiteIds.Contains(s.Id)).Select(s => ScheduleOf(s, parts))
            .DistinctBy(s => (SharedWork.PlaceKey(s), s.Kind, s.WidthM, s.Target.Name)).ToList();
        var climates = sites.ToDictionary(s => s.Id, s => ClimateStage.ClimateOf(SharedWork.AtPlace(s), inputs));
        var (rules, chemistry, control) = (inputs.Rules, parts.Chemistry ?? BatteryChemistry.GelLeadAcid, parts.Control ?? ControlKind.PulseWidth);
        var dull = sites.OrderBy(s => climates[s.Id].IrradiationKWhPerM2.Min()).ThenBy(s => s.Row).Take(MostPlaces).OrderBy(SharedWork.PlaceKey, StringComparer.Ordinal).ToList();
        if (dull.Count == 0) return null;
        var reliability = inputs.Tender.Reliability;
        var nights = parts.DutyNights ?? reliability.AutonomyNights;
        var system = SystemOf(parts, chemistry, control, rules);
        return new StatedPartsStudy(
            parts, [.. dull.Select(s => AtSite(s, parts, system, nights, inputs)).OrderBy(s => s.SiteId, StringComparer.Ordinal)], ChargeA(parts, control, rules), reliability.DarkNightsPerYear, nights, chemistry, control);
    }

    private static Site ScheduleOf(Site site, StatedParts parts)
    {
        if (parts.DutyHours is not { } hours) return site;
        if (hours >= WholeNightH) return site with { Schedule = LightingSchedule.DuskToDawn with { Name = "stated duty, the whole night" } };
        var name = FormattableString.Invariant($"stated duty, {hours:0.##} h from dusk");
        return site with { Schedule = new LightingSchedule(name, [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, hours, 1)], 0) };
    }

    private static StatedPartsAtSite AtSite(Site site, StatedParts parts, PowerSystem system, double nights, DesignInputs inputs)
    {
        var weather = inputs.Shared.WeatherOf(site, ClimateStage.ClimateOf(SharedWork.AtPlace(site), inputs), inputs);
        var (lamp, climate) = (weather.Climate.Lamp, weather.Climate.Monthly);
        var result = EnergyBalance.Run(weather.Plane, lamp, system);
        var autonomy = Autonomy(system, lamp, climate.MeanC.Min());
        var asked = lamp.MonthlyFullHours.Average();
        var neededWh = Math.Max(system.Battery.RatedWh, Math.Ceiling(system.Battery.RatedWh * nights / Math.Max(autonomy, 1e-6) / Steps.BatteryWh) * Steps.BatteryWh);
        var needed = EqualReliability.SmallestArray(weather.Plane, lamp, system, new DarkNightTarget(inputs.Tender.Reliability.DarkNightsPerYear, ByUpperBound: true), Steps, neededWh);
        var light = LightOf(site, parts, inputs);
        return new StatedPartsAtSite(
            site.Id, site.Name, light?.Code, light?.FluxLm ?? 0, light?.Solution.SpacingM ?? 0, light?.Solution.Result.AverageLx ?? 0, light?.Solution.Result.MinimumLx ?? 0, site.Target.Name, site.Target.AverageLx,
            light?.Solution.Met ?? false, asked, asked * (1 - result.LossOfLoadFraction), result.DarkNightsUpperBound, autonomy, needed?.ArrayWp, neededWh);
    }

    /// <summary>Usable energy of a full battery at end of life in the coldest month over the longest month's use.</summary>
    private static double Autonomy(PowerSystem system, LampHours lamp, double coldestC)
    {
        var useWh = (system.LampInputW * lamp.LongestMonthFullHours) + (system.Control.OwnUseW * 24);
        var hours = BatteryCapacity.DischargeHours(system.Battery.RatedWh, system.LampInputW + system.Control.OwnUseW);
        return BatteryCapacity.UsableWh(system.Battery, coldestC, hours) / useWh;
    }

    private static PowerSystem SystemOf(StatedParts parts, BatteryChemistry chemistry, ControlKind kind, RuleSet rules)
    {
        var (typical, efficiency) = (TypicalParts.Battery(chemistry), TypicalParts.ControlEfficiency(kind));
        var moduleV = ModuleV(parts);
        var array = new ArrayModel(
            parts.ModuleWp, moduleV, parts.ModuleWp / moduleV, TypicalParts.PowerCoefficientPerK, TypicalParts.NoctC,
            rules["energy.soiling"] * rules["energy.mismatch"] * rules["energy.ageing"] * rules["energy.wiring"]);
        var battery = new BatteryModel(
            chemistry, parts.BatteryWh, parts.BatteryV, typical.RatedHours, typical.PeukertExponent, rules["battery.depth." + chemistry], rules["battery.end_of_life"],
            typical.ChargeEfficiency, typical.DischargeEfficiency, typical.SelfDischargePerMonthFraction, rules["battery.enclosure_rise"], typical.LeastChargeC, GreatestRateFactor: rules["battery.rate_gain"]);
        var control = new ControlModel(kind, parts.ControllerA ?? ChargeA(parts, kind, rules), efficiency, TypicalParts.OwnUseW(kind), rules["battery.reconnect"]);
        return new PowerSystem(array, battery, control, parts.LampW / (1 - rules["wiring.drop_lamp"]));
    }

    private static double ModuleV(StatedParts parts) => TypicalParts.ModuleVoltagePer12V * Math.Max(1, Math.Round(parts.BatteryV / 12.8));

    /// <summary>Current the controller must carry: by the rule on the module's current, or for a tracking one what it gives to the emptiest battery.</summary>
    private static double ChargeA(StatedParts parts, ControlKind kind, RuleSet rules) => kind == ControlKind.Tracking
        ? parts.ModuleWp * TypicalParts.ControlEfficiency(kind) / (parts.BatteryV * rules["controller.lowest_cell_fraction"])
        : rules["controller.charge_factor"] * parts.ModuleWp / ModuleV(parts);

    /// <summary>The luminaire nearest in power, at the flux stated or in proportion to the power, undimmed, on the pole that serves it best.</summary>
    private static (string Code, double FluxLm, LightSolution Solution)? LightOf(Site site, StatedParts parts, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        if (SiteLighting.Problem(site) is not null) return null;
        if (inputs.Catalog.Luminaires.Where(l => Math.Abs(l.InputPowerW - parts.LampW) <= PowerTolerance * parts.LampW).OrderBy(l => Math.Abs(l.InputPowerW - parts.LampW)).ThenByDescending(l => l.FluxLm).FirstOrDefault() is not { } near) return null;
        var flux = parts.FluxLm ?? near.FluxLm * parts.LampW / near.InputPowerW;
        var maintenance = Math.Min(1, LightStage.MaintenanceFactor(near, rules) * flux / near.FluxLm);
        var bounds = new SpacingBounds(rules["light.spacing_step"], rules["light.spacing_least"], rules["light.spacing_most"], 1);
        var solutions = inputs.Catalog.Poles.Where(p => p.HeightM >= site.MountingHeightsM[0] && p.HeightM <= site.MountingHeightsM[^1])
            .Select(p => new PoleShape(p.HeightM, p.ArmReachM, p.ArmTiltDegrees)).Distinct().OrderBy(s => s.HeightM).ThenBy(s => s.ArmReachM).ThenBy(s => s.ArmTiltDegrees)
            .Select(s => SiteLighting.Of(inputs.Light[near.PhotometricFile], site, s, maintenance, bounds, inputs)).ToList();
        var best = solutions.Where(s => s.Met).MinBy(s => SiteLighting.PolesOf(s, site)) ?? solutions.MaxBy(s => s.Result.AverageLx);
        return best is null ? null : (near.Code, flux, best);
    }
}
