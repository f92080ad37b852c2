using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Wiring;

/// <summary>One two-conductor circuit to be screened.</summary>
/// <param name="CurrentA">Working current, A.</param>
/// <param name="OneWayLengthM">Length of the run, one way, m.</param>
/// <param name="OhmPerKmAt20C">Resistance of one conductor at 20 degC, Ohm/km.</param>
/// <param name="CrossSectionMm2">Cross-section, mm2: 1.5, 2.5, 4, 6, 10, 16 or 25.</param>
/// <param name="VoltageV">Voltage the drop is a share of, V.</param>
/// <param name="ConductorC">Temperature the conductor works at, degC.</param>
/// <param name="Run">How the cable is laid.</param>
/// <param name="Insulation">Insulation.</param>
/// <param name="AmbientC">Air or soil round the cable, degC.</param>
/// <param name="FuseFactor">Fuse over working current, 1 to 3.</param>
/// <param name="ConnectorPairs">Pairs of connectors in the circuit, each one plug of both poles.</param>
/// <param name="ConnectorOhm">Resistance of one pole of one pair of connectors, Ohm.</param>
public sealed record CircuitScreenInputs(
    double CurrentA,
    double OneWayLengthM,
    double OhmPerKmAt20C,
    double CrossSectionMm2,
    double VoltageV,
    double ConductorC,
    CableRun Run,
    CableInsulation Insulation,
    double AmbientC,
    double FuseFactor,
    int ConnectorPairs = 0,
    double ConnectorOhm = 0);

/// <summary>What a circuit does.</summary>
/// <param name="ResistanceOhm">Of one conductor, one way, at its temperature, Ohm.</param>
/// <param name="DropV">There and back, connectors included, V.</param>
/// <param name="DropFraction">Drop over the circuit's voltage.</param>
/// <param name="CapacityA">Current-carrying capacity at the ambient, A.</param>
/// <param name="FuseA">Smallest standard fuse above the working current with its factor that the cable can carry, A; null when there is none.</param>
public sealed record CircuitScreenResult(double ResistanceOhm, double DropV, double DropFraction, double CapacityA, double? FuseA);

/// <summary>Screening of one circuit: drop, capacity, fuse.</summary>
public static class CircuitScreen
{
    /// <summary>Drop 2 L I R and 2 I Rc a pair of connectors, capacity of IEC 60364-5-52, fuse between current and capacity out of the series of IEC 60269-1.</summary>
    /// <returns>Check value: 10 A, 8 m, 4 mm2 class 2 at 60 degC on 12 V: 0.04268 Ohm, 0.854 V, 7.1 %.</returns>
    public static CircuitScreenResult Run(CircuitScreenInputs inputs)
    {
        var ohmPerKm = Conductor.AtTemperatureOhmPerKm(inputs.OhmPerKmAt20C, inputs.ConductorC);
        var dropV = Conductor.DropV(inputs.OneWayLengthM, inputs.CurrentA, ohmPerKm) + ConnectorsV(inputs.ConnectorPairs, inputs.ConnectorOhm, inputs.CurrentA);
        var capacityA = CableCapacity.AtAmbientA(inputs.Run, inputs.Insulation, inputs.CrossSectionMm2, inputs.AmbientC);
        var window = Protection.BatteryFuseA(inputs.CurrentA, inputs.FuseFactor, capacityA);
        return new CircuitScreenResult(
            ohmPerKm * inputs.OneWayLengthM / 1000,
            dropV,
            dropV / Require.Positive(inputs.VoltageV, nameof(inputs.VoltageV)),
            capacityA,
            Protection.SmallestRatingA(Protection.FuseRatingsA, window));
    }

    /// <summary>Drop of the connectors of a circuit, V: Ohm's law on both poles, 2 n I Rc.</summary>
    /// <param name="pairs">Pairs of connectors, 0 or more.</param>
    /// <param name="connectorOhm">Resistance of one pole of a pair, Ohm.</param>
    /// <param name="currentA">Current, A.</param>
    /// <returns>V. Check value: 2 pairs of 5 mOhm at 10 A: 0.2 V.</returns>
    public static double ConnectorsV(int pairs, double connectorOhm, double currentA) =>
        2 * Require.InRange(pairs, 0, 100, nameof(pairs)) * Require.NotNegative(connectorOhm, nameof(connectorOhm)) * Require.NotNegative(currentA, nameof(currentA));
}
