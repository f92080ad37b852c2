using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Wiring;

/// <summary>Air a lead-acid battery needs so that its hydrogen stays thin, IEC 62485-2 clause 7.</summary>
public static class BatteryVentilation
{
    /// <summary>Gas-producing current of vented cells while boost charged, mA/Ah: IEC 62485-2 table 1 with factors 1 and 5 (from memory).</summary>
    public const double VentedBoostMAPerAh = 20;

    /// <summary>
    /// Gas-producing current of valve-regulated cells while boost charged, mA/Ah: IEC 62485-2 table 1 with factors 0.2 and 5 (from
    /// memory).
    /// </summary>
    public const double ValveRegulatedBoostMAPerAh = 8;

    /// <summary>Air flow, m3/h: Q = 0.05 n I C / 1000.</summary>
    /// <param name="cellCount">Cells in the bank, all strings, 1 or more.</param>
    /// <param name="gasMAPerAh">Gas-producing current, mA/Ah, 0 to 50.</param>
    /// <param name="ratedAh">Capacity of one cell, C/10, Ah.</param>
    /// <returns>m3/h. Check value: 6 cells, 8 mA/Ah, 100 Ah: 0.240 m3/h.</returns>
    public static double FlowM3PerH(int cellCount, double gasMAPerAh, double ratedAh) =>
        0.05 * Require.InRange(cellCount, 1, 10_000, nameof(cellCount)) * Require.InRange(gasMAPerAh, 0, 50, nameof(gasMAPerAh))
        * Require.Positive(ratedAh, nameof(ratedAh)) / 1000;

    /// <summary>Free area of each opening for natural ventilation, inlet and outlet, cm2: 28 Q.</summary>
    /// <param name="flowM3PerH">Air flow, m3/h.</param>
    /// <returns>cm2. Check value: 0.240 m3/h needs 6.72 cm2.</returns>
    public static double FreeAreaCm2(double flowM3PerH) => 28 * Require.NotNegative(flowM3PerH, nameof(flowM3PerH));
}
