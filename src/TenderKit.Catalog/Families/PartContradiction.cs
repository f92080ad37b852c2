using System.Globalization;

namespace TenderKit.Catalog.Families;

/// <summary>Properties of one part that cannot all be true, or that hardly can.</summary>
/// <param name="Message">What disagrees with what, with values and units, and what to do.</param>
/// <param name="IsCertain">True for an impossibility, false for something to look at.</param>
public sealed record PartContradiction(string Message, bool IsCertain)
{
    /// <summary>Rated module power against Vmp x Imp, fraction; nameplate roundings stay below it (common practice, no source).</summary>
    private const double PowerAgreementFraction = 0.05;

    /// <summary>Greatest module power per area, W/m2 (from memory).</summary>
    private const double GreatestModuleWPerM2 = 240;

    /// <summary>Greatest luminous efficacy of a luminaire, lm/W (from memory).</summary>
    private const double GreatestLmPerW = 200;

    public static IEnumerable<PartContradiction> Of(Part part) => (part switch
    {
        Luminaire l => OfLuminaire(l),
        Module m => OfModule(m),
        Pole p => [Above("top_diameter_mm", p.TopDiameterMm, "base_diameter_mm", p.BaseDiameterMm, "mm")],
        Bracket b => [Above("min_tilt_degrees", b.MinTiltDegrees, "max_tilt_degrees", b.MaxTiltDegrees, "degrees")],
        Battery b => [Above("least_charge_c", b.LeastChargeC, "max_operating_c", b.MaxOperatingC, "degC")],
        _ => [],
    }).OfType<PartContradiction>();

    private static PartContradiction?[] OfLuminaire(Luminaire l) =>
    [
        Above("min_voltage_v", l.MinVoltageV, "max_voltage_v", l.MaxVoltageV, "V"),
        Doubtful(l.FluxLm / l.InputPowerW, GreatestLmPerW, "flux over input power", "lm/W"),
    ];

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

    private static PartContradiction? Doubtful(double value, double greatest, string what, string unit) => value <= greatest
        ? null
        : new(string.Create(CultureInfo.InvariantCulture,
            $"{what} is {value:0} {unit}, above {greatest:0} {unit}, the most to be expected; check the data sheet"), false);
}
