using System.Globalization;
using TenderKit.Sizing.Energy;

namespace TenderKit.Catalog.Families;

/// <summary>Properties of one part that cannot all be true, or that hardly can.</summary>
/// <param name="Message">What disagrees with what, with values and units, and what to do.</param>
/// <param name="IsCertain">True for an impossibility, false for something to look at.</param>
public sealed record PartContradiction(string Message, bool IsCertain)
{
    /// <summary>Rated module power against Vmp x Imp, fraction; nameplate roundings stay below it (common practice, no source).</summary>
    private const double PowerAgreementFraction = 0.05;

    /// <summary>Greatest module power per area, W/m2 (from memory).</summary>
    public const double GreatestModuleWPerM2 = 240;

    /// <summary>Greatest luminous efficacy of a luminaire, lm/W (from memory).</summary>
    public const double GreatestLmPerW = 200;

    /// <summary>Least luminous efficacy of a luminaire with light-emitting diodes, lm/W (from memory).</summary>
    public const double LeastLmPerW = 60;

    /// <summary>Greatest energy per weight of a lead-acid block, Wh/kg (from memory).</summary>
    public const double GreatestLeadWhPerKg = 50;

    /// <summary>Greatest energy per weight of a lithium iron phosphate pack, Wh/kg (from memory).</summary>
    public const double GreatestLithiumWhPerKg = 160;

    public static IEnumerable<PartContradiction> Of(Part part) => OfAny(part).Concat(part switch
    {
        Luminaire l => OfLuminaire(l),
        Module m => OfModule(m),
        Pole p => [Above("top_diameter_mm", p.TopDiameterMm, "base_diameter_mm", p.BaseDiameterMm, "mm"), Door(p)],
        Bracket b =>
        [
            Above("min_tilt_degrees", b.MinTiltDegrees, "max_tilt_degrees", b.MaxTiltDegrees, "degrees"),
            Above("pole_min_mm", b.PoleMinMm, "pole_max_mm", b.PoleMaxMm, "mm"),
        ],
        Battery b => OfBattery(b),
        Controller c => [Above("least_absorption_v", c.LeastAbsorptionV, "greatest_absorption_v", c.GreatestAbsorptionV, "V")],
        Enclosure e => [Above("pole_min_mm", e.PoleMinMm, "pole_max_mm", e.PoleMaxMm, "mm"), InnerVolume(e)],
        IntegratedUnit u => [.. OfLuminaire(u.AsLuminaire()), .. OfModule(u.AsModule()), .. OfBattery(u.AsBattery())],
        Fixing f => [Above("least_mm", f.LeastMm, "greatest_mm", f.GreatestMm, "mm")],
        _ => [],
    }).OfType<PartContradiction>();

    /// <summary>Most energy per weight to be expected of a chemistry, Wh/kg.</summary>
    public static double GreatestWhPerKg(BatteryChemistry chemistry) =>
        chemistry == BatteryChemistry.LithiumIronPhosphate ? GreatestLithiumWhPerKg : GreatestLeadWhPerKg;

    private static IEnumerable<PartContradiction?> OfAny(Part part)
    {
        if (part is { PriceDate: { } given, PriceValidUntil: { } until } && given > until)
            yield return new(string.Create(CultureInfo.InvariantCulture,
                $"price_date {given:yyyy-MM-dd} is after price_valid_until {until:yyyy-MM-dd}; check which is which"), true);
        var price = part.UnitPrice;
        foreach (var step in part.PriceBreaks)
        {
            if (step.UnitPrice > price)
                yield return new(string.Create(CultureInfo.InvariantCulture,
                    $"the price from {step.FromQuantity} on is {step.UnitPrice} {part.Currency}, above {price} {part.Currency} for fewer; check price_breaks"), false);
            price = step.UnitPrice;
        }
    }

    private static PartContradiction?[] OfLuminaire(Luminaire l) =>
    [
        Above("min_voltage_v", l.MinVoltageV, "max_voltage_v", l.MaxVoltageV, "V"),
        Above("spigot_min_mm", l.SpigotMinMm, "spigot_max_mm", l.SpigotMaxMm, "mm"),
        Doubtful(l.FluxLm / l.InputPowerW, GreatestLmPerW, "flux over input power", "lm/W"),
        Meagre(l.FluxLm / l.InputPowerW, LeastLmPerW, "flux over input power", "lm/W"),
    ];

    private static PartContradiction?[] OfBattery(Battery b) =>
    [
        Above("least_charge_c", b.LeastChargeC, "max_operating_c", b.MaxOperatingC, "degC"),
        b.WeightKg > 0 ? Doubtful(b.RatedWh / b.WeightKg, GreatestWhPerKg(b.Chemistry), "rated energy over weight", "Wh/kg") : null,
    ];

    private static PartContradiction? Door(Pole p) => p is { DoorBottomM: { } bottom, DoorHeightMm: { } height } && bottom + (height / 1000) > p.HeightM
        ? new(string.Create(CultureInfo.InvariantCulture,
            $"the door ends {bottom + (height / 1000):0.##} m above ground, above height_m {p.HeightM} m; check door_bottom_m and door_height_mm"), true)
        : null;

    private static PartContradiction? InnerVolume(Enclosure e) =>
        e is { InnerWidthMm: { } width, InnerHeightMm: { } height, InnerDepthMm: { } depth } && width * height * depth * 1e-6 < e.UsableVolumeL
            ? new(string.Create(CultureInfo.InvariantCulture,
                $"usable_volume_l {e.UsableVolumeL} l is more than the {width * height * depth * 1e-6:0.#} l of its inner sizes; check them"), true)
            : null;

    private static PartContradiction?[] OfModule(Module m) =>
    [
        Above("maximum_power_v", m.MaximumPowerV, "open_circuit_v", m.OpenCircuitV, "V"),
        Above("maximum_power_a", m.MaximumPowerA, "short_circuit_a", m.ShortCircuitA, "A"),
        PowerDisagrees(m),
        Doubtful(m.RatedWp / (m.LengthM * m.WidthM), GreatestModuleWPerM2, "rated power over area", "W/m2"),
    ];

    private static PartContradiction? PowerDisagrees(Module m)
    {
        var product = m.MaximumPowerV * m.MaximumPowerA;
        return Math.Abs(product - m.RatedWp) <= PowerAgreementFraction * m.RatedWp
            ? null
            : new(string.Create(CultureInfo.InvariantCulture,
                $"maximum_power_v x maximum_power_a is {product:0.#} W but rated_wp is {m.RatedWp:0.#} W; check the data sheet"), false);
    }

    private static PartContradiction? Above(string lowName, double low, string highName, double high, string unit) => low <= high
        ? null
        : new(string.Create(CultureInfo.InvariantCulture, $"{lowName} {low} {unit} is above {highName} {high} {unit}; check which is which"), true);

    private static PartContradiction? Above(string lowName, double? low, string highName, double? high, string unit) =>
        low is { } least && high is { } greatest ? Above(lowName, least, highName, greatest, unit) : null;

    private static PartContradiction? Meagre(double value, double least, string what, string unit) => value >= least
        ? null
        : new(string.Create(CultureInfo.InvariantCulture,
            $"{what} is {value:0} {unit}, below {least:0} {unit}, the least to be expected; check the data sheet"), false);

    private static PartContradiction? Doubtful(double value, double greatest, string what, string unit) => value <= greatest
        ? null
        : new(string.Create(CultureInfo.InvariantCulture,
            $"{what} is {value:0} {unit}, above {greatest:0} {unit}, the most to be expected; check the data sheet"), false);
}
