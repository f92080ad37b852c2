using System.Collections.Immutable;
using TenderKit.Sizing.Energy;

namespace TenderKit.Sizing.Settings;

/// <summary>What the settings of a controller follow from.</summary>
/// <param name="Chemistry">Battery type.</param>
/// <param name="SystemVoltageV">Voltage class of the system: 12, 24, 36 or 48 V.</param>
/// <param name="DepthFraction">Depth of discharge allowed, fraction.</param>
/// <param name="NightHours">Hours in which the night's use would empty the battery: rated energy over the mean power drawn at night, h.</param>
/// <param name="CompensationPerK">Compensation of a lead-acid cell, V/K, -0.008 to 0; taken as none for lithium iron phosphate.</param>
/// <param name="ColdC">Battery on the coldest night to be expected, degC.</param>
/// <param name="HotC">Battery on the hottest day to be expected, degC.</param>
/// <param name="MakerAbsorptionV">Absorption the battery's maker asks for at 25 degC, V for the system, or null when not known.</param>
/// <param name="LeastAbsorptionV">Lowest absorption the controller can be set to, V for the system, or null.</param>
/// <param name="GreatestAbsorptionV">Highest, or null.</param>
public sealed record SettingInputs(
    BatteryChemistry Chemistry,
    double SystemVoltageV,
    double DepthFraction,
    double NightHours,
    double CompensationPerK,
    double ColdC,
    double HotC,
    double? MakerAbsorptionV = null,
    double? LeastAbsorptionV = null,
    double? GreatestAbsorptionV = null);

/// <summary>Charge set-points at one battery temperature, V for the system; equalise null where there is none.</summary>
public sealed record ChargePoints(double BatteryC, double AbsorptionV, double FloatV, double? EqualiseV);

/// <summary>How a controller is to be set. Screening: the makers of battery and controller prevail.</summary>
/// <param name="At25C">Charge set-points at 25 degC.</param>
/// <param name="CompensationPerK">Compensation of absorption, float and equalise, V/K for the system; 0 for lithium iron phosphate.</param>
/// <param name="DisconnectV">Load off, V for the system, under the night's load.</param>
/// <param name="ReconnectV">Load on again, V for the system.</param>
/// <param name="ByTemperature">Charge set-points from the cold to the hot battery temperature.</param>
/// <param name="Basis">Where each value comes from, in words.</param>
public sealed record ControllerSettings(
    ChargePoints At25C, double CompensationPerK, double DisconnectV, double ReconnectV, ImmutableArray<ChargePoints> ByTemperature, ImmutableArray<string> Basis);
