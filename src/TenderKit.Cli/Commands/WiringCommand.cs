using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Machine;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>wiring</c>: drop, capacity and fuse of one circuit.</summary>
internal static class WiringCommand
{
    private const string Caution = "To be checked by a licensed electrician under the local code.";

    private static readonly double[] SectionsMm2 = [1.5, 2.5, 4, 6, 10, 16, 25];

    private static readonly Option<double> Current = NumberOption.Make("--current-a", "Working current, A, 0.01 to 500.", QuantityKind.Current);
    private static readonly Option<double> Length = NumberOption.Make("--length-m", "Length of the run, one way, m, 0.1 to 1000.", QuantityKind.Length);
    private static readonly Option<double> Area = NumberOption.Make("--area-mm2", "Cross-section of one conductor, mm2: 1.5, 2.5, 4, 6, 10, 16 or 25.", QuantityKind.Number);
    private static readonly Option<double> Voltage = NumberOption.Make("--voltage-v", "Voltage of the circuit, V, 1 to 1000.", QuantityKind.Voltage);
    private static readonly Option<double> ConductorTemperature = NumberOption.Make("--conductor-temperature-c", "Temperature the conductor works at, degC, -40 to 120.", QuantityKind.Temperature, 60);
    private static readonly Option<double> Ambient = NumberOption.Optional("--ambient-c", "Air round the cable, degC, for its capacity; left out: the design rule wiring.ambient.", QuantityKind.Temperature);
    private static readonly Option<string> Class = WordOption.Make("--conductor-class", "Copper conductor of IEC 60228: 2 stranded, 5 flexible, 5t flexible and tinned.", "2", "5", "5t");
    private static readonly Option<string> Insulation = WordOption.Make("--insulation", "PVC for 70 degC or cross-linked for 90 degC.", "pvc", "xlpe");
    private static readonly Option<string> Laid = WordOption.Make("--laid", "How the cable is laid: enclosed in pole or conduit (B2), clipped to a surface (C), in free air (E), buried (D).", "enclosed", "clipped", "free-air", "buried");
    private static readonly Option<double> Connectors = NumberOption.Make("--connector-pairs", "Pairs of plugs in the circuit, 0 to 20.", QuantityKind.Count, 0);
    private static readonly Option<double> DropLimit = NumberOption.Optional("--drop-limit", "Greatest drop, fraction; where it is given, more drop ends with exit code 1. Left out: the design rule wiring.drop_lamp, with a warning.", QuantityKind.Fraction);

    public static Command Make(Terminal terminal)
    {
        var format = CommonOptions.Format();
        var command = new Command("wiring", "Drop, current-carrying capacity and fuse of one circuit of two copper conductors. " + Caution)
        {
            Current, Length, Area, Voltage, ConductorTemperature, Ambient, Class, Insulation, Laid, Connectors, DropLimit, format,
        };
        command.SetAction(parsed => Run(parsed, parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(ParseResult parsed, bool json, Terminal terminal)
    {
        if (Limit.Problem(Limits(parsed)) is { } odd) return Stop(terminal, odd);
        if (!SectionsMm2.Contains(parsed.GetValue(Area)))
            return Stop(terminal, string.Create(CultureInfo.InvariantCulture, $"--area-mm2 is {parsed.GetValue(Area)}, not a standard cross-section: {string.Join(", ", SectionsMm2.Select(s => s.ToString(CultureInfo.InvariantCulture)))} mm2"));
        var found = new List<Diagnostic>();
        var rules = EnergyInputs.RulesOf(null, [], found);
        var inputs = InputsOf(parsed, rules);
        var result = CircuitScreen.Run(inputs);
        var limit = parsed.ValueOr(DropLimit, rules["wiring.drop_lamp"]);
        found.AddRange(Findings(inputs, result, limit));
        var root = GroundJson.Circuit(inputs, result);
        root["caution"] = Caution;
        root["diagnostics"] = new JsonArray([.. found.Select(BidJson.DiagnosticJson)]);
        terminal.Problems([.. found]);
        if (json) terminal.Result(root);
        else Show(root, terminal);
        return result.FuseA is null || (parsed.Given(DropLimit) && result.DropFraction > limit) ? ExitCodes.SomethingUnmet : ExitCodes.Good;
    }

    private static IEnumerable<Limit> Limits(ParseResult parsed) =>
    [
        new("--current-a", parsed.GetValue(Current), 0.01, 500),
        new("--length-m", parsed.GetValue(Length), 0.1, 1000),
        new("--voltage-v", parsed.GetValue(Voltage), 1, 1000),
        new("--conductor-temperature-c", parsed.GetValue(ConductorTemperature), -40, 120),
        new("--ambient-c", parsed.ValueOr(Ambient, 30), -40, 80),
        new("--connector-pairs", parsed.GetValue(Connectors), 0, 20),
        new("--drop-limit", parsed.ValueOr(DropLimit, 0.03), 0.001, 1),
    ];

    private static CircuitScreenInputs InputsOf(ParseResult parsed, RuleSet rules)
    {
        var area = parsed.GetValue(Area);
        var ohmPerKm = parsed.GetValue(Class) switch
        {
            "5" => Conductor.ResistanceOhmPerKm(ConductorClass.Flexible5, area),
            "5t" => Conductor.TinnedResistanceOhmPerKm(area),
            _ => Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, area),
        };
        var laid = parsed.GetValue(Laid) switch
        {
            "clipped" => CableRun.ClippedC,
            "free-air" => CableRun.FreeAirE,
            "buried" => CableRun.BuriedD,
            _ => CableRun.EnclosedB2,
        };
        return new CircuitScreenInputs(
            parsed.GetValue(Current), parsed.GetValue(Length), ohmPerKm, area, parsed.GetValue(Voltage), parsed.GetValue(ConductorTemperature), laid,
            parsed.GetValue(Insulation) == "pvc" ? CableInsulation.Pvc70 : CableInsulation.CrossLinked90,
            parsed.ValueOr(Ambient, rules["wiring.ambient"]),
            rules["wiring.fuse_factor"],
            (int)parsed.GetValue(Connectors),
            rules["wiring.connector_milliohm"] / 1000);
    }

    private static IEnumerable<Diagnostic> Findings(CircuitScreenInputs inputs, CircuitScreenResult result, double limit)
    {
        var hottest = inputs.Insulation == CableInsulation.Pvc70 ? 70 : 90;
        if (inputs.ConductorC > hottest)
            yield return Warning("TK401", $"the conductor at {inputs.ConductorC:0} degC is above the {hottest} degC its insulation stands; give the true temperature or take another insulation");
        if (result.DropFraction > limit)
            yield return Warning("TK402", $"the drop is {result.DropFraction * 100:0.0} %, more than {limit * 100:0.0} %; take a larger cross-section, a shorter run or a higher voltage");
        if (result.FuseA is null)
            yield return Warning("TK403", $"no standard fuse lies between {inputs.CurrentA * inputs.FuseFactor:0.0} A ({inputs.FuseFactor:0.00} times the current) and the cable's capacity of {result.CapacityA:0.0} A; take a larger cross-section");
    }

    private static Diagnostic Warning(string code, FormattableString message) => Diagnostic.Warning(code, message.ToString(CultureInfo.InvariantCulture));

    private static void Show(JsonObject root, Terminal terminal)
    {
        terminal.Table(["Result", "Value"], root.Where(p => p.Value is JsonValue && p.Key != "caution").Select(p => (IReadOnlyList<string>)[KeyWords.Of(p.Key), p.Value!.ToString()]));
        terminal.Result("Resistance is of one conductor, one way; the drop is there and back, 2 L I R. " + Caution);
    }

    private static int Stop(Terminal terminal, string message)
    {
        terminal.Progress("error: " + message);
        return ExitCodes.CouldNotRun;
    }
}
