using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Intake.Numbers;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Specification;

/// <summary>A property a clause may ask for: of a part, or of the design of a site.</summary>
/// <param name="Item">The word of the item column.</param>
/// <param name="Name">The word of the property column.</param>
/// <param name="Unit">Unit the value is compared and printed in; empty for a plain number, for words and for yes or no.</param>
/// <param name="Kind">How a number is read.</param>
/// <param name="Factor">What a value read is multiplied by to come to <paramref name="Unit"/>.</param>
/// <param name="Decimals">Decimals to print.</param>
public sealed record ClauseProperty(string Item, string Name, string Unit = "", QuantityKind Kind = QuantityKind.Number, double Factor = 1, int Decimals = 0)
{
    /// <summary>Number of a part, or null when the part is of another family.</summary>
    public Func<Part, double?>? NumberOf { get; init; }

    /// <summary>Words of a part, or null when the part is of another family.</summary>
    public Func<Part, ImmutableArray<string>?>? WordsOf { get; init; }

    /// <summary>Feature of a part, or null when the part is of another family.</summary>
    public Func<Part, bool?>? FeatureOf { get; init; }

    /// <summary>Number of a design.</summary>
    public Func<SiteDesign, double>? ResultOf { get; init; }

    /// <summary>Whether a part of a family has it.</summary>
    public bool IsOf(Part part) => NumberOf?.Invoke(part) is not null || WordsOf?.Invoke(part) is not null || FeatureOf?.Invoke(part) is not null;
}

/// <summary>The closed list of properties clauses may name. An integrated unit answers for the four parts inside it.</summary>
public static class ClauseProperties
{
    public static readonly ClauseProperty Autonomy = Result("energy", "autonomy", "nights", d => d.Energy.AutonomyNights, QuantityKind.Number, 2);
    public static readonly ClauseProperty DarkNights = Result("energy", "dark nights", "nights", d => d.Energy.Simulated.DarkNightsUpperBound, QuantityKind.Number, 2);

    public static readonly ImmutableArray<ClauseProperty> All =
    [
        Autonomy,
        DarkNights,
        Result("energy", "battery life", "years", d => d.Energy.BatteryLifeYears, QuantityKind.Number, 1),
        Result("energy", "module power", "Wp", d => d.Parts.ArrayWp, QuantityKind.Power, 0),
        Result("energy", "battery energy", "Wh", d => d.Parts.BatteryRatedWh, QuantityKind.Energy, 0),
        Result("light", "average", "lx", d => d.Light.Result.AverageLx, QuantityKind.Illuminance, 2),
        Result("light", "minimum", "lx", d => d.Light.Result.MinimumLx, QuantityKind.Illuminance, 2),
        Result("light", "uniformity", "", d => d.Light.Result.OverallUniformity, QuantityKind.Fraction, 2),
        Result("light", "mounting height", "m", d => d.Parts.Pole.HeightM, QuantityKind.Length, 2),
        Result("light", "spacing", "m", d => d.Light.SpacingM, QuantityKind.Length, 1),
        Number<Luminaire>("luminaire", "ip", "IP", l => l.IpCode),
        Number<Luminaire>("luminaire", "ik", "IK", l => l.IkCode),
        Number<Luminaire>("luminaire", "efficacy", "lm/W", l => l.FluxLm / l.InputPowerW),
        Number<Luminaire>("luminaire", "flux", "lm", l => l.FluxLm, QuantityKind.LuminousFlux),
        Number<Luminaire>("luminaire", "power", "W", l => l.InputPowerW, QuantityKind.Power),
        Number<Luminaire>("luminaire", "colour temperature", "K", l => l.ColourTemperatureK),
        Number<Luminaire>("luminaire", "life", "h", l => l.LifeL80H, QuantityKind.Hours),
        Number<Luminaire>("luminaire", "ambient", "degC", l => l.MaxAmbientC, QuantityKind.Temperature),
        Words<Battery>("battery", "chemistry", b => [b.Chemistry.ToString(), .. ChemistryWords(b)]),
        Number<Battery>("battery", "rated energy", "Wh", b => b.RatedWh, QuantityKind.Energy),
        Number<Battery>("battery", "rated capacity", "Ah", b => b.RatedAh, QuantityKind.Charge),
        Number<Battery>("battery", "voltage", "V", b => b.NominalVoltageV, QuantityKind.Voltage, decimals: 1),
        Number<Battery>("battery", "cycles", "", b => b.CyclesAtDepth, QuantityKind.Count),
        Number<Battery>("battery", "calendar life", "years", b => b.CalendarYearsAt25C),
        Number<Battery>("battery", "operating temperature", "degC", b => b.MaxOperatingC, QuantityKind.Temperature),
        Number<Module>("module", "power", "Wp", m => m.RatedWp, QuantityKind.Power),
        Number<Module>("module", "power over area", "W/m2", m => m.RatedWp / (m.LengthM * m.WidthM)),
        Words<Controller>("controller", "kind", c => c.Kind == Sizing.Energy.ControlKind.Tracking ? ["Tracking", "mppt"] : ["PulseWidth", "pulse-width", "pwm"]),
        Number<Controller>("controller", "efficiency", "%", c => c.Efficiency * 100, QuantityKind.Fraction, 100, 1),
        Number<Controller>("controller", "schedule parts", "", c => c.ScheduleParts, QuantityKind.Count),
        Number<Controller>("controller", "own use", "W", c => c.OwnUseW, QuantityKind.Power, decimals: 2),
        Feature<Controller>("controller", "dimming", c => c.Dimming),
        Number<Pole>("pole", "zinc", "um", p => p.ZincUm),
        Number<Pole>("pole", "height", "m", p => p.HeightM, QuantityKind.Length, decimals: 2),
        Number<Pole>("pole", "wall", "mm", p => p.WallMm, QuantityKind.Length, 1000, 1),
        Number<Pole>("pole", "steel", "MPa", p => p.YieldMPa),
        Number<Enclosure>("enclosure", "ip", "IP", e => e.IpCode),
        .. Common<Luminaire>("luminaire"), .. Common<Battery>("battery"), .. Common<Module>("module"), .. Common<Controller>("controller"), .. Common<Pole>("pole"),
        .. Common<Enclosure>("enclosure"), .. Common<Cable>("cable"), .. Common<ProtectionDevice>("protection"),
    ];

    private static IEnumerable<ClauseProperty> Common<T>(string item)
        where T : Part
    {
        yield return Number<T>(item, "warranty", "years", p => p.WarrantyYears);
        yield return Words<T>(item, "certificates", p => [.. p.Certificates.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)]);
    }

    private static ImmutableArray<string> ChemistryWords(Battery battery) => battery.Chemistry switch
    {
        Sizing.Energy.BatteryChemistry.LithiumIronPhosphate => ["lithium iron phosphate", "lifepo4", "lfp"],
        Sizing.Energy.BatteryChemistry.GelLeadAcid => ["gel", "lead-acid"],
        Sizing.Energy.BatteryChemistry.AgmLeadAcid => ["agm", "lead-acid"],
        Sizing.Energy.BatteryChemistry.TubularLeadAcid => ["tubular", "lead-acid"],
        _ => ["flooded", "lead-acid"],
    };

    private static ClauseProperty Number<T>(
        string item, string name, string unit, Func<T, double> of, QuantityKind kind = QuantityKind.Number, double factor = 1, int decimals = 0)
        where T : Part => new(item, name, unit, kind, factor, decimals) { NumberOf = p => Seen<T>(p) is { } part ? of(part) : null };

    private static ClauseProperty Words<T>(string item, string name, Func<T, ImmutableArray<string>> of)
        where T : Part => new(item, name) { WordsOf = p => Seen<T>(p) is { } part ? of(part) : null };

    private static ClauseProperty Feature<T>(string item, string name, Func<T, bool> of)
        where T : Part => new(item, name) { FeatureOf = p => Seen<T>(p) is { } part ? of(part) : null };

    private static ClauseProperty Result(string item, string name, string unit, Func<SiteDesign, double> of, QuantityKind kind, int decimals) =>
        new(item, name, unit, kind, 1, decimals) { ResultOf = of };

    private static T? Seen<T>(Part part)
        where T : Part => part switch
        {
            T own => own,
            IntegratedUnit unit when typeof(T) == typeof(Luminaire) => unit.AsLuminaire() as T,
            IntegratedUnit unit when typeof(T) == typeof(Battery) => unit.AsBattery() as T,
            IntegratedUnit unit when typeof(T) == typeof(Module) => unit.AsModule() as T,
            IntegratedUnit unit when typeof(T) == typeof(Controller) => unit.AsController() as T,
            _ => null,
        };
}
