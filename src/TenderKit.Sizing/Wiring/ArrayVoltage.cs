using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Wiring;

/// <summary>Voltage of a string of modules at the temperatures that matter.</summary>
public static class ArrayVoltage
{
    /// <summary>Open-circuit voltage of a string at a cell temperature, V: Ns Voc (1 + b (T - 25)) (IEC 62548, linear in temperature).</summary>
    /// <param name="openCircuitV">Voc of one module at standard test conditions, V.</param>
    /// <param name="voltageCoefficientPerK">Temperature coefficient of Voc, 1/K, -0.01 to 0.</param>
    /// <param name="modulesInSeries">Modules in series, 1 or more.</param>
    /// <param name="recordLowC">Record low air temperature (not a monthly mean), -60 to 25 degC.</param>
    /// <returns>V. Check value: 42 V, -0.0034 per K, 14 in series, -20 degC: 678 V.</returns>
    public static double ColdOpenCircuitV(double openCircuitV, double voltageCoefficientPerK, int modulesInSeries, double recordLowC) =>
        AtCellV(openCircuitV, voltageCoefficientPerK, modulesInSeries, Require.InRange(recordLowC, -60, 25, nameof(recordLowC)));

    /// <summary>A voltage of a string at any cell temperature, V: N V (1 + b (T - 25)); for Voc, or for Vmp with its own coefficient.</summary>
    /// <param name="moduleV">Voltage of one module at 25 degC, V.</param>
    /// <param name="coefficientPerK">Its temperature coefficient, 1/K, -0.01 to 0.</param>
    /// <param name="modulesInSeries">Modules in series, 1 or more.</param>
    /// <param name="cellC">Cell temperature, -60 to 100 degC.</param>
    /// <returns>V. Check value: 18 V, -0.004 per K, 1, 65 degC: 15.12 V.</returns>
    public static double AtCellV(double moduleV, double coefficientPerK, int modulesInSeries, double cellC)
    {
        Require.InRange(modulesInSeries, 1, 100, nameof(modulesInSeries));
        Require.InRange(coefficientPerK, -0.01, 0, nameof(coefficientPerK));
        var factor = 1 + coefficientPerK * (Require.InRange(cellC, -60, 100, nameof(cellC)) - 25);
        return modulesInSeries * Require.Positive(moduleV, nameof(moduleV)) * factor;
    }

    /// <summary>Factor on Voc for the lowest expected temperature, crystalline silicon: NFPA 70 table 690.7(A) (from memory).</summary>
    /// <param name="recordLowC">Lowest expected air temperature, -40 to 60 degC.</param>
    /// <returns>Factor, 1 above 24 degC. Check value: -8 degC gives 1.14.</returns>
    public static double Nfpa70ColdFactor(double recordLowC) => Require.InRange(recordLowC, -40, 60, nameof(recordLowC)) switch
    {
        >= 25 => 1,
        >= 20 => 1.02,
        >= 15 => 1.04,
        >= 10 => 1.06,
        >= 5 => 1.08,
        >= 0 => 1.10,
        >= -5 => 1.12,
        >= -10 => 1.14,
        >= -15 => 1.16,
        >= -20 => 1.18,
        >= -25 => 1.20,
        >= -30 => 1.21,
        >= -35 => 1.23,
        _ => 1.25,
    };
}
