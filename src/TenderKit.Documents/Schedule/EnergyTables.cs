using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The energy of the governing site: months, and the hand method beside the simulation.</summary>
internal static class EnergyTables
{
    public static TableBlock Months(SiteDesign site)
    {
        var (climate, simulated) = (site.Climate, site.Energy.Simulated);
        return new TableBlock(
            $"Kit {site.KitId} at site {site.Site.Id}: the mean day of each month",
            [
                new("Month", Share: 1.3), Number("Horizontal irradiation", "kWh/m²"), Number("On the module, cautious", "kWh/m²"), Number("Darkness", "h"),
                Number("Lamp at full power", "h"), Number("Supply", "Wh"), Number("Demand", "Wh"), Number("Lowest charge", "%"),
            ],
            [.. Enumerable.Range(0, 12).Select(m => Row.Of(
                Figures.Month(m + 1),
                Figures.Number(climate.Monthly.IrradiationKWhPerM2[m], 2),
                Figures.Number(climate.PlaneKWhPerM2[m], 2),
                Figures.Number(climate.DarkHours[m], 1),
                Figures.Number(climate.Lamp.MonthlyFullHours[m], 1),
                Figures.Number(simulated.MonthlySupplyWhPerDay[m], 0),
                Figures.Number(simulated.MonthlyDemandWhPerDay[m], 0),
                Figures.Number(simulated.LowestStateByMonth[m] * 100, 0)))])
        {
            KeepTogether = true,
        };
    }

    public static TableBlock HandBesideSimulation(SiteDesign site)
    {
        var (parts, energy, hand, inputs, run) = (site.Parts, site.Energy, site.Energy.Hand, site.Energy.HandInputs, site.Energy.Simulated);
        return new TableBlock(
            $"Kit {site.KitId} at site {site.Site.Id}: by hand and by simulation",
            [new("Quantity", Share: 3), new("By hand", Side: Side.End), new("Offered or simulated", Side: Side.End), new("How", Share: 3)],
            [
                Row.Of("Energy of the longest month's night, Wh", Figures.Number(inputs.NightlyWh, 0), Figures.Number(energy.NightlyWh, 0),
                    "lamp at its schedule and own use of the controller"),
                Row.Of("Battery, rated energy, Wh", Figures.Number(hand.BatteryRatedWh, 0), Figures.Number(parts.BatteryRatedWh, 0), BatteryHow(site)),
                Row.Of("Autonomy at end of life, nights", Figures.Number(inputs.AutonomyNights, 1), Figures.Number(energy.AutonomyNights, 1),
                    $"usable {Figures.Number(energy.UsableWh, 0)} Wh in the coldest month"),
                Row.Of("Array for the array-to-load ratio, Wp", Figures.Number(hand.ArrayRatioWp, 0), Figures.Number(parts.ArrayWp, 0), ArrayHow(site)),
                Row.Of("Array to refill from empty, Wp", Figures.Number(hand.ArrayRecoveryWp, 0), Figures.Number(parts.ArrayWp, 0),
                    $"within {Figures.Short(inputs.RecoveryDays)} days"),
                Row.Of("Worst month", Figures.Month(hand.DesignMonth), Figures.Month(run.WorstMonth),
                    "least irradiation for its demand; month of the lowest charge"),
                Row.Of("Dark nights a year: mean, upper 90 % bound", "–",
                    $"{Figures.Number(run.DarkNightsPerYear, 2)}, {Figures.Number(run.DarkNightsUpperBound, 2)}",
                    $"{Figures.Number(run.YearCount, 0)} years, hour by hour"),
                Row.Of("Dark nights: worst year, longest run", "–", $"{Figures.Number(run.WorstYearDarkNights, 0)}, "
                    + $"{Figures.Number(run.LongestDarkRunNights, 0)}", "a night is dark when any hour has less light than asked"),
                Row.Of("Lamp energy not served, %", "–", Figures.Number(run.LossOfLoadFraction * 100, 3), "of the energy demanded"),
                Row.Of("Days with full charge, %; longest run without, days", "–",
                    $"{Figures.Number(run.FullChargeDaysFraction * 100, 0)}; {Figures.Number(run.LongestWithoutFullDays, 0)}", "all years simulated"),
                Row.Of("Battery: full cycles a year; life expected, years", "–",
                    $"{Figures.Number(run.EquivalentFullCyclesPerYear, 0)}; {Figures.Number(energy.BatteryLifeYears, 1)}",
                    "cycles and age, at the temperature of the enclosure"),
            ])
        {
            KeepTogether = true,
        };
    }

    private static Column Number(string head, string unit) => new(head, unit, 1, Side.End);

    private static string BatteryHow(SiteDesign site)
    {
        var i = site.Energy.HandInputs;
        return $"{Figures.Short(i.AutonomyNights)} nights; depth {Figures.Percent(i.UsableDepthFraction)}, end of life {Figures.Percent(i.EndOfLifeFraction)}, "
            + $"temperature {Figures.Number(i.TemperatureFactor, 2)}, discharge {Figures.Number(i.DischargeEfficiency, 2)}";
    }

    private static string ArrayHow(SiteDesign site)
    {
        var i = site.Energy.HandInputs;
        return $"ratio {Figures.Short(i.ArrayToLoadRatio)}; derating {Figures.Number(i.ArrayDeratingFactor, 2)}, charging "
            + $"{Figures.Number(i.ChargeEfficiency, 2)}; "
            + $"{Figures.Number(i.MonthlyPlaneKWhPerM2[site.Energy.Hand.DesignMonth - 1], 2)} kWh/m² a day";
    }
}
