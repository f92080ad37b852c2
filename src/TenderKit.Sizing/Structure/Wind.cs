using System.Collections.Immutable;

namespace TenderKit.Sizing.Structure;

/// <summary>Wind pressure and wind loads on a pole.</summary>
public static class Wind
{
    /// <summary>Peak velocity pressure, N/m2, EN 1991-1-4.</summary>
    /// <param name="basicSpeedMPerS">Basic wind speed, 10-minute mean at 10 m, category II, m/s, 10 to 70.</param>
    /// <param name="heightM">Height above ground, m, 0 to 200.</param>
    public static double PeakPressureNPerM2(double basicSpeedMPerS, Terrain terrain, double heightM) => throw new NotImplementedException();

    /// <summary>Loads of the shaft by segments and of the items; characteristic values.</summary>
    public static PoleLoad OnPole(PoleShaft shaft, ImmutableArray<WindItem> items, double basicSpeedMPerS, Terrain terrain) => throw new NotImplementedException();
}
