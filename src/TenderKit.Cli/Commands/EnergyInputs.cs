using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using TenderKit.Intake.Climate;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary>Turns the options of <c>energy</c> into the records of the engineering; every margin comes out of the design rules.</summary>
internal static class EnergyInputs
{
    private const string BuiltInRules = "starter/design-rules.yaml";

    /// <summary>Array and battery a search starts to scale from, Wp and Ah.</summary>
    private const double AnyArrayWp = 100;
    private const double AnyBatteryAh = 50;

    /// <summary>The built-in rules, or a file's, with single rules changed.</summary>
    public static RuleSet RulesOf(ParseResult parsed, List<Diagnostic> found) =>
        RulesOf(parsed.GetValue(EnergyOptions.RulesFile), parsed.GetValue(EnergyOptions.Rules) ?? [], found);

    /// <summary>The built-in rules, or a file's, with single rules changed, each written <c>id=value</c>.</summary>
    public static RuleSet RulesOf(string? file, IEnumerable<string> changed, List<Diagnostic> found)
    {
        var text = file is null ? BuiltIn() : File.ReadAllText(file);
        var changes = string.Join('\n', changed.Select(r => r.Replace("=", ": ", StringComparison.Ordinal)));
        var section = changes.Length == 0 ? null : YamlFile.Read(changes, "--rule", found);
        return Tendering.Settings.RulesFile.Read(text, file ?? "the built-in design rules", section, found);
    }

    /// <summary>The climate of a file, of values given, or the built-in estimate; null with an error among the problems.</summary>
    /// <param name="series">The hours of the file, where it holds hours.</param>
    public static MonthlyClimate? ClimateOf(ParseResult parsed, RuleSet rules, List<Diagnostic> found, out HourlySeries? series)
    {
        series = null;
        var (latitude, longitude) = (parsed.GetValue(EnergyOptions.Latitude), parsed.GetValue(EnergyOptions.Longitude));
        var climate = parsed.GetValue(EnergyOptions.ClimateFile) is { } file
            ? OfFile(file, latitude, longitude, found, out series)
            : parsed.Given(EnergyOptions.Irradiation) ? OfValues(parsed, latitude, longitude) : ReferenceClimate.Estimate(latitude, longitude, ReferenceStations.Load());
        if (climate is null) return null;
        if (ClimateGrades.IsEstimate(climate.Grade))
        {
            found.Add(Diagnostic.Warning("TK320", string.Create(
                CultureInfo.InvariantCulture,
                $"irradiation is an estimate from the built-in reference table (nearest station {climate.NearestStationKm ?? 0:0} km away), lowered by the factor {ClimateStage.CautiousFactor(climate.Grade, rules):0.00}; fetch monthly means for this place and give them with --climate or --ghi-kwh-per-m2-day")));
        }

        found.AddRange(ReferenceClimate.Examine(climate, new Place(parsed.GetValue(EnergyOptions.ClimateFile) ?? (parsed.Given(EnergyOptions.Irradiation) ? EnergyOptions.Irradiation.Name : null))));
        return climate;
    }

    /// <summary>Place, plane and lamp.</summary>
    public static PoleInputs PoleOf(ParseResult parsed, MonthlyClimate climate, RuleSet rules)
    {
        var schedule = parsed.GetValue(EnergyOptions.Schedule)!;
        var elevation = rules["night.switching_elevation"];
        var albedo = rules["climate.albedo"];
        var lamp = ScheduleHours.For(schedule, NightCalendar.ForLatitude(climate.LatitudeDegrees, elevation));
        var best = TiltedPlane.BestForWorstMonth(climate, lamp.MonthlyFullHours, rules["energy.least_tilt"], albedo);
        var plane = new PlaneOrientation(parsed.ValueOr(EnergyOptions.Tilt, best.TiltDegrees), parsed.ValueOr(EnergyOptions.HeadingDegrees, parsed.ValueOr(EnergyOptions.Azimuth, best.AzimuthDegrees)));
        var sequence = SequenceRules.Of(rules, climate.YearSpreadFraction) with
        {
            YearCount = (int)parsed.ValueOr(EnergyOptions.Years, rules["climate.years"]),
            Seed = (int)parsed.ValueOr(EnergyOptions.Seed, rules["climate.seed"]),
        };
        return new PoleInputs(
            climate, ClimateStage.CautiousFactor(climate.Grade, rules), plane, albedo, parsed.GetValue(EnergyOptions.Shaded), elevation, schedule, sequence, parsed.GetValue(EnergyOptions.LampW));
    }

    /// <summary>Planes to try: every heading of a road of unknown bearing, else the one given.</summary>
    public static ImmutableArray<PlaneOrientation> PlanesOf(ParseResult parsed, PlaneOrientation plane) =>
        EnergyOptions.AnyHeading(parsed) ? Headings.PlanesOf(null, RoadSide.Both, 0, plane.TiltDegrees) : [plane];

    /// <summary>The system as given; what is to be found stands in it at a size to scale from.</summary>
    public static PowerSystem SystemOf(ParseResult parsed, RuleSet rules)
    {
        var chemistry = EnergyOptions.ChemistryOf(parsed);
        var kind = EnergyOptions.ControlOf(parsed);
        var typical = TypicalParts.Battery(chemistry);
        var batteryV = parsed.ValueOr(EnergyOptions.BatteryV, typical.NominalVoltageV);
        var moduleV = parsed.ValueOr(EnergyOptions.ModuleV, TypicalParts.ModuleVoltagePer12V * Math.Max(1, Math.Round(batteryV / 12.8)));
        var arrayWp = parsed.ValueOr(EnergyOptions.ArrayWp, AnyArrayWp);
        var efficiency = TypicalParts.ControlEfficiency(kind);
        var array = new ArrayModel(
            arrayWp, moduleV, arrayWp / moduleV, TypicalParts.PowerCoefficientPerK, TypicalParts.NoctC,
            rules["energy.soiling"] * rules["energy.mismatch"] * rules["energy.ageing"] * rules["energy.wiring"]);
        var battery = new BatteryModel(
            chemistry, parsed.ValueOr(EnergyOptions.BatteryAh, AnyBatteryAh) * batteryV, batteryV, typical.RatedHours, typical.PeukertExponent,
            rules["battery.depth." + chemistry], rules["battery.end_of_life"], typical.ChargeEfficiency, typical.DischargeEfficiency,
            typical.SelfDischargePerMonthFraction, rules["battery.enclosure_rise"], typical.LeastChargeC, GreatestRateFactor: rules["battery.rate_gain"]);
        var chargeA = kind == ControlKind.Tracking
            ? arrayWp * efficiency / (batteryV * rules["controller.lowest_cell_fraction"])
            : rules["controller.charge_factor"] * arrayWp / moduleV;
        var control = new ControlModel(kind, chargeA, efficiency, parsed.ValueOr(EnergyOptions.OwnUseW, TypicalParts.OwnUseW(kind)), rules["battery.reconnect"]);
        return new PowerSystem(array, battery, control, parsed.GetValue(EnergyOptions.LampW) / (1 - rules["wiring.drop_lamp"]));
    }

    /// <summary>The rules this study uses; years and seed of the user's own are none.</summary>
    public static IEnumerable<DesignRule> Used(ParseResult parsed, RuleSet rules, MonthlyClimate climate, PowerSystem system)
    {
        string[] ids =
        [
            ClimateGrades.RuleId(climate.Grade), "climate.albedo", "climate.years", "climate.seed", "climate.day_correlation", "climate.year_spread", "night.switching_elevation",
            "energy.soiling", "energy.mismatch", "energy.ageing", "energy.wiring", "energy.least_tilt", "battery.depth." + system.Battery.Chemistry, "battery.end_of_life",
            "climate.month_correlation", "climate.day_dispersion", "battery.rate_gain", "battery.enclosure_rise", "battery.reconnect", "wiring.drop_lamp",
            system.Control.Kind == ControlKind.Tracking ? "controller.lowest_cell_fraction" : "controller.charge_factor",
        ];
        return rules.Rules.Where(r => ids.Contains(r.Id)
            && !(r.Id == "climate.years" && parsed.Given(EnergyOptions.Years))
            && !(r.Id == "climate.seed" && parsed.Given(EnergyOptions.Seed)));
    }

    private static MonthlyClimate? OfFile(string file, double latitude, double longitude, List<Diagnostic> found, out HourlySeries? series)
    {
        series = null;
        if (!File.Exists(file))
        {
            found.Add(Diagnostic.Error("TK101", "the file does not exist; check the name and the folder", new Place(file)));
            return null;
        }

        var read = ClimateFile.Read(Path.GetFileName(file), File.ReadAllBytes(file), latitude, longitude);
        found.AddRange(read.Diagnostics);
        series = read.Value?.Series;
        return read.Value?.Monthly is { } climate ? climate with { LatitudeDegrees = latitude, LongitudeDegrees = longitude } : null;
    }

    /// <summary>Twelve values given; daily minimum and maximum, and where none are given the means too, from the nearest reference stations.</summary>
    private static MonthlyClimate OfValues(ParseResult parsed, double latitude, double longitude)
    {
        var near = ReferenceClimate.AirTemperature(latitude, longitude, ReferenceStations.Load());
        var mean = parsed.GetValue(EnergyOptions.Temperature) ?? near.MeanC;
        var source = parsed.GetValue(EnergyOptions.Source);
        var own = parsed.Given(EnergyOptions.Temperature);
        var climate = near with
        {
            IrradiationKWhPerM2 = parsed.GetValue(EnergyOptions.Irradiation)!.Value,
            MeanC = mean,
            DailyMinC = [.. near.DailyMinC.Zip(near.MeanC, (t, m) => t - m).Zip(mean, (d, m) => m + d)],
            DailyMaxC = [.. near.DailyMaxC.Zip(near.MeanC, (t, m) => t - m).Zip(mean, (d, m) => m + d)],
            Grade = source is null ? ClimateGrade.Unsourced : ClimateGrade.MeansWithSource,
            Source = (source ?? "values given without a source") + "; " + (own ? "daily minimum and maximum of the " : "") + near.Source,
            TemperatureStationKm = own ? null : near.TemperatureStationKm,
        };
        return climate with { RecordLowC = Math.Min(near.RecordLowC, climate.DailyMinC.Min()), RecordHighC = Math.Max(near.RecordHighC, climate.DailyMaxC.Max()) };
    }

    private static string BuiltIn()
    {
        using var stream = typeof(EnergyInputs).Assembly.GetManifestResourceStream(BuiltInRules)
            ?? throw new InvalidOperationException("the built-in design rules are missing from the program");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
