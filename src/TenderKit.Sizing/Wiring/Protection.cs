using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Wiring;

/// <summary>Ratings of fuses.</summary>
public static class Protection
{
    /// <summary>Rated currents of fuse links, A, ascending: series of IEC 60269-1 (from memory).</summary>
    public static ImmutableArray<double> FuseRatingsA { get; } = [2, 4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200];

    /// <summary>Rated currents on the NFPA 70 list, A, ascending: 240.6(A), up to 60 A.</summary>
    public static ImmutableArray<double> Nfpa70RatingsA { get; } = [10, 15, 20, 25, 30, 35, 40, 45, 50, 60];

    /// <summary>Window for a string fuse, A: 1.5 to 2.4 Isc (IEC 62548), never above the module's stated maximum.</summary>
    /// <param name="shortCircuitA">Isc of the string at standard test conditions, A.</param>
    /// <param name="moduleMaximumA">Greatest series fuse the module's maker allows, A.</param>
    /// <returns>
    /// Least and greatest rating, A; least above greatest means that no fuse fits this module. Check value: Isc 8 A, maximum 15 A: 12
    /// to 15 A.
    /// </returns>
    public static (double LowA, double HighA) StringFuseA(double shortCircuitA, double moduleMaximumA)
    {
        Require.Positive(moduleMaximumA, nameof(moduleMaximumA));
        return (1.5 * Require.Positive(shortCircuitA, nameof(shortCircuitA)), Math.Min(2.4 * shortCircuitA, moduleMaximumA));
    }

    /// <summary>
    /// Whether strings in parallel can feed a fault above the module's maximum, so that string fuses are needed:
    /// (strings - 1) Isc above the greatest series fuse (IEC 62548, from memory).
    /// </summary>
    /// <param name="stringCount">Strings in parallel, 1 or more.</param>
    /// <param name="shortCircuitA">Isc of one string, A.</param>
    /// <param name="moduleMaximumA">Greatest series fuse the module's maker allows, A.</param>
    /// <returns>Check value: 2 strings of 8 A on a 15 A module: no; 3 strings: yes.</returns>
    public static bool StringFusesNeeded(int stringCount, double shortCircuitA, double moduleMaximumA)
    {
        Require.InRange(stringCount, 1, int.MaxValue, nameof(stringCount));
        return (stringCount - 1) * Require.Positive(shortCircuitA, nameof(shortCircuitA)) > Require.Positive(moduleMaximumA, nameof(moduleMaximumA));
    }

    /// <summary>Window for the battery fuse, A: above the greatest working current times the factor, below the cable's capacity.</summary>
    /// <param name="workingCurrentA">Greatest working current, A.</param>
    /// <param name="factor">Factor of the design rules, 1 to 3.</param>
    /// <param name="cableCapacityA">Capacity of the cable behind the fuse at its ambient, A.</param>
    /// <returns>
    /// Least and greatest rating, A; least above greatest means a thicker cable is needed. Check value: 8 A, 1.25, 23 A: 10 to 23 A.
    /// </returns>
    public static (double LowA, double HighA) BatteryFuseA(double workingCurrentA, double factor, double cableCapacityA) =>
        (Require.Positive(workingCurrentA, nameof(workingCurrentA)) * Require.InRange(factor, 1, 3, nameof(factor)),
            Require.NotNegative(cableCapacityA, nameof(cableCapacityA)));

    /// <summary>Current a conductor or device of a module circuit must carry under NFPA 70 690.8, A: 1.25 x 1.25 Isc.</summary>
    /// <param name="shortCircuitA">Isc of the circuit, A.</param>
    /// <returns>A. Check value: 8.33 A gives 13.0156 A, so a 15 A device.</returns>
    public static double Nfpa70CircuitA(double shortCircuitA) => 1.25 * 1.25 * Require.Positive(shortCircuitA, nameof(shortCircuitA));

    /// <summary>Least fuse for a photovoltaic string under IEC 60269-6 annex BB, A: 1.4 Isc.</summary>
    /// <param name="shortCircuitA">Isc of the string, A.</param>
    /// <returns>A. Check value: 10 A gives 14 A.</returns>
    public static double Iec60269LeastFuseA(double shortCircuitA) => 1.4 * Require.Positive(shortCircuitA, nameof(shortCircuitA));

    /// <summary>Smallest rating of a list inside a window, A, or null when none lies in it.</summary>
    /// <param name="ratingsA">Ratings, A, in any order.</param>
    /// <param name="window">Least and greatest rating, A.</param>
    public static double? SmallestRatingA(IEnumerable<double> ratingsA, (double LowA, double HighA) window) =>
        ratingsA.Where(a => a >= window.LowA && a <= window.HighA).Cast<double?>().Min();
}
