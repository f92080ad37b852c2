namespace TenderKit.Sizing.Energy;

/// <summary>
/// Battery voltage while charging, a straight line over the state of charge. Per 12 V lead-acid 12.4 V when empty to 14.0 V when full;
/// per 12.8 V lithium iron phosphate 13.2 to 13.8 V. Common practice, no source; within the set-points for absorption (14.1 to 14.4 V).
/// </summary>
public static class ChargeVoltage
{
    /// <summary>Charging voltage over nominal voltage when empty, and its rise to full, both fractions.</summary>
    public static (double EmptyFactor, double RiseFactor) Line(BatteryChemistry chemistry) => chemistry == BatteryChemistry.LithiumIronPhosphate
        ? (13.2 / 12.8, 0.6 / 12.8)
        : (12.4 / 12.0, 1.6 / 12.0);

    /// <summary>Charging voltage at a state of charge, V.</summary>
    public static double AtV(BatteryChemistry chemistry, double nominalVoltageV, double stateFraction)
    {
        var (empty, rise) = Line(chemistry);
        return nominalVoltageV * (empty + rise * stateFraction);
    }

    /// <summary>Set-point corrected for temperature, V. Check value: 14.4 V, 6 cells, -4 mV/K, 40 degC gives 14.04 V.</summary>
    /// <param name="perCellVPerK">Compensation, V per K and cell, negative; 0 for lithium iron phosphate.</param>
    public static double CompensatedV(double setPointAt25CV, int cellCount, double perCellVPerK, double batteryC) =>
        setPointAt25CV + cellCount * perCellVPerK * (batteryC - 25);
}
