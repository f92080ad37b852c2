using System.Collections.Frozen;
using System.Collections.Immutable;
using MathNet.Numerics.Interpolation;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Wiring;

/// <summary>How a cable is laid: reference methods of IEC 60364-5-52.</summary>
public enum CableRun
{
    /// <summary>Multi-core cable in conduit or inside the pole.</summary>
    EnclosedB2,

    /// <summary>Clipped direct to a surface.</summary>
    ClippedC,

    /// <summary>In free air or on a perforated tray.</summary>
    FreeAirE,

    /// <summary>In the ground, soil at 20 degC and 2.5 K m/W.</summary>
    BuriedD,
}

/// <summary>Current-carrying capacity of two-core copper cable, IEC 60364-5-52, two loaded conductors.</summary>
public static class CableCapacity
{
    private static readonly ImmutableArray<double> SectionsMm2 = [1.5, 2.5, 4, 6, 10, 16, 25];

    private static readonly FrozenDictionary<(CableRun, CableInsulation), ImmutableArray<double>> BaseTableA =
        new Dictionary<(CableRun, CableInsulation), ImmutableArray<double>>
        {
            [(CableRun.EnclosedB2, CableInsulation.Pvc70)] = [16.5, 23, 30, 38, 52, 69, 90],
            [(CableRun.ClippedC, CableInsulation.Pvc70)] = [19.5, 27, 36, 46, 63, 85, 112],
            [(CableRun.FreeAirE, CableInsulation.Pvc70)] = [22, 30, 40, 51, 70, 94, 119],
            [(CableRun.BuriedD, CableInsulation.Pvc70)] = [22, 29, 38, 47, 63, 81, 104],
            [(CableRun.EnclosedB2, CableInsulation.CrossLinked90)] = [22, 30, 40, 51, 69, 91, 119],
            [(CableRun.ClippedC, CableInsulation.CrossLinked90)] = [24, 33, 45, 58, 80, 107, 135],
            [(CableRun.FreeAirE, CableInsulation.CrossLinked90)] = [26, 36, 49, 63, 86, 115, 149],
            [(CableRun.BuriedD, CableInsulation.CrossLinked90)] = [26, 34, 44, 56, 73, 95, 121],
        }.ToFrozenDictionary();

    private static readonly AmbientTable AirPvc = new(
        [10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60], [1.22, 1.17, 1.12, 1.06, 1, 0.94, 0.87, 0.79, 0.71, 0.61, 0.50]);

    private static readonly AmbientTable AirCrossLinked = new(
        [10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80],
        [1.15, 1.12, 1.08, 1.04, 1, 0.96, 0.91, 0.87, 0.82, 0.76, 0.71, 0.65, 0.58, 0.50, 0.41]);

    private static readonly AmbientTable SoilPvc = new(
        [10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60], [1.10, 1.05, 1, 0.95, 0.89, 0.84, 0.77, 0.71, 0.63, 0.55, 0.45]);

    private static readonly AmbientTable SoilCrossLinked = new(
        [10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80],
        [1.07, 1.04, 1, 0.96, 0.93, 0.89, 0.85, 0.80, 0.76, 0.71, 0.65, 0.60, 0.53, 0.46, 0.38]);

    /// <summary>
    /// Capacity at the reference temperature (30 degC air, 20 degC soil), A: IEC 60364-5-52 tables B.52.2, B.52.3, B.52.10 and B.52.12.
    /// </summary>
    /// <param name="run">How the cable is laid.</param>
    /// <param name="insulation">Insulation.</param>
    /// <param name="crossSectionMm2">1.5, 2.5, 4, 6, 10, 16 or 25 mm2.</param>
    /// <returns>
    /// A. Check value: free air, cross-linked 4 mm2 is 49 A. Enclosed cross-linked, and PVC 25 mm2 enclosed or clipped, are from
    /// memory.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The cross-section is not in the table.</exception>
    public static double AtReferenceA(CableRun run, CableInsulation insulation, double crossSectionMm2)
    {
        var index = SectionsMm2.IndexOf(crossSectionMm2);
        return index < 0 ? throw Conductor.NotInTable(crossSectionMm2) : BaseTableA[(run, insulation)][index];
    }

    /// <summary>Capacity at an ambient temperature, A: reference capacity times <see cref="AmbientFactor"/>.</summary>
    /// <returns>A; 0 above the table's last temperature, where the cable may not be used.</returns>
    public static double AtAmbientA(CableRun run, CableInsulation insulation, double crossSectionMm2, double ambientC) =>
        AtReferenceA(run, insulation, crossSectionMm2) * AmbientFactor(run, insulation, ambientC);

    /// <summary>
    /// Factor for air or soil other than the reference, IEC 60364-5-52 tables B.52.14 and B.52.15 (soil from memory);
    /// straight line between the rows, which errs on the safe side since the true curve bends the other way.
    /// </summary>
    /// <param name="run">Air, or soil for a buried cable.</param>
    /// <param name="insulation">Insulation.</param>
    /// <param name="ambientC">-60 to 150 degC; below 10 degC the factor of 10 degC holds.</param>
    /// <returns>Factor; 0 above 60 degC for PVC and above 80 degC for cross-linked. Check value: PVC at 50 degC air 0.71.</returns>
    public static double AmbientFactor(CableRun run, CableInsulation insulation, double ambientC) =>
        Table(run, insulation).At(Require.InRange(ambientC, -60, 150, nameof(ambientC)));

    /// <summary>Factor for current-carrying conductors bunched together, NFPA 70 table 310.15(C)(1).</summary>
    /// <param name="conductorCount">Current-carrying conductors in one raceway or bundle, 1 or more.</param>
    /// <returns>Fraction. Check value: 4 conductors 0.80.</returns>
    public static double GroupingFactor(int conductorCount) => conductorCount switch
    {
        < 1 => throw new ArgumentOutOfRangeException(nameof(conductorCount), conductorCount, "must be 1 or more"),
        <= 3 => 1,
        <= 6 => 0.80,
        <= 9 => 0.70,
        <= 20 => 0.50,
        <= 30 => 0.45,
        <= 40 => 0.40,
        _ => 0.35,
    };

    private static AmbientTable Table(CableRun run, CableInsulation insulation) => (run, insulation) switch
    {
        (CableRun.BuriedD, CableInsulation.Pvc70) => SoilPvc,
        (CableRun.BuriedD, _) => SoilCrossLinked,
        (_, CableInsulation.Pvc70) => AirPvc,
        _ => AirCrossLinked,
    };

    private sealed class AmbientTable(double[] temperaturesC, double[] factors)
    {
        private readonly LinearSpline line = LinearSpline.InterpolateSorted(temperaturesC, factors);

        public double At(double ambientC) =>
            ambientC > temperaturesC[^1] ? 0 : line.Interpolate(Math.Max(ambientC, temperaturesC[0]));
    }
}
