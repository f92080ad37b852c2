using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Commissioning;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Forms;

/// <summary>
/// Settings, commissioning and acceptance sheets, to be used at the pole: how each kit is set and connected, the tests with boxes, the light
/// to be read when new, the as-built record and who signs. Holds no amount of money. Same design, same bytes.
/// </summary>
public static class SettingsSheets
{
    private const string Box = "□";
    private const double WriteInPt = 17;

    private static readonly ImmutableArray<string> Signers =
        ["Installer", "Licensed electrician: circuits, settings, tests", "Licensed structural engineer: pole, bolts, foundation", "For the employer: accepted"];

    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design));
    }

    internal static PaperDocument Document(TenderDesign design)
    {
        var head = design.Tender.Head;
        const string Name = "Settings, commissioning and acceptance sheets";
        ImmutableArray<Block> body = [.. design.Kits.SelectMany((k, i) => Kit(design, k, first: i == 0))];
        return new PaperDocument($"{head.Reference} {head.Title}: settings and acceptance", head.Bidder, Name, $"{head.Reference}  ·  {Name}", head.IssueDate, [.. Opening(design), Contents.For(body), new PageBreak(), .. body])
        { Wording = Echoes.WordingOf(design) };
    }

    private static IEnumerable<Block> Opening(TenderDesign design)
    {
        var head = design.Tender.Head;
        yield return new Paragraph("Settings, commissioning and acceptance", TextStyle.BodyStrong);
        yield return new Paragraph(head.Title, TextStyle.Title, AfterSteps: 1);
        yield return new Paragraph($"{head.Reference}, {Figures.Date(head.IssueDate)}", TextStyle.Section, AfterSteps: 2);
        yield return new Paragraph(
            "Two sheets a kit; the second is copied for every pole. Set-points are calculated for the kit and are to be compared with the data sheets of battery and controller: where "
            + "these or the local code differ they prevail. Electrical work is done and signed by a licensed electrician, foundations and poles by a licensed structural engineer. "
            + "Batteries can burn and burst: no ring, no watch, tools insulated, eyes covered; nobody works under a lifted pole.");
        if (design.Kits.IsEmpty) yield return new Paragraph("No kit was designed.");
    }

    private static IEnumerable<Block> Kit(TenderDesign design, Kit kit, bool first)
    {
        var settings = KitSetter.Of(design, kit);
        if (!first) yield return new PageBreak();
        yield return new Heading(1, $"Kit {kit.Id}: settings and connection");
        if (kit.Parts.Integrated is { } unit)
        {
            yield return SealedUnit.SetTable(unit, settings);
            yield return new Paragraph(SealedUnit.MakersOwn, TextStyle.Small);
        }
        else
        {
            yield return SetTable(kit, settings);
            yield return TemperatureTable(settings);
            yield return new Paragraph("Where each value comes from: " + Words.Unit(string.Join("; ", settings.Controller.Basis)) + ".", TextStyle.Small);
        }

        yield return ScheduleTable(design, kit);
        yield return OrderTable(settings, kit.Parts.Integrated is not null);
        yield return new PageBreak();
        yield return new Heading(1, $"Kit {kit.Id}: tests, light and record of one pole");
        yield return TestTable(settings);
        yield return LightTable(settings);
        yield return RecordTable(kit);
        yield return SignatureTable();
    }

    private static TableBlock SetTable(Kit kit, KitSettings settings)
    {
        var (p, c) = (kit.Parts, settings.Controller);
        Row Line(string name, string value) => Row.Of(name, value, "");
        return new TableBlock(
            $"Settings of controller {p.Controller.Code} with battery {p.Battery.Code}, voltages for the whole battery at 25 °C",
            [new("Setting", FixedPt: 130), new("To be set", Share: 2), new("As set", FixedPt: 110)],
            [
                Line("Battery type", Words.Of(p.Battery.Chemistry)),
                Line("System voltage", $"{Figures.Short(settings.SystemVoltageV)} V ({BatteryWords(p)})"),
                Line("Absorption", Volt(c.At25C.AbsorptionV)),
                Line("Float", Volt(c.At25C.FloatV)),
                Line("Equalise", c.At25C.EqualiseV is { } v ? Volt(v) + ", as often as the battery's maker asks" : "none: switch it off"),
                Line("Temperature compensation", c.CompensationPerK == 0 ? "none: switch it off" : $"{Figures.Signed(c.CompensationPerK * 1000, 0)} mV/K for the whole battery, from 25 °C"),
                Line("Load off (disconnect)", Volt(c.DisconnectV)),
                Line("Load on again (reconnect)", Volt(c.ReconnectV)),
                Line("No charging below", $"{Figures.Signed(p.Battery.LeastChargeC, 0)} °C at the battery"),
                Line("Greatest charge current", $"{Figures.Short(settings.GreatestChargeA)} A"),
                Line("Modules", ModuleWords(p)),
                .. p.ControllerCount > 1 ? [Line("Controllers side by side", $"{Figures.Number(p.ControllerCount, 0)}, all set alike, each with its own share of the modules and its own fused leads to the battery; the luminaire hangs on one")] : Array.Empty<Row>(),
                .. settings.Sites.GroupBy(s => (s.TiltDegrees, s.AzimuthDegrees)).Select(g => Line(
                    $"Tilt and direction, {Words.List(g.Select(s => s.SiteId), 5)}", $"{Figures.Short(g.Key.TiltDegrees)}° from level, facing {Figures.Short(g.Key.AzimuthDegrees)}° clockwise from true north")),
            ])
        {
            Compact = true,
            Tight = true,
            KeepTogether = true,
        };
    }

    private static TableBlock TemperatureTable(KitSettings settings) => new(
        $"Charge set-points by temperature of the battery, {Figures.Signed(settings.ColdC, 0)} to {Figures.Signed(settings.HotC, 0)} °C at this kit's sites: to compare with the meter",
        [new("Battery", "°C", Side: Side.End), new("Absorption", "V", Side: Side.End), new("Float", "V", Side: Side.End), new("Equalise", "V", Side: Side.End)],
        [.. settings.Controller.ByTemperature.Select(t => Row.Of(
            Figures.Signed(t.BatteryC, 0), Figures.Number(t.AbsorptionV, 2), Figures.Number(t.FloatV, 2), t.EqualiseV is { } v ? Figures.Number(v, 2) : "–"))])
    {
        Compact = true,
        Tight = true,
        KeepTogether = true,
    };

    private static TableBlock ScheduleTable(TenderDesign design, Kit kit) => new(
        "Lighting schedule to be set; 100 % is the level of the site in the table of light",
        [new("Schedule", FixedPt: 80), new("Hours and levels", Share: 2), new("Sites", Share: 1)],
        [.. design.Sites.Where(s => s.KitId == kit.Id).GroupBy(s => s.Site.Schedule.Name, StringComparer.Ordinal)
            .Select(g => Row.Of(g.Key, Words.Of(g.First().Site.Schedule), Words.List(g.Select(s => s.Site.Id))))])
    {
        Compact = true,
    };

    private static TableBlock OrderTable(KitSettings settings, bool isSealed) => new(
        isSealed ? "Order of work" : "Order of connection; part in the reverse order",
        [new("", Side: Side.End, FixedPt: 14), new(isSealed ? "Work" : "Connect", Share: 1), new("Why in this order", Share: 1.2), new("Done", FixedPt: 28)],
        [.. settings.Order.Select(s => Row.Of(Figures.Number(s.Number, 0), s.What, s.Reason, Box))])
    {
        Compact = true,
        KeepTogether = true,
    };

    private static TableBlock TestTable(KitSettings settings) => new(
        "Tests; tick when passed",
        [new("", Side: Side.End, FixedPt: 14), new("Test", FixedPt: 68), new("How", Share: 1), new("Must show", Share: 1.2), new("Found", FixedPt: 66), new("Pass", FixedPt: 26)],
        [.. settings.Tests.Select((t, i) => Row.Of(Figures.Number(i + 1, 0), t.Name, t.How, Words.Unit(t.MustShow).Replace("Ohm", "Ω", StringComparison.Ordinal), "", Box))])
    {
        Compact = true,
    };

    private static TableBlock LightTable(KitSettings settings) => new(
        "Light to be read when new: the maintained value asked for over the maintenance factor (EN 13201-4, from memory)",
        [
            new("Site", FixedPt: 28), new("Class", FixedPt: 28), new("Level", "of output", 1, Side.End, 40), new("MF", "", 1, Side.End, 24),
            new("Average", "least, lx", 1, Side.End, 38), new("Minimum", "least, lx", 1, Side.End, 40), new("Average", "expected", 1, Side.End, 42), new("Minimum", "expected", 1, Side.End, 42),
            new("Grid", Share: 1), new("Read", FixedPt: 44),
        ],
        [.. settings.Sites.Select(s => Row.Of(
            s.SiteId, s.ClassName, Figures.Percent(s.LevelFraction), Figures.Number(s.MaintenanceFactor, 2), Lux(s.RequiredNewLx), Lux(s.RequiredNewMinimumLx),
            Lux(s.ExpectedNewLx), Lux(s.ExpectedNewMinimumLx), s.Grid, ""))])
    {
        Compact = true,
    };

    private static TableBlock RecordTable(Kit kit)
    {
        var p = kit.Parts;
        string[] left = p.Integrated is { } unit
            ? ["Site and pole number", "Latitude, longitude (GPS)", $"Unit {unit.Code}, serial no.", "Switched on, day and hour"]
            : ["Site and pole number", "Latitude, longitude (GPS)", $"Luminaire {p.Luminaire.Code}, serial no.", $"Modules {p.Module.Code}, serial no.", $"Battery {p.Battery.Code}, serial no."];
        string[] right = p.Integrated is not null
            ? ["Date, weather", "Module faces, °", "Anchor bolts tightened to, Nm", "Earth electrode, Ω"]
            : ["Date, weather", "Module tilt and direction, °", $"Controller {p.Controller.Code}, serial no.", "Anchor bolts tightened to, Nm", "Earth electrode, Ω"];
        return new TableBlock(
            "As built, one pole",
            [new("", FixedPt: 118), new(""), new("", FixedPt: 118), new("")],
            [.. left.Zip(right).Select(r => Row.Of(r.First, "", r.Second, "") with { LeastHeightPt = WriteInPt })])
        {
            Compact = true,
            KeepTogether = true,
        };
    }

    private static TableBlock SignatureTable() => new(
        "Signatures",
        [new("Role", Share: 1.5), new("Name and licence", Share: 1.3), new("Signature", Share: 1.1), new("Date", FixedPt: 60)],
        [.. Signers.Select(r => Row.Of(r, "", "", "") with { LeastHeightPt = 19 })])
    {
        Compact = true,
        KeepTogether = true,
    };

    private static string BatteryWords(PoleParts p) => Figures.Count(p.BatteryCount, "battery", "batteries") + (p.BatteryCount == 1 ? "" : $", {p.BatteriesInSeries} in series, {p.BatteryStrings} in parallel");

    private static string ModuleWords(PoleParts p) =>
        Figures.Count(p.ModuleCount, "module", "modules") + (p.ModuleCount == 1 ? "" : $", {p.ModulesInSeries} in series, {p.ModuleCount / p.ModulesInSeries} in parallel");

    private static string Volt(double volt) => Figures.Number(volt, 2) + " V";

    private static string Lux(double? lx) => lx is { } value ? Figures.Number(value, 2) : "–";
}
