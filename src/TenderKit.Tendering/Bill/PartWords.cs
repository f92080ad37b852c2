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
        Fixing => ("fixing", "fixings"),
        IntegratedUnit => ("integrated unit", "integrated units"),
        ServiceRate => ("service", "services"),
        _ => throw new ArgumentException($"{part.GetType().Name} is no family of the catalogue", nameof(part)),
    };

    /// <summary>Families for which spares can be stated.</summary>
    public static readonly IReadOnlyList<string> SpareFamilies =
        ["battery", "bracket", "cable", "controller", "enclosure", "foundation", "integrated unit", "luminaire", "module", "pole", "protection"];

    public static string Unit(Part part) => part switch
    {
        ServiceRate service => service.Unit,
        Cable => "m",
        FoundationSet => "set",
        _ => "No.",
    };

    /// <summary>Catalogue description, and the key ratings that it does not already state.</summary>
    public static string Describe(Part part)
    {
        var named = Named(part);
        var missing = Ratings(part).Where(r => !r.Said.Any(said => States(part.Description, said))).Select(r => r.Words).ToArray();
        return missing.Length == 0 ? named : named + "; " + string.Join(", ", missing);
    }

    /// <summary>The description up to its first semicolon, to name a part that is described in full elsewhere.</summary>
    public static string Short(Part part) => Named(part).Split(';')[0];

    /// <summary>A battery described by its chemistry alone would not say what it is.</summary>
    private static string Named(Part part) =>
        part is Battery && !part.Description.Contains("batter", StringComparison.OrdinalIgnoreCase) ? "Battery: " + part.Description : part.Description;

    /// <summary>Whether a text holds a phrase that is not part of a longer word or number: "15 W" is not stated by "115 W".</summary>
    private static bool States(string text, string phrase)
    {
        for (var at = text.IndexOf(phrase, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(phrase, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            var before = at == 0 ? ' ' : text[at - 1];
            var after = at + phrase.Length == text.Length ? ' ' : text[at + phrase.Length];
            if (!char.IsLetterOrDigit(before) && before != '.' && !char.IsLetterOrDigit(after)) return true;
        }

        return false;
    }

    private static Rating[] Ratings(Part part) => part switch
    {
        Luminaire p => [Of($"{p.InputPowerW:0.#} W"), Of($"{p.FluxLm:0} lm"), Of($"{p.ColourTemperatureK} K"), Of($"IP{p.IpCode}"), Of($"IK{p.IkCode:00}"), Of($"L80 at {p.LifeL80H:0} h")],
        Module p => ModuleRatings(p),
        Battery p => [Of($"{p.NominalVoltageV:0.#} V"), Of($"{p.RatedAh:0.#} Ah at C/{p.RatedHours:0.#}"), Of($"{p.CyclesAtDepth:0} cycles at {p.CycleDepthFraction * 100:0} % depth")],
        Controller p => ControllerRatings(p),
        Pole p => PoleRatings(p),
        FoundationSet p => [new([Text($"{p.AnchorBoltCount} bolts"), Text($"{p.AnchorBoltCount} galvanised bolts")], Text($"{p.AnchorBoltCount} bolts")), Of($"M{p.AnchorBoltMm:0} x {p.AnchorBoltLengthMm:0} mm"), new([Text($"{p.LengthM:0.0#} x {p.WidthM:0.0#} x {p.DepthM:0.0#} m"), Text($"{p.LengthM:0.##} x {p.WidthM:0.##} x {p.DepthM:0.##} m")], Text($"for a block {p.LengthM:0.0#} x {p.WidthM:0.0#} x {p.DepthM:0.0#} m"))],
        Cable p => [Of($"{p.Cores} x {p.CrossSectionMm2:0.#} mm2"), p.Insulation == CableInsulation.Pvc70 ? new("PVC", "PVC, 70 degC") : new("cross-linked", "cross-linked, 90 degC")],
        ProtectionDevice { RatedA: > 0 } p => [Of($"{p.RatedA:0.#} A"), new(Text($"{p.RatedV:0} V"), Text($"{p.RatedV:0} V DC"))],
        ProtectionDevice { RatedV: > 0 } p => [new(Text($"{p.RatedV:0} V"), Text($"{p.RatedV:0} V DC"))],
        Enclosure p => [Of($"usable volume {p.UsableVolumeL:0} l"), Of($"up to {p.MaxContentKg:0} kg"), Of($"IP{p.IpCode}")],
        Bracket p => [new(Text($"up to {p.MaxModuleAreaM2:0.0#} m2"), Text($"module area up to {p.MaxModuleAreaM2:0.0#} m2")), Of($"tilt {p.MinTiltDegrees:0} to {p.MaxTiltDegrees:0} degrees")],
        IntegratedUnit p => [Of($"{p.InputPowerW:0.#} W"), Of($"{p.FluxLm:0} lm"), Of($"{p.RatedWp:0.#} Wp"), Of($"{p.RatedWh:0} Wh"), Of($"IP{p.IpCode}")],
        _ => [],
    };

    private static Rating[] ModuleRatings(Module p) =>
    [
        Of($"{p.RatedWp:0.#} Wp"), Of($"Vmp {p.MaximumPowerV:0.0} V"), Of($"Imp {p.MaximumPowerA:0.00} A"), Of($"Voc {p.OpenCircuitV:0.0} V"),
        Of($"{p.LengthM * 1000:0} x {p.WidthM * 1000:0} mm"),
    ];

    private static Rating[] ControllerRatings(Controller p) =>
    [
        p.Kind == ControlKind.Tracking ? new("tracking", "maximum-power tracking") : new("pulse-width", "pulse-width control"),
        new(Text($"{p.RatedChargeA:0.#} A"), Text($"charge {p.RatedChargeA:0.#} A")), Of($"load {p.RatedLoadA:0.#} A"), new(Voltages(p), "system " + Voltages(p)), Of($"array up to {p.MaxArrayV:0.#} V"),
    ];

    private static Rating[] PoleRatings(Pole p) =>
    [
        new(Text($"{p.HeightM:0.##} m"), Text($"height {p.HeightM:0.##} m")), Of($"{p.BaseDiameterMm:0}/{p.TopDiameterMm:0} mm"), Of($"wall {p.WallMm:0.##} mm"),
        new(Text($"S{p.YieldMPa:0}"), Text($"yield {p.YieldMPa:0} MPa")), Of($"zinc {p.ZincUm:0} um"),
    ];

    private static string Voltages(Controller p) => string.Join("/", p.SystemVoltagesV.Select(v => v.ToString("0.#", CultureInfo.InvariantCulture))) + " V";

    private static Rating Of(FormattableString text) => new(Text(text), Text(text));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);

    /// <summary>A rating: what a description says when it already states it, and how to add it when not.</summary>
    private sealed record Rating(string[] Said, string Words)
    {
        public Rating(string said, string words)
            : this([said], words)
        {
        }
    }
}
