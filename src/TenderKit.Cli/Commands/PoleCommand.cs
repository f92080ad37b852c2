using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Machine;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>pole</c>: wind on one pole, its section and its depth in the ground.</summary>
internal static class PoleCommand
{
    public const string Caution = "A screening calculation, to be checked and signed by a licensed structural engineer under the local code.";

    private const double AnyYieldMPa = 235;

    private static readonly Option<string> Standard = WordOption.Make("--standard", "Wind by EN 1991-1-4 or by ASCE 7-16.", "en", "asce");
    private static readonly Option<double> WindSpeed = NumberOption.Make("--wind-m-per-s", "Wind speed, m/s, 10 to 100.", QuantityKind.Speed);
    private static readonly Option<string> Definition = WordOption.Make("--wind-definition", "What the speed is: that of the standard (EN: mean of 10 minutes in 50 years; ASCE: 3-second gust in 700 years), or another, which is converted and the factor shown.", "standard", "mean-10-min-50", "mean-1-h-50", "gust-3-s-50", "gust-3-s-700");
    private static readonly Option<string> Terrain = WordOption.Make("--terrain", "Terrain category of EN 1991-1-4; with ASCE 7 also exposure B, C or D.", "II", "0", "I", "III", "IV", "B", "C", "D");
    private static readonly Option<double> Height = NumberOption.Make("--height-m", "Height of the shaft above ground, m, 1 to 20.", QuantityKind.Length);
    private static readonly Option<double> Top = NumberOption.Make("--top-mm", "Outer diameter at the top, mm, 20 to 500.", QuantityKind.Number);
    private static readonly Option<double> Base = NumberOption.Make("--base-mm", "Outer diameter at the ground, mm, 30 to 800.", QuantityKind.Number);
    private static readonly Option<double> Wall = NumberOption.Make("--wall-mm", "Wall, mm, 1 to 25.", QuantityKind.Number);
    private static readonly Option<double> Yield = NumberOption.Optional("--yield-mpa", "Yield strength, MPa, 150 to 900; left out: 235 MPa. Where it is given, a pole above its strength ends with exit code 1.", QuantityKind.Number);
    private static readonly Option<double> Panel = NumberOption.Make("--panel-m2", "Area of the modules, m2, 0 to 20.", QuantityKind.Area, 0);
    private static readonly Option<double> PanelTilt = NumberOption.Make("--panel-tilt-deg", "Tilt of the modules, degrees, 0 to 90.", QuantityKind.Degrees, 15);
    private static readonly Option<double> PanelHeight = NumberOption.Optional("--panel-height-m", "Middle of the modules above ground, m; left out: the height.", QuantityKind.Length);
    private static readonly Option<double> LeastProjection = NumberOption.Make("--least-projection", "Least share of the modules' area taken square to the wind whatever the tilt, fraction; 1 takes all of it, which covers uplift and turning. A bid takes the design rule structure.module_least_projection.", QuantityKind.Fraction, 1);
    private static readonly Option<double> Luminaire = NumberOption.Make("--luminaire-m2", "Area of the luminaire seen by the wind, m2, 0 to 5.", QuantityKind.Area, 0);
    private static readonly Option<double> LuminaireHeight = NumberOption.Optional("--luminaire-height-m", "Luminaire above ground, m; left out: the height.", QuantityKind.Length);
    private static readonly Option<double> Soil = NumberOption.Make("--soil-kpa-per-m", "Allowable lateral bearing of the soil per metre of depth, kPa/m, 1 to 200; dense 31.4, medium 23.6, soft 15.7.", QuantityKind.Number, 15.7);
    private static readonly Option<double> Embedded = NumberOption.Optional("--embedded-mm", "Width of what bears on the soil: the pole itself when left out, or the concrete round it, mm.", QuantityKind.Number);
    private static readonly Option<double> Dynamic = NumberOption.Make("--dynamic-factor", "Structural factor on every force, 0.8 to 2; a bid takes the design rule structure.dynamic_factor.", QuantityKind.Number, 1);

    public static Command Make(Terminal terminal)
    {
        var format = CommonOptions.Format();
        var command = new Command("pole", "Wind on one pole, stress of its shaft and its depth in the ground. " + Caution)
        {
            Standard, WindSpeed, Definition, Terrain, Height, Top, Base, Wall, Yield, Panel, PanelTilt, PanelHeight, LeastProjection, Luminaire, LuminaireHeight, Soil, Embedded, Dynamic, format,
        };
        command.SetAction(parsed => Run(parsed, parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(ParseResult parsed, bool json, Terminal terminal)
    {
        if (Limit.Problem(Limits(parsed)) is { } odd) return Stop(terminal, odd);
        if (parsed.GetValue(Top) > parsed.GetValue(Base)) return Stop(terminal, "--top-mm is above --base-mm; check which is which");
        if (parsed.GetValue(Wall) > parsed.GetValue(Top) / 2) return Stop(terminal, "--wall-mm is more than half of --top-mm");
        if (parsed.GetValue(Standard) == "en" && parsed.GetValue(Terrain) is "B" or "C" or "D")
            return Stop(terminal, "--terrain B, C and D are exposures of ASCE 7; give 0, I, II, III or IV with --standard en");
        var found = new List<Diagnostic>();
        var (wind, conversion) = WindOf(parsed);
        if (wind.SpeedMPerS is < 10 or > 70 && wind.Standard == WindStandard.En1991 || wind.SpeedMPerS is < 10 or > 100)
            return Stop(terminal, string.Create(CultureInfo.InvariantCulture, $"--wind-m-per-s becomes {wind.SpeedMPerS:0.0} m/s in the definition of the standard, outside what it covers (10 to {(wind.Standard == WindStandard.En1991 ? 70 : 100)} m/s)"));
        var inputs = InputsOf(parsed, wind, EnergyInputs.RulesOf(null, [], found));
        var result = PoleScreen.Run(inputs);
        if (result.UtilisationFraction > 1) found.Add(TooWeak(result, inputs));
        var root = GroundJson.Pole(inputs, conversion, result);
        root["caution"] = Caution;
        root["diagnostics"] = new JsonArray([.. found.Select(BidJson.DiagnosticJson)]);
        terminal.Problems([.. found]);
        if (json) terminal.Result(root);
        else Show(root, result, terminal);
        return parsed.Given(Yield) && result.UtilisationFraction > 1 ? ExitCodes.SomethingUnmet : ExitCodes.Good;
    }

    private static IEnumerable<Limit> Limits(ParseResult parsed) =>
    [
        new("--wind-m-per-s", parsed.GetValue(WindSpeed), 10, 100),
        new("--height-m", parsed.GetValue(Height), 1, 20),
        new("--top-mm", parsed.GetValue(Top), 20, 500),
        new("--base-mm", parsed.GetValue(Base), 30, 800),
        new("--wall-mm", parsed.GetValue(Wall), 1, 25),
        new("--yield-mpa", parsed.ValueOr(Yield, AnyYieldMPa), 150, 900),
        new("--panel-m2", parsed.GetValue(Panel), 0, 20),
        new("--panel-tilt-deg", parsed.GetValue(PanelTilt), 0, 90),
        new("--panel-height-m", parsed.ValueOr(PanelHeight, 1), 0.1, 25),
        new("--least-projection", parsed.GetValue(LeastProjection), 0, 1),
        new("--luminaire-m2", parsed.GetValue(Luminaire), 0, 5),
        new("--luminaire-height-m", parsed.ValueOr(LuminaireHeight, 1), 0.1, 25),
        new("--soil-kpa-per-m", parsed.GetValue(Soil), 1, 200),
        new("--embedded-mm", parsed.ValueOr(Embedded, 100), 30, 3000),
        new("--dynamic-factor", parsed.GetValue(Dynamic), 0.8, 2),
    ];

    private static (WindCase Wind, ConvertedWind Conversion) WindOf(ParseResult parsed)
    {
        var standard = parsed.GetValue(Standard) == "en" ? WindStandard.En1991 : WindStandard.Asce7;
        var definition = parsed.GetValue(Definition) switch
        {
            "mean-10-min-50" => WindDefinition.TenMinuteMean50,
            "mean-1-h-50" => WindDefinition.HourlyMean50,
            "gust-3-s-50" => WindDefinition.Gust50,
            "gust-3-s-700" => WindDefinition.Gust700,
            _ => WindCase.Wanted(standard),
        };
        var terrain = parsed.GetValue(Terrain) switch
        {
            "0" => Sizing.Structure.Terrain.Zero,
            "I" or "D" => Sizing.Structure.Terrain.I,
            "III" or "B" => Sizing.Structure.Terrain.III,
            "IV" => Sizing.Structure.Terrain.IV,
            _ => Sizing.Structure.Terrain.II,
        };
        return WindCase.Of(standard, parsed.GetValue(WindSpeed), definition, terrain);
    }

    private static PoleScreenInputs InputsOf(ParseResult parsed, WindCase wind, RuleSet rules)
    {
        var height = parsed.GetValue(Height);
        var projection = Math.Max(Angle.SinDegrees(parsed.GetValue(PanelTilt)), parsed.GetValue(LeastProjection));
        ImmutableArray<WindItem> items =
        [
            new("modules", parsed.GetValue(Panel) * projection, rules["structure.module_force_coefficient"], parsed.ValueOr(PanelHeight, height)),
            new("luminaire", parsed.GetValue(Luminaire), rules["structure.luminaire_force_coefficient"], parsed.ValueOr(LuminaireHeight, height)),
        ];
        return new PoleScreenInputs(
            new PoleShaft(height, parsed.GetValue(Base), parsed.GetValue(Top), parsed.GetValue(Wall), parsed.ValueOr(Yield, AnyYieldMPa)),
            items,
            wind,
            parsed.GetValue(Dynamic),
            rules["structure.wind_factor"],
            rules["structure.steel_factor"],
            parsed.ValueOr(Embedded, parsed.GetValue(Base)) / 1000,
            parsed.GetValue(Soil));
    }

    private static Diagnostic TooWeak(PoleScreenResult result, PoleScreenInputs inputs) => Diagnostic.Warning("TK501", string.Create(
        CultureInfo.InvariantCulture,
        $"the shaft would work at {result.UtilisationFraction * 100:0} % of its strength at {result.Load.GreatestStressHeightM:0.0} m above ground ({result.Load.GreatestStressMPa:0} MPa before factors, yield {inputs.Shaft.YieldMPa:0} MPa), more than 100 %; take a wider or thicker shaft, stronger steel or less area"));

    private static void Show(JsonObject root, PoleScreenResult result, Terminal terminal)
    {
        terminal.Table(["Result", "Value"], root.Where(p => p.Value is JsonValue && p.Key != "caution").Select(p => (IReadOnlyList<string>)[KeyWords.Of(p.Key), p.Value!.ToString()]));
        terminal.Table(["On", "Force N", "Height m", "Moment Nm"], result.Load.Forces.Select(f => (IReadOnlyList<string>)[f.Name, Text($"{f.ForceN:0.0}"), Text($"{f.HeightM:0.00}"), Text($"{f.MomentNm:0}")]));
        terminal.Result("Section stress and moment are at the base; embedment is of a pole set into the ground (IBC 1807.3.2). " + Caution);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static int Stop(Terminal terminal, string message)
    {
        terminal.Progress("error: " + message);
        return ExitCodes.CouldNotRun;
    }
}
