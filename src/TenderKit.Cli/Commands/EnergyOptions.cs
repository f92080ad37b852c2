using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Energy;

namespace TenderKit.Cli.Commands;

/// <summary>What can be asked of <c>energy</c>.</summary>
internal static class EnergyOptions
{
    public static readonly Option<double> Latitude = NumberOption.Make("--latitude", "Latitude, degrees, south negative, -90 to 90.", QuantityKind.Degrees);
    public static readonly Option<double> Longitude = NumberOption.Make("--longitude", "Longitude, degrees, west negative, -180 to 180.", QuantityKind.Degrees);
    public static readonly Option<string?> ClimateFile = new("--climate") { Description = "Twelve-month climate file, as a tender's. Without it and without --ghi-kwh-per-m2-day: the built-in estimate." };
    public static readonly Option<ImmutableArray<double>?> Irradiation = TwelveValues.Make("--ghi-kwh-per-m2-day", "Mean daily irradiation on the horizontal, kWh/m2 a day, twelve values, January first.", 0, 20000);
    public static readonly Option<ImmutableArray<double>?> Temperature = TwelveValues.Make("--temperature-c", "Mean air temperature, degC, twelve values; left out: from the nearest reference stations.", -70, 60);
    public static readonly Option<string?> Source = new("--source") { Description = "Who measured the values given and when; without a source they are lowered further (design rules climate.factor)." };
    public static readonly Option<double> LampW = NumberOption.Make("--lamp-w", "Input power of the lamp at full level, driver included, W, 0.5 to 2000.", QuantityKind.Power);
    public static readonly Option<LightingSchedule> Schedule = ScheduleText.Option("--schedule");
    public static readonly Option<double> ArrayWp = NumberOption.Optional("--array-wp", "Rated power of all modules, Wp, 1 to 20000; leave it out to have it found.", QuantityKind.Power);
    public static readonly Option<double> Tilt = NumberOption.Optional("--tilt-deg", "Tilt of the modules, degrees, 0 to 90; left out: best for the worst month, not flatter than the design rule.", QuantityKind.Degrees);
    public static readonly Option<double> Azimuth = NumberOption.Optional("--azimuth-deg", "Direction the modules face, degrees clockwise from north, 0 to 360; left out: towards the equator.", QuantityKind.Degrees);
    public static readonly Option<double> HeadingDegrees = NumberOption.Optional("--heading-deg", "Module fixed to the lamp head: the direction its arm points in, across the road, degrees clockwise from north, 0 to 360; goes with --tilt-deg, the tilt towards that side.", QuantityKind.Degrees);
    public static readonly Option<string> Heading = WordOption.Make("--heading", "Module fixed to the lamp head on a road of unknown bearing: any tries every 45 degrees with --tilt-deg, and the worst governs.", "equator", "any");
    public static readonly Option<double> Shaded = NumberOption.Make("--shaded-fraction", "Share of sun and sky lost to shading, fraction, 0 to 0.9.", QuantityKind.Fraction, 0);
    public static readonly Option<double> BatteryAh = NumberOption.Optional("--battery-ah", "Rated capacity of the battery bank at its rated rate, Ah, 1 to 20000; leave it out to have it found.", QuantityKind.Charge);
    public static readonly Option<double> BatteryV = NumberOption.Optional("--battery-v", "Nominal voltage of the bank, V, 6 to 60; left out: 12.8 V for lithium iron phosphate, 12 V for lead-acid.", QuantityKind.Voltage);

    public static readonly Option<string> BatteryType = WordOption.Make(
        "--battery-type",
        "Battery type; efficiencies, Peukert exponent, rate of the rating, self-discharge and least charging temperature are those of common practice, depth is a design rule.",
        "lifepo4", "gel", "agm", "flooded", "tubular");

    public static readonly Option<string> Control = WordOption.Make("--control", "Charge controller, maximum-power tracking (mppt) or pulse-width (pwm).", "mppt", "pwm");

    public static readonly Option<double> ModuleV = NumberOption.Optional("--module-voltage-v", "Maximum-power voltage of a string, V, 5 to 600; left out: 18 V for each 12 V of the system.", QuantityKind.Voltage);
    public static readonly Option<double> OwnUseW = NumberOption.Optional("--own-use-w", "Own use of the controller, day and night, W, 0 to 20; left out: 0.2 W mppt, 0.1 W pwm.", QuantityKind.Power);
    public static readonly Option<double> DarkNights = NumberOption.Make("--dark-nights-per-year", "Most dark nights a year of a system to be found, 0 to 365.", QuantityKind.Number, 1);

    public static readonly Option<string> JudgedBy = WordOption.Make(
        "--judged-by", "What is held to --dark-nights-per-year: the mean of the years simulated, or its upper 90 % bound as in a bid.", "mean", "upper-bound");

    public static readonly Option<double> PricePerWp = NumberOption.Make("--price-per-wp", "Relative price of array, any currency a Wp, above 0; used when both array and battery are to be found.", QuantityKind.Number, 0.5);
    public static readonly Option<double> PricePerWh = NumberOption.Make("--price-per-wh", "Relative price of battery, the same currency a Wh, above 0.", QuantityKind.Number, 0.25);
    public static readonly Option<double> Years = NumberOption.Optional("--years", "Years to simulate, 1 to 200; left out: the design rule.", QuantityKind.Count);
    public static readonly Option<double> Seed = NumberOption.Optional("--seed", "Seed of the random generator, 0 to 2147483647; left out: the design rule.", QuantityKind.Count);
    public static readonly Option<string?> RulesFile = new("--rules") { Description = "Design rules file to use instead of the built-in one." };
    public static readonly Option<string[]> Rules = new("--rule") { Description = "One design rule changed, such as --rule energy.soiling=0.90; may be repeated." };

    /// <summary>All of them, in the order of the help.</summary>
    public static IEnumerable<Option> All =>
    [
        Latitude, Longitude, ClimateFile, Irradiation, Temperature, Source, LampW, Schedule, ArrayWp, Tilt, Azimuth, HeadingDegrees, Heading, Shaded, BatteryAh, BatteryV, BatteryType, Control,
        ModuleV, OwnUseW, DarkNights, JudgedBy, PricePerWp, PricePerWh, Years, Seed, RulesFile, Rules,
    ];

    public static BatteryChemistry ChemistryOf(ParseResult parsed) => parsed.GetValue(BatteryType) switch
    {
        "gel" => BatteryChemistry.GelLeadAcid,
        "agm" => BatteryChemistry.AgmLeadAcid,
        "flooded" => BatteryChemistry.FloodedLeadAcid,
        "tubular" => BatteryChemistry.TubularLeadAcid,
        _ => BatteryChemistry.LithiumIronPhosphate,
    };

    public static ControlKind ControlOf(ParseResult parsed) => parsed.GetValue(Control) == "pwm" ? ControlKind.PulseWidth : ControlKind.Tracking;

    public static DarkNightTarget TargetOf(ParseResult parsed) => new(parsed.GetValue(DarkNights), parsed.GetValue(JudgedBy) == "upper-bound");

    /// <summary>Whether the user gave it.</summary>
    public static bool Given(this ParseResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };

    /// <summary>The user's value, or another when none was given.</summary>
    public static double ValueOr(this ParseResult parsed, Option<double> option, double other) => parsed.Given(option) ? parsed.GetValue(option) : other;

    /// <summary>Whether every heading is to be tried.</summary>
    public static bool AnyHeading(ParseResult parsed) => parsed.GetValue(Heading) == "any";

    private static string? HeadingProblem(ParseResult parsed)
    {
        if (!parsed.Given(HeadingDegrees) && !AnyHeading(parsed)) return null;
        if (parsed.Given(HeadingDegrees) && AnyHeading(parsed)) return "give --heading-deg or --heading any, not both";
        if (parsed.Given(Azimuth)) return "--azimuth-deg is the direction of a module turned freely; with --heading-deg or --heading any the road turns it: give one of them";
        return parsed.Given(Tilt) ? null : "a module fixed to the lamp head needs its --tilt-deg, 0 for flat";
    }

    /// <summary>What is out of its range, or null.</summary>
    public static string? Problem(ParseResult parsed)
    {
        if (parsed.Given(ClimateFile) && parsed.Given(Irradiation)) return "give --climate or --ghi-kwh-per-m2-day, not both";
        if (parsed.Given(Temperature) && !parsed.Given(Irradiation)) return "--temperature-c goes with --ghi-kwh-per-m2-day; a climate file holds its own temperatures";
        if (HeadingProblem(parsed) is { } heading) return heading;
        if (parsed.GetValue(RulesFile) is { } file && !File.Exists(file)) return $"--rules names the file '{file}', which does not exist";
        if ((parsed.GetValue(Rules) ?? []).FirstOrDefault(r => r.IndexOf('=', StringComparison.Ordinal) < 1) is { } rule) return $"--rule is '{rule}'; write such as --rule energy.soiling=0.90";
        (Option<double> Option, double Least, double Greatest)[] limits =
        [
            (Latitude, -90, 90), (Longitude, -180, 180), (LampW, 0.5, 2000), (ArrayWp, 1, 20000), (Tilt, 0, 90), (Azimuth, 0, 360), (HeadingDegrees, 0, 360), (Shaded, 0, 0.9), (BatteryAh, 1, 20000),
            (BatteryV, 6, 60), (ModuleV, 5, 600), (OwnUseW, 0, 20), (DarkNights, 0, 365), (PricePerWp, 1e-6, 1e9), (PricePerWh, 1e-6, 1e9), (Years, 1, 200), (Seed, 0, int.MaxValue),
        ];
        return limits.Where(l => parsed.Given(l.Option)).Select(l => (l.Option.Name, Value: parsed.GetValue(l.Option), l.Least, l.Greatest))
            .Where(l => !(l.Value >= l.Least && l.Value <= l.Greatest))
            .Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.Name} must lie between {l.Least} and {l.Greatest}, not {l.Value}"))
            .FirstOrDefault();
    }
}
