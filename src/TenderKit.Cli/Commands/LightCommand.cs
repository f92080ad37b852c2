using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Light;
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
    private static readonly string[] ArrangementWords = ["single", "left", "staggered", "opposite", "median"];

    private static readonly Option<string> File = new("--photometry") { Description = "Photometric file, LM-63 (.ies) or EULUMDAT (.ldt).", Required = true };
    private static readonly Option<double> Height = NumberOption.Make("--height-m", "Mounting height, m, 2 to 20; leave it out to see the file by itself.", QuantityKind.Length, 0);
    private static readonly Option<double> Spacing = NumberOption.Make("--spacing-m", "Spacing along one side, m, 2 to 120; leave it out to find the widest that meets --class.", QuantityKind.Length, 0);
    private static readonly Option<double> Width = NumberOption.Make("--width-m", "Width of the carriageway, m, 0.5 to 40.", QuantityKind.Length, 0);
    private static readonly Option<double> Overhang = NumberOption.Make("--overhang-m", "Photometric centre beyond the near edge, m, -5 to 5.", QuantityKind.Length, 0);
    private static readonly Option<double> Tilt = NumberOption.Make("--tilt-deg", "Tilt of the street side upwards, degrees, 0 to 45.", QuantityKind.Degrees, 0);
    private static readonly Option<double> Rotate = NumberOption.Make("--rotate-deg", "Turn of each luminaire about its vertical axis, degrees, counter-clockwise from above.", QuantityKind.Degrees, 0);
    private static readonly Option<double> Maintenance = NumberOption.Make("--maintenance-factor", "Maintenance factor, above 0 to 1.", QuantityKind.Fraction, 1);
    private static readonly Option<double> LeastLevel = NumberOption.Make("--least-level", "Lowest level the driver can be dimmed to when the widest spacing is sought, fraction; 1 when it cannot.", QuantityKind.Fraction, 1);
    private static readonly Option<double> Lanes = NumberOption.Make("--lanes", "Lanes of the carriageway, for luminance.", QuantityKind.Count, 2);
    private static readonly Option<double> Median = NumberOption.Make("--median-m", "Width of the median with --arrangement median, m, 0 to 40; the result is one carriageway.", QuantityKind.Length, 0);
    private static readonly Option<double> NearSidewalk = NumberOption.Make("--near-sidewalk-m", "Width of a sidewalk at the near edge, m; 0 for none.", QuantityKind.Length, 0);
    private static readonly Option<double> FarSidewalk = NumberOption.Make("--far-sidewalk-m", "Width of a sidewalk at the far edge, m; 0 for none.", QuantityKind.Length, 0);
    private static readonly Option<string?> SidewalkClass = new("--sidewalk-class") { Description = "Class asked of the sidewalks, such as P5." };
    private static readonly Option<string> ArrangementOption = new("--arrangement") { Description = "single (near, right-hand side), left (far side), staggered, opposite, or median (two heads back to back).", DefaultValueFactory = _ => "single" };
    private static readonly Option<string?> Class = new("--class") { Description = "Class to be met, such as P4, C3 or M5 (road surface R3)." };

    private static readonly Option<string> Language = CommonOptions.Language();
    private static readonly Option<string?> Pdf = new("--pdf") { Description = "Also write the sheet of this layout as a PDF file (single, staggered or opposite)." };

    public static Command Make(Terminal terminal)
    {
        ArrangementOption.AcceptOnlyFromAmong(ArrangementWords);
        var format = CommonOptions.Format();
        var command = new Command(
            "light",
            "Light of a photometric file and of one straight road. The street side, 0 degrees of an LM-63 file and C90 of a EULUMDAT file, looks straight across the road unless turned with --rotate-deg.")
        {
            File, Height, Spacing, Width, Overhang, ArrangementOption, Median, Maintenance, Tilt, Rotate, Lanes, Class, LeastLevel,
            NearSidewalk, FarSidewalk, SidewalkClass, Pdf, Language, format,
        };
        command.Subcommands.Add(ClassCommand.Make(terminal));
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
            if (SectionOf(parsed, out var section) is { } odd) return Stop(terminal, odd);
            if (parsed.GetValue(Pdf) is not null && parsed.GetValue(ArrangementOption) is "left" or "median")
                return Stop(terminal, "--pdf draws single, staggered and opposite rows; leave it out or choose one of these");
            var quality = QualityOf(parsed, file.Distribution, section!, root);
            if (parsed.GetValue(Pdf) is { } pdf) WriteSheet(pdf, parsed, file, section!, quality, root, read.Diagnostics);
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

    /// <summary>Light at the spacing given, or at the widest spacing that meets the class when none was given.</summary>
    private static RoadQuality QualityOf(ParseResult parsed, LightDistribution distribution, RoadSection section, JsonObject root)
    {
        var maintenance = parsed.GetValue(Maintenance);
        if (parsed.GetResult(Spacing) is { Implicit: false })
        {
            root["spacingM"] = section.SpacingM;
            return RoadEvaluation.Of(distribution, section, RoadSurface.R3, maintenance);
        }

        var found = LuminanceSearch.Road(distribution, section, RoadSurface.R3, maintenance, new SpacingBounds(0.5, 1, 10, parsed.GetValue(LeastLevel)));
        root["spacingM"] = found.SpacingM;
        root["levelFraction"] = Math.Round(found.LevelFraction, 4);
        root["spacingSetBy"] = found.GoverningLimit;
        return found.Quality;
    }

    /// <summary>The section asked for, or what is wrong with it.</summary>
    private static string? SectionOf(ParseResult parsed, out RoadSection? section)
    {
        section = null;
        if (ClassOf(parsed.GetValue(Class), out var roadClass) is { } unknown) return unknown;
        if (ClassOf(parsed.GetValue(SidewalkClass), out var sidewalkClass) is { } unknownSidewalk) return unknownSidewalk;
        var searching = parsed.GetResult(Spacing) is not { Implicit: false };
        if (searching && roadClass is null) return "give --spacing-m, or --class to find the widest spacing that meets it";
        if (Limits(parsed, searching) is { } odd) return odd;
        var layout = new RoadLayout(
            parsed.GetValue(Width), searching ? parsed.GetValue(Height) : parsed.GetValue(Spacing), parsed.GetValue(Height), parsed.GetValue(Overhang), parsed.GetValue(Tilt), Arrangement.SingleSided);
        var scene = SceneOf(parsed, layout);
        section = scene.SectionOf(scene.Strips[0], (int)parsed.GetValue(Lanes), roadClass) with
        {
            NearSidewalks = Sidewalk("near sidewalk", parsed.GetValue(NearSidewalk), sidewalkClass),
            FarSidewalks = Sidewalk("far sidewalk", parsed.GetValue(FarSidewalk), sidewalkClass),
        };
        return null;
    }

    private static RoadScene SceneOf(ParseResult parsed, RoadLayout layout)
    {
        var rotation = parsed.GetValue(Rotate);
        return parsed.GetValue(ArrangementOption) switch
        {
            "left" => RoadScene.SingleSidedLeft(layout, rotation),
            "staggered" => RoadScene.Staggered(layout, rotation),
            "opposite" => RoadScene.Opposite(layout, rotation),
            "median" => RoadScene.TwinMedian(layout, parsed.GetValue(Median), rotation),
            _ => RoadScene.SingleSidedRight(layout, rotation),
        };
    }

    private static ImmutableArray<Sidewalk> Sidewalk(string name, double widthM, RoadClass? roadClass) => widthM > 0 ? [new Sidewalk(name, widthM, roadClass)] : [];

    private static string? Limits(ParseResult parsed, bool searching)
    {
        (string Name, double Value, double Least, double Greatest)[] limits =
        [
            ("--height-m", parsed.GetValue(Height), 2, 20),
            ("--spacing-m", searching ? 2 : parsed.GetValue(Spacing), 2, 120),
            ("--width-m", parsed.GetValue(Width), 0.5, 40),
            ("--overhang-m", parsed.GetValue(Overhang), -5, 5),
            ("--median-m", parsed.GetValue(Median), 0, 40),
            ("--near-sidewalk-m", parsed.GetValue(NearSidewalk), 0, 20),
            ("--far-sidewalk-m", parsed.GetValue(FarSidewalk), 0, 20),
            ("--tilt-deg", parsed.GetValue(Tilt), 0, 45),
            ("--rotate-deg", parsed.GetValue(Rotate), -360, 360),
            ("--maintenance-factor", parsed.GetValue(Maintenance), 0.01, 1),
            ("--least-level", parsed.GetValue(LeastLevel), 0.01, 1),
            ("--lanes", parsed.GetValue(Lanes), 1, 8),
        ];
        return limits.Where(l => !(l.Value >= l.Least && l.Value <= l.Greatest))
            .Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.Name} must lie between {l.Least} and {l.Greatest}, not {l.Value}"))
            .FirstOrDefault();
    }

    private static void WriteSheet(
        string path, ParseResult parsed, PhotometricFile file, RoadSection section, RoadQuality quality, JsonObject root, ImmutableArray<Diagnostic> diagnostics)
    {
        var arrangement = parsed.GetValue(ArrangementOption) switch { "staggered" => Arrangement.Staggered, "opposite" => Arrangement.Opposite, _ => Arrangement.SingleSided };
        var layout = new RoadLayout(
            section.WidthM, root["spacingM"]!.GetValue<double>(), parsed.GetValue(Height), parsed.GetValue(Overhang), parsed.GetValue(Tilt), arrangement);
        var content = new LightSheetContent(
            "Light of one road", file.FileName, file.Distribution, PhotometricAnalysis.Of(file.Distribution), layout, parsed.GetValue(Maintenance),
            quality.Carriageway.Illuminance, quality, section.Class, root["spacingSetBy"]?.GetValue<string>() ?? "", diagnostics,
            LevelFraction: root["levelFraction"]?.GetValue<double>() ?? 1, Lanes: section.Lanes, Surface: "R3, Q0 0.07", TurnDegrees: parsed.GetValue(Rotate))
        { Language = parsed.GetValue(Language)! };
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        BidFolder.Write(folder, [new BidDocument(Path.GetFileName(path), LightSheet.Make(content))]);
    }

    private static void Show(JsonObject root, ClassVerdict? verdict, Terminal terminal)
    {
        terminal.Table(["Result", "Value"], root.Where(p => p.Value is JsonValue).Select(p => (IReadOnlyList<string>)[KeyWords.Of(p.Key), p.Value!.ToString()]));
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
