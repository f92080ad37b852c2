using System.Collections.Immutable;

namespace TenderKit.Tendering.Settings;

/// <summary>Every design rule the engineering asks for; a rules file that lacks one is refused.</summary>
public static class RuleIds
{
    public static readonly ImmutableArray<string> All =
    [
        .. Sizing.Climate.ClimateGrades.All.Select(Sizing.Climate.ClimateGrades.RuleId),
        "climate.missing_days", "climate.far_km", "climate.typical_margin", "climate.albedo", "climate.years", "climate.seed", "climate.day_correlation", "climate.year_spread",
        "climate.month_correlation", "climate.day_dispersion", "night.switching_elevation",
        "light.maintenance_hours", "light.survival_factor", "light.cleaning_years", "light.pollution", "light.spacing_step", "light.spacing_least", "light.spacing_most",
        "light.setback", "light.junction_clearance", "luminaire.ip", "luminaire.ambient_margin", "enclosure.ip",
        "energy.soiling", "energy.mismatch", "energy.ageing", "energy.wiring", "energy.array_to_load", "energy.recovery_days", "energy.least_tilt",
        "battery.depth.FloodedLeadAcid", "battery.depth.AgmLeadAcid", "battery.depth.GelLeadAcid", "battery.depth.TubularLeadAcid",
        "battery.depth.LithiumIronPhosphate", "battery.end_of_life", "battery.rate_gain", "battery.enclosure_rise", "battery.reconnect", "battery.life_years", "battery.days_to_full",
        "wiring.drop_array", "wiring.drop_battery", "wiring.drop_lamp", "wiring.ambient", "wiring.slack", "wiring.box_height", "wiring.fuse_factor",
        "wiring.connector_milliohm", "wiring.breaking_current", "wiring.earth_ohm",
        "controller.charge_factor", "controller.load_factor", "controller.lowest_cell_fraction", "controller.charge_voltage", "controller.compensation",
        "plausible.luminaire", "plausible.module", "plausible.battery_lead", "plausible.battery_lithium",
        "structure.dynamic_factor", "structure.wind_factor", "structure.steel_factor", "structure.deflection", "structure.overturning", "structure.concrete_weight",
        "structure.module_force_coefficient", "structure.module_least_projection", "structure.box_force_coefficient", "structure.luminaire_force_coefficient",
        "structure.submerged_bearing", "structure.surround", "structure.working_space", "structure.zinc_years", "structure.fast_traffic", "structure.bond", "structure.bolt_factor",
    ];
}
