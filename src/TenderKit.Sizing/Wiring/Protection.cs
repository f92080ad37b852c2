namespace TenderKit.Sizing.Wiring;

/// <summary>Ratings of fuses.</summary>
public static class Protection
{
    /// <summary>Window for a string fuse, A: 1.5 to 2.4 Isc (IEC 62548), never above the module's stated maximum.</summary>
    public static (double LowA, double HighA) StringFuseA(double shortCircuitA, double moduleMaximumA) => throw new NotImplementedException();

    /// <summary>Whether strings in parallel can feed a fault above the module's maximum, so that string fuses are needed.</summary>
    public static bool StringFusesNeeded(int stringCount, double shortCircuitA, double moduleMaximumA) => throw new NotImplementedException();

    /// <summary>Window for the battery fuse, A: above the greatest working current times the factor, below the cable's capacity.</summary>
    public static (double LowA, double HighA) BatteryFuseA(double workingCurrentA, double factor, double cableCapacityA) => throw new NotImplementedException();
}
