namespace TenderKit.Sizing.Energy;

/// <summary>Capacity of a battery at the temperature, rate and age that matter.</summary>
public static class BatteryCapacity
{
    /// <summary>Capacity at a temperature over capacity at 25 degC, fraction, capped at 1.</summary>
    public static double TemperatureFactor(BatteryChemistry chemistry, double batteryC) => throw new NotImplementedException();

    /// <summary>Capacity at the real rate over the rated capacity (Peukert), fraction.</summary>
    public static double RateFactor(double ratedHours, double dischargeHours, double peukertExponent) => throw new NotImplementedException();

    /// <summary>Usable energy at end of life, Wh.</summary>
    /// <param name="battery">The battery.</param>
    /// <param name="batteryC">Battery temperature, degC.</param>
    /// <param name="dischargeHours">Hours over which the store is emptied, h.</param>
    public static double UsableWh(BatteryModel battery, double batteryC, double dischargeHours) => throw new NotImplementedException();

    /// <summary>Expected life, years: the shorter of cycle life at the simulated use and calendar life halving per 10 K above 25 degC.</summary>
    public static double LifeYears(double calendarYearsAt25C, double cyclesAtDepth, double depthFraction, double equivalentFullCyclesPerYear, double meanBatteryC) => throw new NotImplementedException();
}
