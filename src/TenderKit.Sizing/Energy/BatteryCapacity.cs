using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Energy;

/// <summary>Capacity of a battery at the temperature, rate and age that matter.</summary>
public static class BatteryCapacity
{
    /// <summary>Greatest gain of capacity credited to a slow discharge, fraction of the rated capacity (common practice, no source).</summary>
    public const double GreatestRateFactor = 1.2;

    /// <summary>
    /// The same for lithium iron phosphate: none. Its capacity at C/20 is within one or two per cent of that at C/5, and its management system
    /// ends the discharge at the cells' own capacity, so Peukert's law must not be carried on below the rated current (common practice, no source).
    /// </summary>
    public const double GreatestLithiumRateFactor = 1.0;

    private const double CalendarBaseC = 25;

    /// <summary>Cell-size correction factors, 25 degC base, by degF: IEEE 485 table 1; 25 to 35 degF from memory.</summary>
    private static readonly (double X, double Y)[] LeadAcidFactorByF =
    [
        (25, 1.520), (30, 1.430), (35, 1.350), (40, 1.300), (45, 1.250), (50, 1.190), (55, 1.150), (60, 1.110), (65, 1.080), (66, 1.072),
        (67, 1.064), (68, 1.056), (69, 1.048), (70, 1.040), (71, 1.034), (72, 1.029), (73, 1.023), (74, 1.017), (75, 1.011), (76, 1.006),
        (77, 1.000), (78, 0.994), (79, 0.987), (80, 0.980), (85, 0.960), (90, 0.940), (95, 0.930), (100, 0.910), (105, 0.890), (110, 0.880),
        (115, 0.870), (120, 0.860),
    ];

    /// <summary>Capacity of lithium iron phosphate over that at 25 degC, by degC: typical data-sheet curve at low rate, from memory.</summary>
    private static readonly (double X, double Y)[] LithiumCapacityByC =
        [(-30, 0.35), (-20, 0.55), (-10, 0.72), (0, 0.85), (10, 0.94), (25, 1.0), (45, 1.0), (60, 0.90)];

    /// <summary>
    /// Cell-size correction factor K of lead-acid batteries, 25 degC base: required rated capacity over capacity needed.
    /// IEEE 485 table 1, interpolated; below 25 degF carried on along its last slope, which the table does not cover. Check value: 50 degF gives 1.190.
    /// </summary>
    public static double CellSizeFactor(double batteryC) => Interpolate(LeadAcidFactorByF, Require.InRange(batteryC, -60, 100, nameof(batteryC)) * 1.8 + 32);

    /// <summary>Capacity at a temperature over capacity at 25 degC, fraction, capped at 1. Lead-acid: 1 / K of IEEE 485. Check value: 10 degC gives 0.840.</summary>
    public static double TemperatureFactor(BatteryChemistry chemistry, double batteryC) => chemistry == BatteryChemistry.LithiumIronPhosphate
        ? Math.Clamp(Interpolate(LithiumCapacityByC, Require.InRange(batteryC, -60, 100, nameof(batteryC))), 0.1, 1)
        : Math.Min(1, 1 / CellSizeFactor(batteryC));

    /// <summary>
    /// Capacity at the real rate over the rated capacity, fraction: Peukert, t = H (C / (I H))^k, solved for the capacity delivered in t,
    /// C_t / C = (t / H)^(1 - 1/k), capped at <see cref="GreatestRateFactor"/>.
    /// Check value: 20 h rating, k 1.4, emptied in 0.3017 h gives 0.3017 (120 Ah at 120 A: 36.2 Ah).
    /// </summary>
    /// <param name="ratedHours">Rate of the rating, h.</param>
    /// <param name="dischargeHours">Hours over which the whole store is emptied, h.</param>
    /// <param name="peukertExponent">k, 1.0 to 1.5.</param>
    public static double RateFactor(double ratedHours, double dischargeHours, double peukertExponent)
    {
        Require.Positive(ratedHours, nameof(ratedHours));
        Require.Positive(dischargeHours, nameof(dischargeHours));
        Require.InRange(peukertExponent, 1, 1.5, nameof(peukertExponent));
        return Math.Min(GreatestRateFactor, Math.Pow(dischargeHours / ratedHours, 1 - 1 / peukertExponent));
    }

    /// <summary>The same for a chemistry: lithium iron phosphate is capped at <see cref="GreatestLithiumRateFactor"/>.</summary>
    public static double RateFactor(BatteryChemistry chemistry, double ratedHours, double dischargeHours, double peukertExponent)
    {
        var factor = RateFactor(ratedHours, dischargeHours, peukertExponent);
        return chemistry == BatteryChemistry.LithiumIronPhosphate ? Math.Min(GreatestLithiumRateFactor, factor) : factor;
    }

    /// <summary>Hours over which the night's mean draw would empty the rated energy, h: the rate of <see cref="RateFactor(double, double, double)"/>.</summary>
    /// <param name="litMeanW">Mean electrical draw while the lamp burns, own use included, W.</param>
    public static double DischargeHours(double ratedWh, double litMeanW) =>
        litMeanW > 0 ? Require.Positive(ratedWh, nameof(ratedWh)) / litMeanW : double.MaxValue;

    /// <summary>Stored energy of a full battery at end of life and the real rate, at 25 degC, Wh.</summary>
    public static double EndOfLifeWh(BatteryModel battery, double dischargeHours) =>
        battery.RatedWh * battery.EndOfLifeFraction
        * Math.Min(battery.GreatestRateFactor, RateFactor(battery.Chemistry, battery.RatedHours, dischargeHours, battery.PeukertExponent));

    /// <summary>Usable energy at end of life, Wh: rated energy x depth x temperature x end of life x rate x discharge efficiency.</summary>
    /// <param name="battery">The battery.</param>
    /// <param name="batteryC">Battery temperature, degC.</param>
    /// <param name="dischargeHours">Hours over which the store is emptied, h.</param>
    public static double UsableWh(BatteryModel battery, double batteryC, double dischargeHours) =>
        EndOfLifeWh(battery, dischargeHours) * battery.UsableDepthFraction * TemperatureFactor(battery.Chemistry, batteryC) * battery.DischargeEfficiency;

    /// <summary>
    /// Expected life, years: the shorter of cycle life at the simulated use and calendar life halving per 10 K above 25 degC, for every chemistry.
    /// Cycle life counts the energy of the rated cycles: cycles x depth in equivalent full cycles over those of a year.
    /// No gain is credited below 25 degC.
    /// </summary>
    /// <param name="calendarYearsAt25C">Calendar life at 25 degC, years.</param>
    /// <param name="cyclesAtDepth">Cycles to end of life at <paramref name="depthFraction"/>.</param>
    /// <param name="depthFraction">Depth of discharge of that rating, fraction.</param>
    /// <param name="equivalentFullCyclesPerYear">Energy discharged a year over capacity.</param>
    /// <param name="meanBatteryC">Mean battery temperature, degC.</param>
    public static double LifeYears(double calendarYearsAt25C, double cyclesAtDepth, double depthFraction, double equivalentFullCyclesPerYear, double meanBatteryC)
    {
        Require.Positive(calendarYearsAt25C, nameof(calendarYearsAt25C));
        Require.Positive(cyclesAtDepth, nameof(cyclesAtDepth));
        Require.InRange(depthFraction, 0.01, 1, nameof(depthFraction));
        Require.NotNegative(equivalentFullCyclesPerYear, nameof(equivalentFullCyclesPerYear));
        var calendar = calendarYearsAt25C * Math.Pow(2, -Math.Max(0, meanBatteryC - CalendarBaseC) / 10);
        var cycling = equivalentFullCyclesPerYear > 0 ? cyclesAtDepth * depthFraction / equivalentFullCyclesPerYear : double.PositiveInfinity;
        return Math.Min(calendar, cycling);
    }

    /// <summary>Self-discharge in an hour, fraction of the energy stored: the monthly figure at 25 degC, doubling per 10 K. Check value: 10 degC has half of 20 degC.</summary>
    public static double SelfDischargePerHourFraction(double perMonthFractionAt25C, double batteryC) =>
        perMonthFractionAt25C / (30.4 * 24) * Math.Pow(2, (batteryC - CalendarBaseC) / 10);

    /// <summary>Straight lines between the points; beyond the ends the last slope goes on.</summary>
    private static double Interpolate((double X, double Y)[] table, double x)
    {
        var i = 1;
        while (i < table.Length - 1 && x > table[i].X) i++;
        var (a, b) = (table[i - 1], table[i]);
        return a.Y + (b.Y - a.Y) * (x - a.X) / (b.X - a.X);
    }
}
