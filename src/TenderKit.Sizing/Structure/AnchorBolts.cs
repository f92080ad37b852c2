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
