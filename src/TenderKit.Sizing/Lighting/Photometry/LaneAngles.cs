using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Angles of four directions at once, from sums, products, quotients and comparisons only, none of them fused: IEEE 754 fixes the bits of each,
/// so every machine gives the same result, with wide vectors or without. Error against the true angle under 4e-16 of a turn.
/// </summary>
internal static class LaneAngles
{
    private const double TanOfEighth = 0.41421356237309503; // tan(pi / 8)
    private const double Tiny = 1e-300;

    /// <summary>
    /// Minimax fit of atan(t) / t in t^2 over 0 to tan(pi / 8), eleven terms, greatest error 3e-17: recomputed with 60 digits.
    /// </summary>
    private static ReadOnlySpan<double> Terms =>
    [
        1.0, -0.3333333333332844, 0.1999999999885511, -0.14285714180976467, 0.11111106180455946, -0.09090773074808414,
        0.07689953496306857, -0.06640233930429408, 0.056883492268090106, -0.04348052215716462, 0.021135373157693246,
    ];

    /// <summary>Angle from +x to (x, y), y not negative, rad, 0 to pi. Zero for (0, 0).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> HalfTurn(Vector256<double> x, Vector256<double> y)
    {
        var width = Vector256.Abs(x);
        var octant = Octant(Vector256.Min(width, y), Vector256.Max(width, y));
        var quadrant = Vector256.ConditionalSelect(Vector256.GreaterThan(y, width), Vector256.Create(Math.PI / 2) - octant, octant);
        return Vector256.ConditionalSelect(Vector256.LessThan(x, Vector256<double>.Zero), Vector256.Create(Math.PI) - quadrant, quadrant);
    }

    /// <summary>Angle from +x to (x, y) by +y, rad, 0 to 2 pi.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> FullTurn(Vector256<double> x, Vector256<double> y)
    {
        var half = HalfTurn(x, Vector256.Abs(y));
        return Vector256.ConditionalSelect(Vector256.LessThan(y, Vector256<double>.Zero), Vector256.Create(2 * Math.PI) - half, half);
    }

    /// <summary>atan(small / large) for 0 to small to large, by way of pi / 4 above pi / 8.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Octant(Vector256<double> small, Vector256<double> large)
    {
        large = Vector256.Max(large, Vector256.Create(Tiny));
        var upper = Vector256.GreaterThan(small, Vector256.Create(TanOfEighth) * large);
        var t = Vector256.ConditionalSelect(upper, small - large, small) / Vector256.ConditionalSelect(upper, small + large, large);
        return (t * Series(t * t)) + (upper & Vector256.Create(Math.PI / 4));
    }

    /// <summary>The terms summed in pairs, so that they need not wait for one another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Series(Vector256<double> z)
    {
        var z2 = z * z;
        var z4 = z2 * z2;
        var low = Pair(z, 0) + (Pair(z, 2) * z2);
        var middle = Pair(z, 4) + (Pair(z, 6) * z2);
        var high = Pair(z, 8) + (Vector256.Create(Terms[10]) * z2);
        return low + ((middle + (high * z4)) * z4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Pair(Vector256<double> z, int at) => Vector256.Create(Terms[at]) + (Vector256.Create(Terms[at + 1]) * z);
}
