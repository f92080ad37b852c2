namespace TenderKit.Sizing.Energy;

/// <summary>What a battery type brings along when no data sheet is at hand.</summary>
/// <param name="NominalVoltageV">Nominal voltage of a usual battery or pack, V.</param>
/// <param name="RatedHours">Rate of the usual rating, h.</param>
/// <param name="PeukertExponent">k, 1.0 to 1.4.</param>
/// <param name="ChargeEfficiency">Energy stored over energy in, fraction.</param>
/// <param name="DischargeEfficiency">Energy out over energy drawn from store, fraction.</param>
/// <param name="SelfDischargePerMonthFraction">At 25 degC, fraction a month.</param>
/// <param name="LeastChargeC">No charging below this, degC.</param>
public sealed record TypicalBattery(
    double NominalVoltageV,
    double RatedHours,
    double PeukertExponent,
    double ChargeEfficiency,
    double DischargeEfficiency,
    double SelfDischargePerMonthFraction,
    double LeastChargeC);

/// <summary>
/// Usual figures of parts, for a study before parts are chosen; a bid takes them from the catalogue instead. Common practice, no source, except:
/// Peukert exponents within the usual ranges flooded 1.20 to 1.30, AGM 1.05 to 1.15, gel 1.10 to 1.20, lithium about 1.05 (read);
/// lithium iron phosphate charged from 0 degC only (read on data sheets).
/// </summary>
public static class TypicalParts
{
    /// <summary>Maximum-power voltage of a module of 36 cells for each 12 V of the system, V.</summary>
    public const double ModuleVoltagePer12V = 18;

    /// <summary>Power temperature coefficient of crystalline silicon, 1/K.</summary>
    public const double PowerCoefficientPerK = -0.0038;

    /// <summary>Nominal operating cell temperature of a framed module, degC.</summary>
    public const double NoctC = 45;

    /// <summary>Figures of a battery type.</summary>
    public static TypicalBattery Battery(BatteryChemistry chemistry) => chemistry switch
    {
        BatteryChemistry.LithiumIronPhosphate => new(12.8, 5, 1.05, 0.97, 0.98, 0.02, 0),
        BatteryChemistry.GelLeadAcid => new(12, 10, 1.15, 0.88, 0.95, 0.02, -15),
        BatteryChemistry.AgmLeadAcid => new(12, 10, 1.10, 0.90, 0.95, 0.03, -15),
        BatteryChemistry.TubularLeadAcid => new(12, 10, 1.20, 0.85, 0.95, 0.03, -15),
        _ => new(12, 10, 1.25, 0.85, 0.95, 0.05, -15),
    };

    /// <summary>Own use of a controller, day and night, W.</summary>
    public static double OwnUseW(ControlKind kind) => kind == ControlKind.Tracking ? 0.2 : 0.1;

    /// <summary>Conversion efficiency of a controller, fraction; pulse-width control passes the current on, so it has none of its own.</summary>
    public static double ControlEfficiency(ControlKind kind) => kind == ControlKind.Tracking ? 0.95 : 1;
}
