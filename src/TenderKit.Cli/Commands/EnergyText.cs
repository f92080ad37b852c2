using System.Globalization;
using TenderKit.Documents.Machine;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;

namespace TenderKit.Cli.Commands;

/// <summary>The result of <c>energy</c> for people.</summary>
internal static class EnergyText
{
    public static void Show(PoleYears pole, PoleEnergy? energy, EnergySearch search, SeriesProof? proof, HeadingStudy? study, Terminal terminal)
    {
        var inputs = pole.Inputs;
        terminal.Result(Text($"Climate: {inputs.Climate.Source}."));
        terminal.Result(Text($"Grade: {ClimateGrades.Words(inputs.Climate.Grade)}; irradiation simulated at {inputs.CautiousFactor:0.00} of it (rule {ClimateGrades.RuleId(inputs.Climate.Grade)}). Module tilt {inputs.Plane.TiltDegrees:0.#} degrees, facing {inputs.Plane.AzimuthDegrees:0.#} degrees from north."));
        terminal.Result(Text($"Schedule {inputs.Schedule.Name}: {ScheduleWords.Of(inputs.Schedule)}."));
        Months(pole, energy?.Result, terminal);
        if (search is { Array: true, Battery: true }) Curve(search, terminal);
        if (energy is null) return;
        terminal.Table(["Result", "Value", "Unit"], Scalars(pole, energy, search));
        if (study is not null) Headings(study, terminal);
        if (proof is not null) OwnSeries(energy.Result, proof, terminal);
        terminal.Result("Figures of the battery type and the controller are common practice; a bid takes them from the catalogue. Have the design checked by a licensed engineer and by local codes.");
    }

    private static void Months(PoleYears pole, EnergyResult? result, Terminal terminal)
    {
        string[] headings =
        [
            "Month", "Outside the air Wh/m2", "Horizontal Wh/m2", "Module plane Wh/m2", "Simulated plane Wh/m2", "Night h", "Lamp Wh a night",
            .. result is null ? Array.Empty<string>() : ["Use Wh a day", "Supply Wh a day", "Lowest charge %"],
        ];
        terminal.Table(headings, Enumerable.Range(0, 12).Select(m => (IReadOnlyList<string>)
        [
            CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedMonthName(m + 1),
            Text($"{pole.ExtraterrestrialKWhPerM2[m] * 1000:0}"),
            Text($"{pole.Inputs.Climate.IrradiationKWhPerM2[m] * 1000:0}"),
            Text($"{pole.PlaneKWhPerM2[m] * 1000:0}"),
            Text($"{pole.SimulatedPlaneKWhPerM2[m] * 1000:0}"),
            Text($"{pole.NightH[m]:0.00}"),
            Text($"{pole.LoadWh[m]:0.0}"),
            .. result is null
                ? Array.Empty<string>()
                : [Text($"{result.MonthlyDemandWhPerDay[m]:0.0}"), Text($"{result.MonthlySupplyWhPerDay[m]:0.0}"), Text($"{result.LowestStateByMonth[m] * 100:0}")],
        ]));
    }

    private static void Headings(HeadingStudy study, Terminal terminal)
    {
        terminal.Result("The module faces where the road dictates; the worst heading governs and is the one shown above:");
        terminal.Table(["Facing", "Tilt", "Plane Wh/m2 a day, worst month", "Dark nights a year", "Not served %", "Lowest charge %"], study.Headings.Select(h => (IReadOnlyList<string>)
        [
            Text($"{h.Plane.AzimuthDegrees:0}{(ReferenceEquals(h, study.Worst) ? " governs" : "")}"), Text($"{h.Plane.TiltDegrees:0.#}"), Text($"{h.PlaneKWhPerM2.Min() * 1000:0}"),
            Text($"{h.Result.DarkNightsPerYear:0.00}"), Text($"{h.Result.LossOfLoadFraction * 100:0.000}"), Text($"{h.Result.LowestStateByMonth.Min() * 100:0}"),
        ]));
    }

    private static void OwnSeries(EnergyResult synthetic, SeriesProof proof, Terminal terminal)
    {
        terminal.Result(Text($"The same system on the hours of the file, {proof.Kind}: {proof.Caution}."));
        terminal.Table(["Result", "Synthetic years", "The file's own"], [.. ProofRows(synthetic, proof)]);
    }

    private static IEnumerable<IReadOnlyList<string>> ProofRows(EnergyResult synthetic, SeriesProof proof)
    {
        var own = proof.Result;
        yield return ["years", Text($"{synthetic.YearCount}"), Text($"{proof.Years}")];
        yield return ["dark nights a year", Text($"{synthetic.DarkNightsPerYear:0.00}"), Text($"{own.DarkNightsPerYear:0.00}")];
        yield return ["90 % range of that", RangeOf(synthetic), RangeOf(own)];
        yield return ["lamp energy not served, %", Text($"{synthetic.LossOfLoadFraction * 100:0.000}"), Text($"{own.LossOfLoadFraction * 100:0.000}")];
        yield return ["longest run of dark nights", Text($"{synthetic.LongestDarkRunNights}"), Text($"{own.LongestDarkRunNights}")];
        yield return ["lowest charge, %", Text($"{synthetic.LowestStateByMonth.Min() * 100:0}"), Text($"{own.LowestStateByMonth.Min() * 100:0}")];
    }

    private static string RangeOf(EnergyResult result) => Text($"{result.DarkNightRange.LowPerYear:0.00} to {result.DarkNightRange.HighPerYear:0.00}");

    private static void Curve(EnergySearch search, Terminal terminal)
    {
        terminal.Result(Text($"Arrays and batteries of equal reliability ({Target(search)}), prices {search.PricePerWp:0.###} a Wp and {search.PricePerWh:0.###} a Wh:"));
        terminal.Table(["Array Wp", "Battery Ah", "Battery Wh", "Dark nights a year", "Price"], search.Curve.Select(p => (IReadOnlyList<string>)
        [
            Text($"{p.ArrayWp:0}"), Text($"{p.BatteryAh:0}"), Text($"{p.BatteryWh:0}"), Text($"{p.Result.DarkNightsPerYear:0.00}"),
            Text($"{p.Price(search.PricePerWp, search.PricePerWh):0.00}"),
        ]));
    }

    private static IEnumerable<IReadOnlyList<string>> Scalars(PoleYears pole, PoleEnergy energy, EnergySearch search)
    {
        var (array, battery, control, _) = energy.System;
        var result = energy.Result;
        yield return ["array" + (search.Array ? ", found" : ""), Text($"{array.ArrayWp:0.#}"), "Wp"];
        yield return ["battery" + (search.Battery ? ", found" : ""), Text($"{battery.RatedWh / battery.NominalVoltageV:0.#}"), Text($"Ah at {battery.NominalVoltageV:0.##} V, {battery.Chemistry}")];
        yield return ["controller", control.Kind == ControlKind.Tracking ? "mppt" : "pwm", Text($"{control.ChargeCurrentA:0.#} A charge")];
        yield return ["years simulated", Text($"{pole.Inputs.Sequence.YearCount}"), Text($"years, seed {pole.Inputs.Sequence.Seed}")];
        yield return ["lamp energy not served", Text($"{result.LossOfLoadFraction * 100:0.000}"), "%"];
        yield return ["dark nights", Text($"{result.DarkNightsPerYear:0.00}"), Text($"a year; 90 % range {result.DarkNightRange.LowPerYear:0.00} to {result.DarkNightRange.HighPerYear:0.00}")];
        yield return ["dark nights of the worst year", Text($"{result.WorstYearDarkNights}"), "nights"];
        yield return ["longest run of dark nights", Text($"{result.LongestDarkRunNights}"), "nights"];
        yield return RecoveryRow(result.Recovery);
        yield return ["autonomy at end of life, coldest month", Text($"{energy.AutonomyNights:0.00}"), "nights"];
        yield return ["equivalent full cycles", Text($"{result.EquivalentFullCyclesPerYear:0}"), "a year"];
        yield return ["days with full charge", Text($"{result.FullChargeDaysFraction * 100:0.0}"), Text($"%; longest run without {result.LongestWithoutFullDays} days")];
        yield return ["energy balance closes to", Text($"{energy.BalanceErrorFraction:0.0e+0}"), "of the energy in"];
        if (search.Array || search.Battery) yield return ["sized for", Text($"{search.Target.DarkNightsPerYear:0.##}"), Target(search)];
    }

    private static IReadOnlyList<string> RecoveryRow(RecoveryTimes recovery) => recovery.Count == 0
        ? ["recovery from a dark night", "none", "no dark night seen"]
        : ["recovery from a dark night", Text($"{recovery.LongestDays:0}"), Text($"days to full charge at the longest; mean {recovery.MeanDays:0.0} days{(recovery.IsUnfinished ? "; not full again when the years end" : "")}")];

    private static string Target(EnergySearch search) =>
        Text($"at most {search.Target.DarkNightsPerYear:0.##} dark nights a year by the {(search.Target.ByUpperBound ? "upper 90 % bound" : "mean")}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
