using MathNet.Numerics.Interpolation;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;

namespace TenderKit.Sizing.Settings;

/// <summary>Set-points of a charge controller for one battery. Common practice within the makers' limits; screening only.</summary>
public static class SetPoints
{
    /// <summary>Charge line of a battery type at 25 degC per 12 V, V.</summary>
    private sealed record Charge(double AbsorptionV, double FloatV, double? EqualiseV, double LeastV, double GreatestV, double ReconnectV);

    /// <summary>Rest voltage of a 12 V lead-acid battery by state of charge, fraction: read in a published table.</summary>
    private static readonly LinearSpline RestV = LinearSpline.InterpolateSorted(
        [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1], [10.5, 11.31, 11.58, 11.75, 11.9, 12.06, 12.20, 12.32, 12.42, 12.5, 12.7]);

    /// <summary>Rest voltage of a 12.8 V lithium iron phosphate battery by state of charge, fraction: 3.0 to 3.4 V a cell, flat between (from memory).</summary>
    private static readonly LinearSpline LithiumRestV = LinearSpline.InterpolateSorted([0, 0.05, 0.1, 0.2, 0.4, 0.7, 0.9, 1], [10.0, 11.6, 12.3, 12.8, 13.1, 13.2, 13.3, 13.6]);

    /// <summary>Cells in 12 V of lead-acid.</summary>
    private const int CellsPer12V = 6;

    /// <summary>Internal fall of a lead-acid battery discharged in one hour, V per 12 V; falls with the hours (12.06 to 12.0 V at C/60, 11.7 V at C/10; from memory).</summary>
    private const double FallAtOneHourV = 3.6;

    /// <summary>No battery's load is kept below these, V per 12 V: end of discharge of the type with a margin (lithium iron phosphate 10.0 V, read).</summary>
    private const double LowestLeadV = 11.1;
    private const double LowestLithiumV = 12.0;

    /// <summary>Least gap between disconnect and reconnect, V per 12 V; common practice, no source.</summary>
    private const double LeadGapV = 0.6;
    private const double LithiumGapV = 0.3;

    /// <summary>
    /// Set-points of a battery. Absorption, float, equalise, reconnect: common practice, no source (sealed 14.1 to 14.4 V and 13.5 to 13.8 V,
    /// flooded 14.4 to 14.8 V, lithium iron phosphate 14.1 to 14.4 V and 13.4 V per 12 V); the maker's absorption where it is known.
    /// Disconnect: see <see cref="DisconnectPer12V"/>.
    /// </summary>
    /// <returns>Check value: AGM, 12 V, -4.5 mV/K a cell: absorption 14.4 V at 25 degC, 13.99 V at 40 degC.</returns>
    public static ControllerSettings Of(SettingInputs inputs)
    {
        var blocks = Require.InRange(inputs.SystemVoltageV, 12, 48, nameof(inputs.SystemVoltageV)) / 12;
        var usual = ChargeOf(inputs.Chemistry);
        var absorptionV = Absorption(inputs, usual, blocks);
        var charge = new ChargePoints(25, absorptionV, Math.Min(usual.FloatV * blocks, absorptionV), usual.EqualiseV is { } e ? Math.Max(e * blocks, absorptionV) : null);
        var compensationPerK = inputs.Chemistry == BatteryChemistry.LithiumIronPhosphate
            ? 0
            : Require.InRange(inputs.CompensationPerK, -0.008, 0, nameof(inputs.CompensationPerK)) * CellsPer12V * blocks;
        var disconnectV = DisconnectPer12V(inputs.Chemistry, inputs.DepthFraction, inputs.NightHours) * blocks;
        var reconnectV = Math.Max(usual.ReconnectV * blocks, disconnectV + (inputs.Chemistry == BatteryChemistry.LithiumIronPhosphate ? LithiumGapV : LeadGapV) * blocks);
        return new ControllerSettings(
            charge, compensationPerK, disconnectV, reconnectV, [.. Temperatures(inputs).Select(t => At(charge, compensationPerK, t))], [.. BasisOf(inputs, usual, blocks)]);
    }

    /// <summary>Charge set-points moved to a battery temperature; no compensation beyond what the table of the sheet shows.</summary>
    /// <param name="compensationPerK">Compensation for the system, V/K, zero or negative.</param>
    public static ChargePoints At(ChargePoints at25C, double compensationPerK, double batteryC)
    {
        var shiftV = compensationPerK * (Require.InRange(batteryC, -60, 100, nameof(batteryC)) - 25);
        return new ChargePoints(batteryC, at25C.AbsorptionV + shiftV, at25C.FloatV + shiftV, at25C.EqualiseV + shiftV);
    }

    /// <summary>
    /// Voltage under the night's load at which the depth allowed is reached, V per 12 V: the rest voltage at that state of charge less the
    /// fall inside the battery, taken as 3.6 V over the hours of discharge for lead-acid and half of it for lithium iron phosphate (own
    /// fit to two points of practice, 11.4 V at C/60 for 80 %, 12.0 V for 50 %); never below 11.1 V and 12.0 V.
    /// </summary>
    /// <param name="depthFraction">Depth allowed, 0.1 to 1.</param>
    /// <param name="nightHours">Hours that would empty the battery at the night's rate, 5 or more.</param>
    /// <returns>V per 12 V. Check value: AGM, 0.5, 60 h: 12.0 V; 0.8, 60 h: 11.5 V.</returns>
    public static double DisconnectPer12V(BatteryChemistry chemistry, double depthFraction, double nightHours)
    {
        var state = 1 - Require.InRange(depthFraction, 0.1, 1, nameof(depthFraction));
        var lithium = chemistry == BatteryChemistry.LithiumIronPhosphate;
        var fallV = FallAtOneHourV / Math.Max(5, Require.Positive(nightHours, nameof(nightHours))) * (lithium ? 0.5 : 1);
        return Math.Max(lithium ? LowestLithiumV : LowestLeadV, (lithium ? LithiumRestV : RestV).Interpolate(state) - fallV);
    }

    private static double Absorption(SettingInputs inputs, Charge usual, double blocks)
    {
        var wanted = inputs.MakerAbsorptionV ?? usual.AbsorptionV * blocks;
        var least = inputs.LeastAbsorptionV ?? 0;
        return Math.Clamp(wanted, least, Math.Max(least, inputs.GreatestAbsorptionV ?? double.MaxValue));
    }

    private static Charge ChargeOf(BatteryChemistry chemistry) => chemistry switch
    {
        BatteryChemistry.FloodedLeadAcid => new(14.7, 13.6, 15.0, 14.4, 14.8, 12.7),
        BatteryChemistry.TubularLeadAcid => new(14.4, 13.6, 14.8, 14.4, 14.8, 12.7),
        BatteryChemistry.AgmLeadAcid => new(14.4, 13.6, null, 14.1, 14.4, 12.6),
        BatteryChemistry.GelLeadAcid => new(14.1, 13.5, null, 14.1, 14.4, 12.6),
        BatteryChemistry.LithiumIronPhosphate => new(14.2, 13.4, null, 14.1, 14.4, 13.1),
        _ => throw new ArgumentOutOfRangeException(nameof(chemistry), chemistry, "is not a battery type"),
    };

    /// <summary>Cold, 0, 10, 25, 40 degC and hot, those between the two ends.</summary>
    private static IEnumerable<double> Temperatures(SettingInputs inputs)
    {
        var (cold, hot) = (Math.Round(Math.Min(inputs.ColdC, 25)), Math.Round(Math.Max(inputs.HotC, 25)));
        return new[] { cold, 0, 10, 25, 40, hot }.Where(t => t >= cold && t <= hot).Distinct().Order();
    }

    private static IEnumerable<string> BasisOf(SettingInputs inputs, Charge usual, double blocks)
    {
        yield return inputs.MakerAbsorptionV is not null
            ? "absorption: as the maker of the battery asks"
            : FormattableString.Invariant($"absorption: common practice, {usual.LeastV * blocks:0.0} to {usual.GreatestV * blocks:0.0} V at 25 degC; the maker's data sheet prevails");
        if (inputs.LeastAbsorptionV is not null || inputs.GreatestAbsorptionV is not null) yield return "absorption kept within what the controller can be set to";
        yield return "float, equalise and reconnect: common practice, no source";
        yield return inputs.Chemistry == BatteryChemistry.LithiumIronPhosphate
            ? "no temperature compensation for lithium iron phosphate; no charging below the temperature its maker states"
            : "temperature compensation: design rule controller.compensation";
        yield return FormattableString.Invariant($"disconnect: rest voltage at {inputs.DepthFraction * 100:0} % depth less the fall at the night's rate, C/{inputs.NightHours:0}; fit of common practice, no source");
    }
}
