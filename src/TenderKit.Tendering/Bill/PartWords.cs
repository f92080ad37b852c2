using System.Globalization;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Wiring;

namespace TenderKit.Tendering.Bill;

/// <summary>How the bill speaks of a part: its family, its unit and a description a stranger can buy from.</summary>
public static class PartWords
{
    /// <summary>Family name as spares are stated for it, with its plural.</summary>
    public static (string One, string Many) Family(Part part) => part switch
    {
        Luminaire => ("luminaire", "luminaires"),
        Module => ("module", "modules"),
        Battery => ("battery", "batteries"),
        Controller => ("controller", "controllers"),
        Pole => ("pole", "poles"),
        FoundationSet => ("foundation", "foundations"),
        Cable => ("cable", "cables"),
        ProtectionDevice => ("protection", "protection"),
        Enclosure => ("enclosure", "enclosures"),
        Bracket => ("bracket", "brackets"),
        ServiceRate => ("service", "services"),
        _ => throw new ArgumentException($"{part.GetType().Name} is no family of the catalogue", nameof(part)),
    };

    /// <summary>Families for which spares can be stated.</summary>
    public static readonly IReadOnlyList<string> SpareFamilies =
        ["battery", "bracket", "cable", "controller", "enclosure", "foundation", "luminaire", "module", "pole", "protection"];

    public static string Unit(Part part) => part switch
    {
        ServiceRate service => service.Unit,
        Cable => "m",
        FoundationSet => "set",
        _ => "No.",
    };

    /// <summary>Catalogue description and key ratings.</summary>
    public static string Describe(Part part)
    {
        var ratings = Ratings(part);
        return ratings.Length == 0 ? part.Description : part.Description + "; " + ratings;
    }

    private static string Ratings(Part part) => part switch
    {
        Luminaire p => Text($"{p.InputPowerW:0.#} W, {p.FluxLm:0} lm, {p.ColourTemperatureK} K, IP{p.IpCode}, IK{p.IkCode:00}, L80 at {p.LifeL80H:0} h"),
        Module p => Text($"{p.RatedWp:0.#} Wp, Vmp {p.MaximumPowerV:0.0} V, Imp {p.MaximumPowerA:0.00} A, Voc {p.OpenCircuitV:0.0} V, {p.LengthM:0.00} m x {p.WidthM:0.00} m"),
        Battery p => Text($"{p.NominalVoltageV:0.#} V, {p.RatedAh:0.#} Ah at C/{p.RatedHours:0.#}, {p.CyclesAtDepth:0} cycles at {p.CycleDepthFraction * 100:0} % depth"),
        Controller p => Text($"{Kind(p.Kind)}, charge {p.RatedChargeA:0.#} A, load {p.RatedLoadA:0.#} A, system {Voltages(p)} V, array up to {p.MaxArrayV:0.#} V"),
        Pole p => Text($"height {p.HeightM:0.0#} m, {p.BaseDiameterMm:0}/{p.TopDiameterMm:0} mm, wall {p.WallMm:0.0#} mm, yield {p.YieldMPa:0} MPa, zinc {p.ZincUm:0} um"),
        FoundationSet p => Text($"{p.AnchorBoltCount} bolts M{p.AnchorBoltMm:0} x {p.AnchorBoltLengthMm:0} mm, for a block of {p.LengthM:0.00} m x {p.WidthM:0.00} m x {p.DepthM:0.00} m"),
        Cable p => Text($"{p.Cores} x {p.CrossSectionMm2:0.#} mm2, {Insulation(p.Insulation)}"),
        ProtectionDevice { RatedA: > 0 } p => Text($"{p.RatedA:0.#} A, {p.RatedV:0} V DC"),
        ProtectionDevice { RatedV: > 0 } p => Text($"{p.RatedV:0} V DC"),
        Enclosure p => Text($"usable volume {p.UsableVolumeL:0} l, up to {p.MaxContentKg:0} kg, IP{p.IpCode}"),
        Bracket p => Text($"module area up to {p.MaxModuleAreaM2:0.00} m2, tilt {p.MinTiltDegrees:0} to {p.MaxTiltDegrees:0} degrees"),
        _ => "",
    };

    private static string Kind(ControlKind kind) => kind == ControlKind.Tracking ? "maximum-power tracking" : "pulse-width control";

    private static string Voltages(Controller p) => string.Join("/", p.SystemVoltagesV.Select(v => v.ToString("0.#", CultureInfo.InvariantCulture)));

    private static string Insulation(CableInsulation insulation) => insulation == CableInsulation.Pvc70 ? "PVC, 70 degC" : "cross-linked, 90 degC";

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
