using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Machine;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Photometry;
using TenderKit.Intake.Words;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Cli.Commands;

/// <summary><c>light</c>: a photometric file by itself, or the light of one road layout.</summary>
internal static class LightCommand
{
    private static readonly string[] ArrangementWords = ["single", "staggered", "opposite"];

    private static readonly Option<string> File = new("--photometry") { Description = "Photometric file, LM-63 (.ies) or EULUMDAT (.ldt).", Required = true };
    private static readonly Option<double> Height = NumberOption.Make("--height-m", "Mounting height, m, 2 to 20; leave it out to see the file by itself.", QuantityKind.Length, 0);
    private static readonly Option<double> Spacing = NumberOption.Make("--spacing-m", "Spacing along one side, m, 2 to 120.", QuantityKind.Length, 0);
    private static readonly Option<double> Width = NumberOption.Make("--width-m", "Width of the carriageway, m, 0.5 to 40.", QuantityKind.Length, 0);
    private static readonly Option<double> Overhang = NumberOption.Make("--overhang-m", "Photometric centre beyond the near edge, m, -5 to 5.", QuantityKind.Length, 0);
    private static readonly Option<double> Tilt = NumberOption.Make("--tilt-deg", "Tilt of the street side upwards, degrees, 0 to 45.", QuantityKind.Degrees, 0);
    private static readonly Option<double> Rotate = NumberOption.Make("--rotate-deg", "Turn of each luminaire about its vertical axis, degrees, counter-clockwise from above.", QuantityKind.Degrees, 0);
    private static readonly Option<double> Maintenance = NumberOption.Make("--maintenance-factor", "Maintenance factor, above 0 to 1.", QuantityKind.Fraction, 1);
    private static readonly Option<double> Lanes = NumberOption.Make("--lanes", "Lanes of the carriageway, for luminance.", QuantityKind.Count, 2);
    private static readonly Option<string> ArrangementOption = new("--arrangement") { Description = "single, staggered or opposite.", DefaultValueFactory = _ => "single" };
    private static readonly Option<string?> Class = new("--class") { Description = "Class to be met, such as P4, C3 or M5 (road surface R3)." };

    public static Command Make(Terminal terminal)
    {
        ArrangementOption.AcceptOnlyFromAmong(ArrangementWords);
        var format = CommonOptions.Format();
        var command = new Command(
            "light",
            "Light of a photometric file and of one straight road. The street side, 0 degrees of an LM-63 file and C90 of a EULUMDAT file, looks straight across the road unless turned with --rotate-deg.")
        {
            File, Height, Spacing, Width, Overhang, ArrangementOption, Maintenance, Tilt, Rotate, Lanes, Class, format,
        };
        command.SetAction(parsed => Run(parsed, parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(ParseResult parsed, bool json, Terminal terminal)
    {
        var path = parsed.GetRequiredValue(File);
        if (!System.IO.File.Exists(path)) return Stop(terminal, $"the photometric file '{path}' does not exist");
        var read = PhotometryReader.Read(Path.GetFileName(path), System.IO.File.ReadAllBytes(path));
        terminal.Problems(read.Diagnostics);
        if (read.Value is not { } file) return ExitCodes.CouldNotRun;
        var root = LightJson.Analysis(file, PhotometricAnalysis.Of(file.Distribution));
        ClassVerdict? verdict = null;
        if (parsed.GetResult(Height) is { Implicit: false })
        {
            if (ClassOf(parsed.GetValue(Class), out var roadClass) is { } unknown) return Stop(terminal, unknown);
            if (SectionOf(parsed, roadClass, out var section) is { } odd) return Stop(terminal, odd);
            var quality = RoadEvaluation.Of(file.Distribution, section!, RoadSurface.R3, parsed.GetValue(Maintenance));
            verdict = quality.Carriageway.Verdict;
            LightJson.AddLayout(root, quality, verdict);
        }

        root["diagnostics"] = new JsonArray([.. read.Diagnostics.Select(BidJson.DiagnosticJson)]);
        if (json) terminal.Result(root);
        else Show(root, verdict, terminal);
        return verdict is { Met: false } ? ExitCodes.SomethingUnmet : ExitCodes.Good;
    }

    private static string? ClassOf(string? name, out RoadClass? roadClass)
    {
        roadClass = name is null ? null : RoadClasses.Find(name);
        if (name is null || roadClass is not null) return null;
        var nearest = Nearest.Of(name, RoadClasses.Names);
        return $"class '{name}' is not known" + (nearest is null ? "" : $"; did you mean '{nearest}'?") + $" Known: {string.Join(", ", RoadClasses.Names)}";
    }

    /// <summary>The section asked for, or what is wrong with it.</summary>
    private static string? SectionOf(ParseResult parsed, RoadClass? roadClass, out RoadSection? section)
    {
        section = null;
        (string Name, double Value, double Least, double Greatest)[] limits =
        [
            ("--height-m", parsed.GetValue(Height), 2, 20),
            ("--spacing-m", parsed.GetValue(Spacing), 2, 120),
            ("--width-m", parsed.GetValue(Width), 0.5, 40),
            ("--overhang-m", parsed.GetValue(Overhang), -5, 5),
            ("--tilt-deg", parsed.GetValue(Tilt), 0, 45),
            ("--rotate-deg", parsed.GetValue(Rotate), -360, 360),
            ("--maintenance-factor", parsed.GetValue(Maintenance), 0.01, 1),
            ("--lanes", parsed.GetValue(Lanes), 1, 8),
        ];
        foreach (var (name, value, least, greatest) in limits)
        {
            if (!(value >= least && value <= greatest))
                return string.Create(CultureInfo.InvariantCulture, $"{name} must lie between {least} and {greatest}, not {value}");
        }

        var layout = new RoadLayout(
            limits[2].Value, limits[1].Value, limits[0].Value, limits[3].Value, limits[4].Value,
            (Arrangement)Array.IndexOf(ArrangementWords, parsed.GetValue(ArrangementOption)));
        var straight = RoadSection.Of(layout, (int)limits[7].Value, roadClass);
        section = straight with { Rows = [.. straight.Rows.Select(r => r with { FacingDegrees = Angle.Normalised(r.FacingDegrees + limits[5].Value) })] };
        return null;
    }

    private static void Show(JsonObject root, ClassVerdict? verdict, Terminal terminal)
    {
        terminal.Table(["Result", "Value"], root.Where(p => p.Value is JsonValue).Select(p => (IReadOnlyList<string>)[p.Key, p.Value!.ToString()]));
        if (verdict is null) return;
        terminal.Table(
            ["Limit", "Required", "Reached", "Met"],
            verdict.Checks.Select(c => c.ToCheck("light", "Light", "")).Select(c => (IReadOnlyList<string>)[c.Property, c.RequiredText, c.OfferedText, c.Complies ? "yes" : "no"]));
        terminal.Result($"Class {verdict.Class.Name}: {(verdict.Met ? "met" : "not met")}; governed by {verdict.Governing.Limit}.");
    }

    private static int Stop(Terminal terminal, string message)
    {
        terminal.Progress("error: " + message);
        return ExitCodes.CouldNotRun;
    }
}
