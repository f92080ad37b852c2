using TenderKit.Documents.Layout;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;

namespace TenderKit.Documents.Schedule;

/// <summary>The energy of the governing site: months, and the hand method beside the simulation.</summary>
internal static class EnergyTables
{
    public static TableBlock Months(SiteDesign site)
    {
        var (climate, simulated) = (site.Climate, site.Energy.Simulated);
        var own = site.Energy.OnOwnSeries?.Result;
        return new TableBlock(
            $"Kit {site.KitId} at site {site.Site.Id}: the mean day of each month",
            [new("", Share: 1), .. Enumerable.Range(1, 12).Select(m => new Column(Figures.MonthShort(m), Side: Side.End, FixedPt: 27.5))],
            [
                Month("Horizontal irradiation, kWh/m²", climate.Monthly.IrradiationKWhPerM2, 2), Month("On the module, as taken, kWh/m²", climate.PlaneKWhPerM2, 2),
                Month("Darkness, h", climate.DarkHours, 1), Month("Lamp, hours at full power", climate.Lamp.MonthlyFullHours, 1),
                Month("Supply, Wh", simulated.MonthlySupplyWhPerDay, 0), Month("Demand, Wh", simulated.MonthlyDemandWhPerDay, 0),
                Month("Lowest charge, %", simulated.LowestStateByMonth.Select(f => f * 100), 0),
                .. own is null ? Array.Empty<Row>() :
                [
                    Month("Supply on the hours supplied, Wh", own.MonthlySupplyWhPerDay, 0),
                    Month("Lowest charge on the hours supplied, %", own.LowestStateByMonth.Select(f => f * 100), 0),
                ],
            ])
        {
            KeepTogether = true,
            Compact = true,
        };
    }

    public static TableBlock HandBesideSimulation(SiteDesign site)
    {
        var (parts, energy, hand, inputs, run) = (site.Parts, site.Energy, site.Energy.Hand, site.Energy.HandInputs, site.Energy.Simulated);
        return new TableBlock(
            $"Kit {site.KitId} at site {site.Site.Id}: by hand, for a reader to repeat, beside what is offered",
            [new("Quantity", Share: 1.5), new("By hand", Side: Side.End, FixedPt: 48), new("Offered", Side: Side.End, FixedPt: 48), new("How", Share: 2.2)],
            [
                Row.Of("Energy of the longest month's night, Wh", Figures.Number(inputs.NightlyWh, 0), Figures.Number(energy.NightlyWh, 0),
                    "lamp at its schedule and own use of the controller"),
                Row.Of("Battery, rated energy, Wh", Figures.Number(hand.BatteryRatedWh, 0), Figures.Number(parts.BatteryRatedWh, 0), BatteryHow(site)),
                Row.Of("Autonomy at end of life, nights", Figures.Number(inputs.AutonomyNights, 1), Figures.Number(energy.AutonomyNights, 1),
                    $"usable {Figures.Number(energy.UsableWh, 0)} Wh in the coldest month, at the slow rate"),
                Row.Of("Array for the array-to-load ratio, Wp", Figures.Number(hand.ArrayRatioWp, 0), Figures.Number(parts.ArrayWp, 0), ArrayHow(site)),
                Row.Of("Array to refill from empty, Wp", Figures.Number(hand.ArrayRecoveryWp, 0), Figures.Number(parts.ArrayWp, 0),
                    $"within {Figures.Short(inputs.RecoveryDays)} days"),
                Row.Of("Worst month", Figures.Month(hand.DesignMonth), Figures.Month(run.WorstMonth),
                    "least irradiation for its demand; lowest charge simulated"),
            ])
        {
            KeepTogether = true,
            Compact = true,
        };
    }

    /// <summary>Which heading of a module on the lamp head governs.</summary>
    public static string Headings(SiteDesign site)
    {
        var why = site.Site.BearingDegrees is { } bearing
            ? $"the road runs {Figures.Short(bearing)}° from north, the heads face one side or the other of it"
            : "the direction of the road is not stated, so the heads may face any way";
        return $"The module lies on the head, {Figures.Short(site.Climate.Plane.TiltDegrees)}° from level; simulated at {Figures.Count(site.Energy.HeadingCount, "heading", "headings")} ({why}), "
            + $"of which the worst governs: facing {Figures.Short(site.Climate.Plane.AzimuthDegrees)}° from north; ";
    }

    /// <summary>What the simulation found, in two sentences.</summary>
    public static string Found(SiteDesign site, KitCurve? curve)
    {
        var (energy, run) = (site.Energy, site.Energy.Simulated);
        return $"In {Figures.Number(run.YearCount, 0)} simulated years: {Figures.Number(run.DarkNightsPerYear, 2)} dark nights a year in the mean, upper 90 % bound "
            + $"{Figures.Number(run.DarkNightsUpperBound, 2)}, worst year {Figures.Number(run.WorstYearDarkNights, 0)}, longest run "
            + $"{Figures.Number(run.LongestDarkRunNights, 0)}; {Figures.Percent(run.LossOfLoadFraction, 3)} of the lamp energy not served. Full charge on "
            + $"{Figures.Percent(run.FullChargeDaysFraction)} of the days, longest time without {Figures.Number(run.LongestWithoutFullDays, 0)} days; battery "
            + $"{Figures.Number(run.EquivalentFullCyclesPerYear, 0)} full cycles a year, expected life {Figures.Number(energy.BatteryLifeYears, 1)} years."
            + Recovery(run.Recovery, curve)
            + (energy.OnOwnSeries is { } proof ? " " + OwnSeriesCheck.Words(proof) : "");
    }

    /// <summary>How long the battery needs after a dark night, and what the smallest battery would be.</summary>
    private static string Recovery(RecoveryTimes recovery, KitCurve? curve)
    {
        var back = recovery.Count == 0
            ? ""
            : $" From its lowest after a dark night the battery is full again within {Figures.Number(recovery.LongestDays, 0)} days{(recovery.IsUnfinished ? ", once not before the years ended" : "")}.";
        return back + (curve?.SmallestBatteryWh is { } least
            ? $" With this array {Figures.Number(least, 0)} Wh of battery would just keep the dark nights allowed."
            : "");
    }

    private static Row Month(string name, IEnumerable<double> values, int decimals) => new([name, .. values.Select(v => Figures.Number(v, decimals))]);

    private static string BatteryHow(SiteDesign site)
    {
        var i = site.Energy.HandInputs;
        return $"{Figures.Short(i.AutonomyNights)} nights; depth {Figures.Percent(i.UsableDepthFraction)}, end of life {Figures.Percent(i.EndOfLifeFraction)}, "
            + $"temperature {Figures.Number(i.TemperatureFactor, 2)}, discharge {Figures.Number(i.DischargeEfficiency, 2)}; no gain for a slow rate";
    }

    private static string ArrayHow(SiteDesign site)
    {
        var i = site.Energy.HandInputs;
        return $"ratio {Figures.Short(i.ArrayToLoadRatio)}; derating {Figures.Number(i.ArrayDeratingFactor, 2)}, charging "
            + $"{Figures.Number(i.ChargeEfficiency, 2)}; "
            + $"{Figures.Number(i.MonthlyPlaneKWhPerM2[site.Energy.Hand.DesignMonth - 1], 2)} kWh/m² a day";
    }
}
