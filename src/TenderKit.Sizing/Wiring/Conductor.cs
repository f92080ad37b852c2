using System.Collections.Frozen;
using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Wiring;

/// <summary>Class of a copper conductor, IEC 60228.</summary>
public enum ConductorClass
{
    Stranded2,
    Flexible5,
}

/// <summary>Insulation and so the conductor's highest temperature: PVC 70 degC, cross-linked 90 degC.</summary>
public enum CableInsulation
{
    Pvc70,
    CrossLinked90,
}

/// <summary>Resistance, drop and current-carrying capacity of copper cable.</summary>
public static class Conductor
{
    private static readonly FrozenDictionary<double, (double Stranded, double Flexible)> Plain =
        new Dictionary<double, (double, double)>
        {
            [0.5] = (36.0, 39.0), [0.75] = (24.5, 26.0), [1] = (18.1, 19.5), [1.5] = (12.1, 13.3), [2.5] = (7.41, 7.98),
            [4] = (4.61, 4.95), [6] = (3.08, 3.30), [10] = (1.83, 1.91), [16] = (1.15, 1.21), [25] = (0.727, 0.780),
            [35] = (0.524, 0.554), [50] = (0.387, 0.386), [70] = (0.268, 0.272), [95] = (0.193, 0.206), [120] = (0.153, 0.161),
        }.ToFrozenDictionary();

    private static readonly FrozenDictionary<double, double> TinnedFlexible = new Dictionary<double, double>
    {
        [1.5] = 13.7, [2.5] = 8.21, [4] = 5.09, [6] = 3.39, [10] = 1.95, [16] = 1.24, [25] = 0.795, [35] = 0.565,
    }.ToFrozenDictionary();

    /// <summary>Cross-sections with a resistance, mm2, ascending.</summary>
    public static ImmutableArray<double> CrossSectionsMm2 { get; } = [.. Plain.Keys.Order()];

    /// <summary>Greatest resistance of one plain copper conductor at 20 degC, Ohm/km: IEC 60228:2004 tables 2 and 3.</summary>
    /// <param name="conductorClass">Class 2 (stranded) or class 5 (flexible).</param>
    /// <param name="crossSectionMm2">One of <see cref="CrossSectionsMm2"/>.</param>
    /// <returns>Ohm/km. Check value: 2.5 mm2 class 2 is 7.41.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The cross-section is not in the table.</exception>
    public static double ResistanceOhmPerKm(ConductorClass conductorClass, double crossSectionMm2)
    {
        if (!Plain.TryGetValue(crossSectionMm2, out var row)) throw NotInTable(crossSectionMm2);
        return conductorClass == ConductorClass.Stranded2 ? row.Stranded : row.Flexible;
    }

    /// <summary>
    /// Greatest resistance of one tinned flexible (class 5) conductor at 20 degC, Ohm/km: IEC 60228 table 3; the usual conductor of
    /// module cable.
    /// </summary>
    /// <param name="crossSectionMm2">1.5 to 35 mm2, a standard size.</param>
    /// <returns>Ohm/km. Check value: 4 mm2 is 5.09.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The cross-section is not in the table.</exception>
    public static double TinnedResistanceOhmPerKm(double crossSectionMm2) =>
        TinnedFlexible.TryGetValue(crossSectionMm2, out var ohmPerKm) ? ohmPerKm : throw NotInTable(crossSectionMm2);

    /// <summary>
    /// Resistance of a copper conductor at its temperature, Ohm/km: R (234.5 + t) / 254.5, the copper formula of IEC 60228
    /// annex B (from memory), equal to a coefficient of 0.00393 per K at 20 degC.
    /// </summary>
    /// <param name="ohmPerKmAt20C">Resistance at 20 degC, Ohm/km.</param>
    /// <param name="conductorC">Conductor temperature, -60 to 150 degC.</param>
    /// <returns>Ohm/km. Check value: 1 Ohm/km at 70 degC is 1.1965.</returns>
    public static double AtTemperatureOhmPerKm(double ohmPerKmAt20C, double conductorC) =>
        Require.Positive(ohmPerKmAt20C, nameof(ohmPerKmAt20C)) * (234.5 + Require.InRange(conductorC, -60, 150, nameof(conductorC))) / 254.5;

    /// <summary>Drop of a two-conductor circuit, V: 2 L I R.</summary>
    /// <param name="oneWayLengthM">Length of the run, one way, m, zero or more.</param>
    /// <param name="currentA">Current, A, zero or more.</param>
    /// <param name="ohmPerKm">Resistance of one conductor at its working temperature, Ohm/km.</param>
    /// <returns>V. Check value: 10 m, 5 A, 4.61 Ohm/km drop 0.461 V.</returns>
    public static double DropV(double oneWayLengthM, double currentA, double ohmPerKm) =>
        2 * Require.NotNegative(oneWayLengthM, nameof(oneWayLengthM)) / 1000
        * Require.NotNegative(currentA, nameof(currentA)) * Require.Positive(ohmPerKm, nameof(ohmPerKm));

    /// <summary>Greatest resistance of the whole loop, there and back, that keeps a drop, Ohm: fraction x voltage / current (Ohm's law).</summary>
    /// <param name="dropFraction">Drop allowed, fraction of the voltage, above 0 to 1.</param>
    /// <param name="voltageV">Circuit voltage, V.</param>
    /// <param name="currentA">Current, A.</param>
    /// <returns>Ohm. Check value: 3 % of 38 V at 8 A is 0.1425 Ohm.</returns>
    public static double LoopLimitOhm(double dropFraction, double voltageV, double currentA) =>
        Require.InRange(dropFraction, 0, 1, nameof(dropFraction)) * Require.Positive(voltageV, nameof(voltageV))
        / Require.Positive(currentA, nameof(currentA));

    /// <summary>
    /// Current-carrying capacity of a two-core copper cable at an ambient temperature, A, enclosed in the pole or in conduit
    /// (IEC 60364-5-52 reference method B2, the least favourable run of a pole): see <see cref="CableCapacity"/> for other runs.
    /// </summary>
    /// <param name="insulation">Insulation.</param>
    /// <param name="crossSectionMm2">1.5, 2.5, 4, 6, 10, 16 or 25 mm2.</param>
    /// <param name="ambientC">Air around the cable, -60 to 150 degC; 0 A comes back above the table's last temperature.</param>
    /// <returns>A. Check value: PVC 2.5 mm2 at 30 degC carries 23 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The cross-section is not in the table.</exception>
    public static double CapacityA(CableInsulation insulation, double crossSectionMm2, double ambientC) =>
        CableCapacity.AtAmbientA(CableRun.EnclosedB2, insulation, crossSectionMm2, ambientC);

    internal static ArgumentOutOfRangeException NotInTable(double crossSectionMm2) =>
        new(nameof(crossSectionMm2), crossSectionMm2, "is not a cross-section of the table");
}
