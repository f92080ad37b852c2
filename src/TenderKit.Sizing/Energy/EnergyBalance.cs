using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy.Balance;

namespace TenderKit.Sizing.Energy;

/// <summary>
/// Hour by hour energy balance of one pole over all years of a sequence.
/// </summary>
/// <remarks>
/// <para>Array. Cell temperature Tc = Ta + (NOCT - 20) / 800 G; power at its maximum P = Wp G / 1000 (1 + gamma (Tc - 25)) x derating.
/// Tracking control passes P x efficiency. Pulse-width control passes current, Imp G / 1000 x derating, at the battery's charging voltage
/// (<see cref="ChargeVoltage"/>), never more than P; where the array's voltage is below the battery's, the current falls to nothing at 1.2 Vmp.
/// Either is held to the controller's rated current at that voltage.</para>
/// <para>Use. Own use first, then the lamp, from the array directly where both are at once, else from the store through the discharge efficiency.
/// The rest charges the store through the charge efficiency, unless the battery (air + enclosure rise) is colder than its least charging
/// temperature; lead-acid takes its last tenth slowly. What is not taken is dumped.</para>
/// <para>Store. Full is the capacity at end of life and the night's rate; the lamp may draw it down to 1 - depth x temperature factor, by the
/// battery temperature of the day: cold makes energy unavailable, it does not destroy it. At that level the lamp is disconnected until the
/// usable part is filled to the reconnect fraction; with reconnect 0 it takes what there is. Own use goes on below that level until the store is empty.
/// Self-discharge doubles per 10 K.</para>
/// <para>Order. The sequence is run as a ring, starting full on the first day of the month with the most sun per lamp hour, so that no winter
/// begins with a gift; all hours are run once. A night runs from noon to noon and counts for the year of its evening;
/// it is dark when any hour of it is served less than asked, by more than 1e-9 of the lamp's power.</para>
/// </remarks>
public static class EnergyBalance
{
    /// <summary>Runs the balance; the ledger closes: In = Lamp + OwnUse + Losses + Dumped + StoreChange.</summary>
    /// <param name="years">Irradiation on the plane and the weather it came from.</param>
    /// <param name="lamp">Lamp hours of a 365-day year.</param>
    /// <param name="system">The pole's power system.</param>
    public static EnergyResult Run(PlaneYears years, LampHours lamp, PowerSystem system)
    {
        RequireInputs(years, lamp, system);
        return Run<OneLane, bool>(years, lamp, [system], StartDay(years, lamp))[0];
    }

    /// <summary>
    /// Runs the balance, but breaks off without a result once more nights were dark than are allowed in all the years: the mean is then above what is
    /// allowed, and so is its upper bound, whatever comes after.
    /// </summary>
    /// <param name="mostDarkNightsPerYear">Dark nights a year allowed.</param>
    /// <returns>The result of <see cref="Run(PlaneYears, LampHours, PowerSystem)"/>, or null with the dark nights found so far over the number of years.</returns>
    public static (EnergyResult? Result, double AtLeastDarkNightsPerYear) RunUnlessDark(PlaneYears years, LampHours lamp, PowerSystem system, double mostDarkNightsPerYear)
    {
        RequireInputs(years, lamp, system);
        var startDay = StartDay(years, lamp);
        var kernel = new BalanceKernel<OneLane, bool>(years, lamp, [system]);
        using var days = kernel.Days;
        if (kernel.Run(startDay, mostDarkNightsPerYear * years.Weather.YearCount, out var dark) is not { } end) return (null, (double)dark / years.Weather.YearCount);
        var result = new BalanceSummary<OneLane, bool>(kernel, 0, startDay, end[0]).Result();
        return (result, result.DarkNightsPerYear);
    }

    /// <summary>
    /// Runs the balance for several candidates under the same years and lamp hours, four at a time where the processor has vectors of 256 bits.
    /// The results are those of <see cref="Run"/>, to the last bit, in the order of the candidates.
    /// </summary>
    /// <param name="systems">Power systems; nothing in them needs to be alike.</param>
    public static ImmutableArray<EnergyResult> RunMany(PlaneYears years, LampHours lamp, IReadOnlyList<PowerSystem> systems)
    {
        foreach (var system in systems) RequireInputs(years, lamp, system);
        if (systems.Count == 0) return [];
        var startDay = StartDay(years, lamp);
        var results = ImmutableArray.CreateBuilder<EnergyResult>(systems.Count);
        foreach (var group in systems.Chunk(FourLanes.Count))
        {
            if (Vector256.IsHardwareAccelerated && group.Length > 1) results.AddRange(Run<FourLanes, Vector256<double>>(years, lamp, group, startDay));
            else foreach (var system in group) results.AddRange(Run<OneLane, bool>(years, lamp, [system], startDay));
        }

        return results.MoveToImmutable();
    }

    /// <summary>One group; lanes left over repeat its last candidate.</summary>
    internal static EnergyResult[] Run<T, TMask>(PlaneYears years, LampHours lamp, ReadOnlySpan<PowerSystem> group, int startDay)
        where T : struct, ILanes<T, TMask>
        where TMask : struct
    {
        var lanes = new PowerSystem[T.Count];
        for (var i = 0; i < lanes.Length; i++) lanes[i] = group[Math.Min(i, group.Length - 1)];
        var kernel = new BalanceKernel<T, TMask>(years, lamp, lanes);
        using var days = kernel.Days;
        var end = kernel.Run(startDay);
        var results = new EnergyResult[group.Length];
        for (var i = 0; i < results.Length; i++) results[i] = new BalanceSummary<T, TMask>(kernel, i, startDay, end[i]).Result();
        return results;
    }

    /// <summary>First day (0 to 364) of the month with the most plane irradiation per lamp hour, the first of equals.</summary>
    internal static int StartDay(PlaneYears years, LampHours lamp)
    {
        var sun = DayShapes.Of(years).MonthlyPlaneWhPerM2;
        var best = 0;
        for (var m = 1; m < 12; m++)
        {
            if (Plenty(m) > Plenty(best) * (1 + 1e-12)) best = m;
        }

        return MonthDays.FirstDayIndex(best + 1);

        double Plenty(int m) => sun[m] / MonthDays.Count(m + 1) / Math.Max(lamp.MonthlyFullHours[m], 1e-3);
    }

    private static void RequireInputs(PlaneYears years, LampHours lamp, PowerSystem system)
    {
        var hours = years.Weather.YearCount * MonthDays.HoursCount;
        if (hours == 0 || years.PlaneWhPerM2.Length != hours || years.Weather.AirC.Length != hours) throw new ArgumentException("plane and weather must hold every hour of their years", nameof(years));
        if (lamp.HourFraction.Length != MonthDays.HoursCount) throw new ArgumentException("8760 lamp hours are needed", nameof(lamp));
        var (array, battery, control, _) = system;
        Require.NotNegative(system.LampInputW, nameof(system.LampInputW));
        Require.Positive(array.ArrayWp, nameof(array.ArrayWp));
        Require.Positive(array.MaximumPowerVoltageV, nameof(array.MaximumPowerVoltageV));
        Require.Positive(array.MaximumPowerCurrentA, nameof(array.MaximumPowerCurrentA));
        Require.InRange(array.PowerCoefficientPerK, -0.02, 0, nameof(array.PowerCoefficientPerK));
        Require.InRange(array.NoctC, 20, 80, nameof(array.NoctC));
        Require.InRange(array.DeratingFactor, 0.01, 1, nameof(array.DeratingFactor));
        Require.Positive(battery.RatedWh, nameof(battery.RatedWh));
        Require.Positive(battery.NominalVoltageV, nameof(battery.NominalVoltageV));
        Require.InRange(battery.UsableDepthFraction, 0.01, 1, nameof(battery.UsableDepthFraction));
        Require.InRange(battery.EndOfLifeFraction, 0.01, 1, nameof(battery.EndOfLifeFraction));
        Require.InRange(battery.ChargeEfficiency, 0.1, 1, nameof(battery.ChargeEfficiency));
        Require.InRange(battery.DischargeEfficiency, 0.1, 1, nameof(battery.DischargeEfficiency));
        Require.InRange(battery.SelfDischargePerMonthFraction, 0, 0.5, nameof(battery.SelfDischargePerMonthFraction));
        Require.InRange(battery.AbsorptionTimeH, 1, 24, nameof(battery.AbsorptionTimeH));
        Require.Positive(control.ChargeCurrentA, nameof(control.ChargeCurrentA));
        Require.InRange(control.Efficiency, 0.1, 1, nameof(control.Efficiency));
        Require.NotNegative(control.OwnUseW, nameof(control.OwnUseW));
        Require.InRange(control.ReconnectFraction, 0, 1, nameof(control.ReconnectFraction));
    }
}
