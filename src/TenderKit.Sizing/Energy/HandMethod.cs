using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Energy;

/// <summary>
/// Sizing by hand: nights of autonomy and worst-month peak sun hours. Structure of IEEE 1013, IEEE 1562 and the Sandia handbook
/// SAND87-7023 (from memory). Shown beside the simulation, never instead of it.
/// </summary>
public static class HandMethod
{
    /// <summary>
    /// Battery: nights x nightly energy / (depth x end of life x temperature x discharge efficiency).
    /// Array by ratio: ratio x demand / (peak sun hours x derating x charge x discharge efficiency), in the design month.
    /// Array by recovery: the month's demand and the store of the autonomy nights spread over the recovery days, through the same losses.
    /// Check value: 240 Wh, 3.42 h, derating 0.7, no other losses, ratio 1: 100.25 Wp.
    /// </summary>
    public static HandResult Size(HandInputs inputs)
    {
        RequireInputs(inputs);
        var month = DesignMonth(inputs);
        var sun = inputs.MonthlyPlaneKWhPerM2[month - 1];
        var demand = inputs.MonthlyDemandWh[month - 1];
        var perWp = sun * inputs.ArrayDeratingFactor * inputs.ChargeEfficiency * inputs.DischargeEfficiency;
        var store = inputs.AutonomyNights * inputs.NightlyWh;
        return new HandResult(
            month,
            store / (inputs.UsableDepthFraction * inputs.EndOfLifeFraction * inputs.TemperatureFactor * inputs.DischargeEfficiency),
            inputs.ArrayToLoadRatio * demand / perWp,
            (demand + store / inputs.RecoveryDays) / perWp);
    }

    private static int DesignMonth(HandInputs inputs)
    {
        var month = 1;
        for (var m = 2; m <= 12; m++)
        {
            if (Ratio(inputs, m) < Ratio(inputs, month)) month = m;
        }

        return month;
    }

    private static double Ratio(HandInputs inputs, int month) =>
        inputs.MonthlyDemandWh[month - 1] > 0 ? inputs.MonthlyPlaneKWhPerM2[month - 1] / inputs.MonthlyDemandWh[month - 1] : double.PositiveInfinity;

    private static void RequireInputs(HandInputs inputs)
    {
        Require.Positive(inputs.NightlyWh, nameof(inputs.NightlyWh));
        Require.Positive(inputs.AutonomyNights, nameof(inputs.AutonomyNights));
        Require.Positive(inputs.RecoveryDays, nameof(inputs.RecoveryDays));
        Require.Positive(inputs.ArrayToLoadRatio, nameof(inputs.ArrayToLoadRatio));
        foreach (var fraction in new[]
        {
            inputs.UsableDepthFraction, inputs.EndOfLifeFraction, inputs.TemperatureFactor, inputs.DischargeEfficiency, inputs.ChargeEfficiency, inputs.ArrayDeratingFactor,
        })
        {
            Require.InRange(fraction, 0.01, 1, nameof(inputs));
        }
    }
}
