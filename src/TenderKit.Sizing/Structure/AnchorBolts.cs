using System.Collections.Frozen;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Anchor bolts of a flanged pole. Screening only.</summary>
public static class AnchorBolts
{
    private static readonly FrozenDictionary<double, double> StressAreaMm2 = new Dictionary<double, double>
    {
        [12] = 84.3, [16] = 157, [20] = 245, [24] = 353, [27] = 459, [30] = 561, [36] = 817,
    }.ToFrozenDictionary();

    /// <summary>Tensile stress area of a coarse-thread bolt, mm2: ISO 898-1 table of nominal stress areas (from memory).</summary>
    /// <param name="diameterMm">12, 16, 20, 24, 27, 30 or 36 mm.</param>
    /// <returns>mm2. Check value: M20 is 245.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not in the table.</exception>
    public static double TensileAreaMm2(double diameterMm) =>
        StressAreaMm2.TryGetValue(diameterMm, out var area)
            ? area
            : throw new ArgumentOutOfRangeException(nameof(diameterMm), diameterMm, "is not a bolt of the table");

    /// <summary>Whether the table knows a bolt of this diameter, mm.</summary>
    public static bool IsKnown(double diameterMm) => StressAreaMm2.ContainsKey(diameterMm);

    /// <summary>
    /// Use of a bolt in tension and shear together: Fv / Fv,Rd + Ft / (1.4 Ft,Rd), and no less than Ft / Ft,Rd, with Ft,Rd = 0.9 fub As / g
    /// (EN 1993-1-8 table 3.4, from memory) and the shear of an anchor bolt through a base plate, Fv,Rd = (0.44 - 0.0003 fyb) fub As / g
    /// (EN 1993-1-8 6.2.2, from memory).
    /// </summary>
    /// <param name="tensionN">Design tension in the worst bolt, N.</param>
    /// <param name="shearN">Design shear in one bolt, N.</param>
    /// <param name="diameterMm">Diameter of the table, mm.</param>
    /// <param name="tensileMPa">Tensile strength fub, 300 to 1200 MPa.</param>
    /// <param name="yieldMPa">Yield strength fyb, 180 to 640 MPa; stronger bolts count as 640 MPa.</param>
    /// <param name="partialFactor">g, 1 to 2.</param>
    /// <returns>Fraction; 1 is all of it. Check value: 30 kN, 1 kN, M20 of 4.6 (400 and 240 MPa), 1.25: 0.425.</returns>
    public static double UseFraction(double tensionN, double shearN, double diameterMm, double tensileMPa, double yieldMPa, double partialFactor)
    {
        var area = TensileAreaMm2(diameterMm) / Require.InRange(partialFactor, 1, 2, nameof(partialFactor));
        var tension = Require.NotNegative(tensionN, nameof(tensionN)) / (0.9 * Require.InRange(tensileMPa, 300, 1400, nameof(tensileMPa)) * area);
        var alpha = 0.44 - 0.0003 * Math.Min(Require.InRange(yieldMPa, 180, 1300, nameof(yieldMPa)), 640);
        return Math.Max(tension, Require.NotNegative(shearN, nameof(shearN)) / (alpha * tensileMPa * area) + tension / 1.4);
    }

    /// <summary>Length in concrete that holds a bolt's tension by bond, m: T / (pi d f).</summary>
    /// <param name="tensionN">Design tension, N.</param>
    /// <param name="diameterMm">Diameter, mm.</param>
    /// <param name="bondMPa">Design bond, 0.2 to 5 MPa.</param>
    /// <returns>m. Check value: 25 kN, 20 mm, 1.2 MPa: 0.332 m.</returns>
    public static double BondLengthM(double tensionN, double diameterMm, double bondMPa) =>
        Require.NotNegative(tensionN, nameof(tensionN)) / (Math.PI * Require.Positive(diameterMm, nameof(diameterMm)) * Require.InRange(bondMPa, 0.2, 5, nameof(bondMPa))) / 1000;

    /// <summary>
    /// Thickness of an unstiffened base plate, mm: the pull of the worst bolt spreads at 45 degrees to the shaft, so that the plate's strip
    /// is twice as wide as the lever is long and t = sqrt(3 T g / fy); elastic section of the strip (statics, own choice of the spread).
    /// </summary>
    /// <param name="tensionN">Design tension of the worst bolt, N.</param>
    /// <param name="yieldMPa">Yield strength of the plate, MPa.</param>
    /// <param name="steelFactor">Partial factor of steel, 1 to 1.5.</param>
    /// <returns>mm. Check value: 25 kN, 235 MPa, 1.1: 18.7 mm.</returns>
    public static double PlateMm(double tensionN, double yieldMPa, double steelFactor) =>
        Math.Sqrt(3 * Require.NotNegative(tensionN, nameof(tensionN)) * Require.InRange(steelFactor, 1, 1.5, nameof(steelFactor)) / Require.Positive(yieldMPa, nameof(yieldMPa)));

    /// <summary>
    /// Tension in the worst of equal bolts on a circle, N: 4 M / (n Dc) - N / n, the elastic distribution over a ring of bolts
    /// (statics; for four bolts it is the wind along the diagonal, one bolt taking M / Dc).
    /// </summary>
    /// <param name="momentNm">Moment at the base, Nm.</param>
    /// <param name="weightN">Weight of pole and everything on it, N.</param>
    /// <param name="boltCount">Bolts, 3 or more.</param>
    /// <param name="circleMm">Diameter of the bolt circle, mm.</param>
    /// <returns>N, never below zero. Check value: 10 kNm, 1.6 kN, 4 bolts, 283 mm: 34.9 kN.</returns>
    public static double TensionN(double momentNm, double weightN, int boltCount, double circleMm)
    {
        Require.InRange(boltCount, 3, 100, nameof(boltCount));
        var pull = 4 * Require.NotNegative(momentNm, nameof(momentNm)) / (boltCount * Require.Positive(circleMm, nameof(circleMm)) / 1000);
        return Math.Max(0, pull - Require.NotNegative(weightN, nameof(weightN)) / boltCount);
    }
}
