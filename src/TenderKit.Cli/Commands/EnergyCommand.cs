using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using TenderKit.Documents.Machine;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>energy</c>: sun, load and battery of one pole at one place through every night of many years; sizes left out are found.</summary>
internal static class EnergyCommand
{
    private const double ArrayStepWp = 1;
    private const double BatteryStepAh = 1;

    public static Command Make(Terminal terminal)
    {
        var format = CommonOptions.Format();
        var command = new Command(
            "energy",
            "Energy of one pole at one place through every night: hour by hour over synthetic years, with the margins of the design rules. "
            + "Leave out --array-wp, --battery-ah or both to have them found for --dark-nights-per-year.");
        foreach (var option in EnergyOptions.All) command.Options.Add(option);
        command.Options.Add(format);
        command.SetAction(parsed => Run(parsed, parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(ParseResult parsed, bool json, Terminal terminal)
    {
        if (EnergyOptions.Problem(parsed) is { } odd) return Stop(terminal, odd);
        var found = new List<Diagnostic>();
        var rules = EnergyInputs.RulesOf(parsed, found);
        HourlySeries? series = null;
        var climate = HasErrors(found) ? null : EnergyInputs.ClimateOf(parsed, rules, found, out series);
        if (climate is null || HasErrors(found)) return StopFor(found, terminal);

        var pole = PoleStudy.YearsOf(EnergyInputs.PoleOf(parsed, climate, rules));
        found.AddRange(ScheduleHours.Examine(pole.Inputs.Schedule, pole.Nights, Place.Nowhere));
        var template = EnergyInputs.SystemOf(parsed, rules);
        var search = SearchOf(parsed);
        var (planes, study, system) = (EnergyInputs.PlanesOf(parsed, pole.Inputs.Plane), (HeadingStudy?)null, (PowerSystem?)null);
        if (planes.Length > 1) (pole, study, system) = WorstHeading(pole, planes, template, ref search, found);
        else system = SystemOf(pole, template, ref search, found);
        var root = EnergyJson.Years(pole);
        var energy = system is null ? null : PoleStudy.EnergyOf(pole, system);
        var proof = energy is null || series is null ? null : Proof(series, pole, energy.System);
        if (energy is not null)
        {
            found.AddRange(EnergyFindings.Examine(pole.Years, energy.System, Place.Nowhere));
            found.AddRange(SeldomFull(energy, rules));
            EnergyJson.AddSystem(root, energy);
            if (proof is not null) root["onOwnSeries"] = EnergyJson.OwnSeries(proof);
            if (study is not null) root["headings"] = EnergyJson.Headings(study);
        }

        var kept = energy is not null && (!(search.Array || search.Battery || parsed.Given(EnergyOptions.DarkNights)) || search.Target.KeptBy(energy.Result));
        EnergyJson.AddSearch(root, search);
        root["keepsTarget"] = energy is not null && search.Target.KeptBy(energy.Result);
        root["rules"] = EnergyJson.Rules(EnergyInputs.Used(parsed, rules, climate, template));
        root["diagnostics"] = EnergyJson.Diagnostics(found);
        terminal.Problems([.. found]);
        if (json) terminal.Result(root);
        else EnergyText.Show(pole, energy, search, proof, study, terminal);
        return kept ? ExitCodes.Good : ExitCodes.SomethingUnmet;
    }

    private static PowerSystem? SystemOf(PoleYears pole, PowerSystem template, ref EnergySearch search, List<Diagnostic> found) =>
        search.Array || search.Battery ? Find(pole, template, ref search, found) : template;

    /// <summary>
    /// Tries every heading: sizes are found for the heading of the darkest month first, then for whichever proves worse, until the worst keeps them.
    /// </summary>
    private static (PoleYears Pole, HeadingStudy? Study, PowerSystem? System) WorstHeading(
        PoleYears first, ImmutableArray<PlaneOrientation> planes, PowerSystem template, ref EnergySearch search, List<Diagnostic> found)
    {
        var pole = planes.Select(plane => PoleStudy.Turned(first, plane)).MinBy(LeastSupply)!;
        for (var round = 1; ; round++)
        {
            if (SystemOf(pole, template, ref search, found) is not { } system) return (pole, null, null);
            var inputs = pole.Inputs;
            var study = HeadingStudy.Run(pole.Years.Weather, pole.Lamp, system, planes, inputs.AlbedoFraction, inputs.ShadedFraction);
            var isWorst = study.Worst.Plane == inputs.Plane;
            if (!isWorst) pole = PoleStudy.Turned(pole, study.Worst.Plane);
            if (isWorst || round > planes.Length || search is { Array: false, Battery: false } || search.Target.KeptBy(study.Worst.Result)) return (pole, study, system);
        }
    }

    /// <summary>Irradiation over lamp hours in the worst month.</summary>
    private static double LeastSupply(PoleYears pole) =>
        pole.SimulatedPlaneKWhPerM2.Zip(pole.LoadWh, (sun, load) => load > 0 ? sun / load : double.PositiveInfinity).Min();

    private static SeriesProof Proof(HourlySeries series, PoleYears pole, PowerSystem system) => SeriesProof.Of(
        series, pole.Inputs.CautiousFactor, pole.Inputs.Plane, pole.Inputs.AlbedoFraction, pole.Inputs.ShadedFraction, pole.Lamp, system);

    private static EnergySearch SearchOf(ParseResult parsed) => new(
        !parsed.Given(EnergyOptions.ArrayWp),
        !parsed.Given(EnergyOptions.BatteryAh),
        EnergyOptions.TargetOf(parsed),
        [],
        parsed.GetValue(EnergyOptions.PricePerWp),
        parsed.GetValue(EnergyOptions.PricePerWh));

    /// <summary>What was left out, found; null with TK340 when nothing within reason keeps the target.</summary>
    private static PowerSystem? Find(PoleYears pole, PowerSystem template, ref EnergySearch search, List<Diagnostic> found)
    {
        var steps = new SizeSteps(ArrayStepWp, BatteryStepAh * template.Battery.NominalVoltageV);
        var point = search switch
        {
            { Array: false } => EqualReliability.SmallestBattery(pole.Years, pole.Lamp, template, search.Target, steps, template.Array.ArrayWp),
            { Battery: false } => EqualReliability.SmallestArray(pole.Years, pole.Lamp, template, search.Target, steps, template.Battery.RatedWh),
            _ => null,
        };
        if (search is { Array: true, Battery: true })
        {
            search = search with { Curve = EqualReliability.Curve(pole.Years, pole.Lamp, template, search.Target, steps) };
            point = EqualReliability.LeastCost(search.Curve, search.PricePerWp, search.PricePerWh);
        }

        if (point is null) found.Add(NothingKeeps(search));
        return point?.System;
    }

    private static Diagnostic NothingKeeps(EnergySearch search)
    {
        var (tried, cure) = search switch
        {
            { Array: false } => ($"no battery up to {EqualReliability.MostNights} nights of use", "give a larger array"),
            { Battery: false } => ($"no array up to {EqualReliability.MostArrays} times what the worst month needs", "give a larger battery"),
            _ => ($"no array up to 3.8 times what the worst month needs, with any battery up to {EqualReliability.MostNights} nights of use,", "try a steeper --tilt-deg"),
        };
        return Diagnostic.Error("TK340", string.Create(
            CultureInfo.InvariantCulture,
            $"{tried} keeps the target of {search.Target.DarkNightsPerYear} dark nights a year; {cure}, ask for less light or allow more dark nights"));
    }

    private static IEnumerable<Diagnostic> SeldomFull(PoleEnergy energy, RuleSet rules)
    {
        var (days, limit) = (energy.Result.LongestWithoutFullDays, rules["battery.days_to_full"]);
        if (energy.System.Battery.Chemistry == BatteryChemistry.LithiumIronPhosphate || days <= limit) yield break;
        yield return Diagnostic.Warning("TK331", string.Create(
            CultureInfo.InvariantCulture, $"the lead-acid battery goes {days} days without a full charge, more than {limit:0} days; it may sulphate: give it more array"));
    }

    private static bool HasErrors(List<Diagnostic> found) => found.Any(d => d.Severity == Severity.Error);

    private static int StopFor(List<Diagnostic> found, Terminal terminal)
    {
        terminal.Problems([.. found]);
        return ExitCodes.CouldNotRun;
    }

    private static int Stop(Terminal terminal, string message)
    {
        terminal.Progress("error: " + message);
        return ExitCodes.CouldNotRun;
    }
}
