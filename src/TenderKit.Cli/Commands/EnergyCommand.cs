using System.CommandLine;
using System.Globalization;
using TenderKit.Documents.Machine;
using TenderKit.Sizing.Basics;
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
        var climate = HasErrors(found) ? null : EnergyInputs.ClimateOf(parsed, rules, found);
        if (climate is null || HasErrors(found)) return StopFor(found, terminal);

        var pole = PoleStudy.YearsOf(EnergyInputs.PoleOf(parsed, climate, rules));
        found.AddRange(ScheduleHours.Examine(pole.Inputs.Schedule, pole.Nights, Place.Nowhere));
        var root = EnergyJson.Years(pole);
        var template = EnergyInputs.SystemOf(parsed, rules);
        var search = SearchOf(parsed);
        var system = search.Array || search.Battery ? Find(pole, template, ref search, found) : template;
        var energy = system is null ? null : PoleStudy.EnergyOf(pole, system);
        if (energy is not null)
        {
            found.AddRange(EnergyFindings.Examine(pole.Years, energy.System, Place.Nowhere));
            found.AddRange(SeldomFull(energy, rules));
            EnergyJson.AddSystem(root, energy);
        }

        var kept = energy is not null && (!(search.Array || search.Battery || parsed.Given(EnergyOptions.DarkNights)) || search.Target.KeptBy(energy.Result));
        EnergyJson.AddSearch(root, search);
        root["keepsTarget"] = energy is not null && search.Target.KeptBy(energy.Result);
        root["rules"] = EnergyJson.Rules(EnergyInputs.Used(parsed, rules, climate, template));
        root["diagnostics"] = EnergyJson.Diagnostics(found);
        terminal.Problems([.. found]);
        if (json) terminal.Result(root);
        else EnergyText.Show(pole, energy, search, terminal);
        return kept ? ExitCodes.Good : ExitCodes.SomethingUnmet;
    }

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
