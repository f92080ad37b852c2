using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Tests.Samples;

/// <summary>
/// An invented tender, designed by hand: three sites, two kits, two lots; or many sites over twelve kits.
/// The figures are plausible, not calculated: documents and bills are tested on it, never the engineering.
/// </summary>
public static class HandMadeDesign
{
    public static readonly LightingSchedule Schedule = new(
        "village-night",
        [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 1), new SchedulePart(NightAnchor.Dawn, -2, NightAnchor.Dawn, 0, 1)],
        0.3);

    public static readonly PriceBasis Prices = new(
        FreightFraction: 0.12m,
        DutyFraction: 0.10m,
        OverheadFraction: 0.11m,
        ProfitFraction: 0.08m,
        FinanceFraction: 0.025m,
        ContingencyFraction: 0.05m,
        TaxFraction: 0.16m,
        SpareFractions: ImmutableSortedDictionary<string, decimal>.Empty
            .Add("battery", 0.03m).Add("controller", 0.04m).Add("luminaire", 0.03m).Add("module", 0.02m).Add("protection", 0.10m),
        CableWasteFraction: 0.05m,
        MaintenanceYears: 2,
        RateDecimals: 2);

    /// <summary>Three sites (8, 6 and 5 poles), kits K1 and K2, lots A (sites 1 and 2) and B (site 3).</summary>
    public static TenderDesign Small()
    {
        ImmutableArray<PoleParts> makeUps = [MakeUp(0, 1, 0, 0), MakeUp(1, 2, 1, 1)];
        ImmutableArray<SiteDesign> sites =
        [
            At(1, "S-01", "Lower market road", SiteKind.Road, "A", "K1", 8, makeUps[0]),
            At(2, "S-02", "Primary school yard", SiteKind.Yard, "A", "K2", 6, makeUps[1]),
            At(3, "S-03", "Path to the clinic", SiteKind.Path, "B", "K1", 5, makeUps[0]),
        ];
        return Assemble(sites, makeUps, [new UnmetSite("S-04", "Ferry landing", "no pole of the catalogue carries the wind at 58 m/s")]);
    }

    /// <summary>As many sites as asked for, over twelve kits and four lots, 3 to 13 poles each.</summary>
    public static TenderDesign Many(int siteCount)
    {
        ImmutableArray<PoleParts> makeUps = [.. Enumerable.Range(0, 12).Select(i => MakeUp(i % 3, i % 3, i % 2, i / 6))];
        var sites = Enumerable.Range(0, siteCount).Select(i => At(
            i + 1,
            "S-" + (i + 1).ToString("0000", CultureInfo.InvariantCulture),
            "Village " + ((i / 4) + 1).ToString(CultureInfo.InvariantCulture) + ", street " + ((i % 4) + 1).ToString(CultureInfo.InvariantCulture),
            (SiteKind)(i % 3),
            "ABCD"[i % 4].ToString(),
            "K" + ((i % 12) + 1).ToString(CultureInfo.InvariantCulture),
            3 + (i * 7 % 11),
            makeUps[i % 12]));
        return Assemble([.. sites], makeUps, []);
    }

    private static TenderDesign Assemble(ImmutableArray<SiteDesign> sites, ImmutableArray<PoleParts> makeUps, ImmutableArray<UnmetSite> unmet)
    {
        var kits = makeUps
            .Select((parts, i) => KitOf("K" + (i + 1).ToString(CultureInfo.InvariantCulture), parts, sites))
            .Where(kit => kit.Poles > 0);
        return new TenderDesign(TenderFile(), HandMadeParts.Catalog, Digest('c'), Rules, Inputs, sites, [.. kits], unmet, Notices) { Curves = [.. kits.Select(CurveOf)] };
    }

    private static KitCurve CurveOf(Kit kit) => new(
        kit.Id, kit.SiteIds[0],
        [.. new[] { 0.7, 0.8, 1.0, 1.3, 1.8 }.Select(r => new CurvePoint(kit.Parts.ArrayWp * r, kit.Parts.BatteryRatedWh * (0.35 + (0.12 / (r - 0.55)))))],
        new CurvePoint(kit.Parts.ArrayWp, kit.Parts.BatteryRatedWh), kit.Parts.BatteryRatedWh * 0.93, kit.Parts.ArrayWp * 0.81, 1);

    private static Tender TenderFile() => new(
        new TenderHead(
            "SL/2027/014", "Solar street lighting of the market ward", "Municipality of Sample Town", "Sample Bidder",
            new DateOnly(2027, 3, 15), 120, "KES", 150, [new ExchangeRate("EUR", 141.2m), new ExchangeRate("USD", 129.5m)]),
        "tender", "sites.xlsx", "catalog-sample", "design-rules.yaml", null,
        ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add(Schedule.Name, Schedule),
        new ReliabilityTarget(1, 3), Prices);

    private static Kit KitOf(string id, PoleParts parts, ImmutableArray<SiteDesign> sites)
    {
        var own = sites.Where(s => s.KitId == id).ToImmutableArray();
        if (own.IsEmpty) return new Kit(id, parts, [], 0, [], []);
        return new Kit(id, parts, [.. own.Select(s => s.Site.Id)], own.Sum(s => s.Poles), own[0].Checks, [.. own[0].Checks.Select(_ => own[0].Site.Id)]);
    }

    private static PoleParts MakeUp(int lamp, int module, int battery, int pole) => new(
        HandMadeParts.Luminaires[lamp], HandMadeParts.Modules[module], 1, 1, HandMadeParts.Batteries[battery], 1, 1, HandMadeParts.Controllers[module == 2 ? 1 : 0],
        HandMadeParts.Poles[pole], HandMadeParts.Brackets[0], HandMadeParts.Enclosures[0], HandMadeParts.Foundations[pole],
        [
            new Circuit("module to controller", HandMadeParts.Cables[1 + (module / 2)], 6.5 + pole, 5.9, 0.021, 33, HandMadeParts.Protection[1]),
            new Circuit("battery to controller", HandMadeParts.Cables[2], 1, 6.1, 0.004, 45, HandMadeParts.Protection[0]),
            new Circuit("controller to luminaire", HandMadeParts.Cables[0], 7.2 + pole, 1.3 + lamp, 0.014, 19, null),
        ],
        [HandMadeParts.Protection[2], HandMadeParts.Protection[3]]);

    private static SiteDesign At(int row, string id, string name, SiteKind kind, string lot, string kitId, int poles, PoleParts parts)
    {
        var site = new Site(
            id, name, row + 1, -0.42 - (0.013 * (row % 40)), 34.75 + (0.011 * (row % 60)), kind, poles * 28, kind == SiteKind.Yard ? 25 : 5, HandMadeFigures.Target, Schedule, null,
            Arrangement.SingleSided, 0.03, [6, 8], 28, Terrain.II, SoilClasses.Medium, row % 3 != 0, lot, null, row == 1 ? "overhead line near pole 4" : "");
        var energy = HandMadeFigures.Energy(parts);
        var structure = HandMadeFigures.Structure(parts);
        var light = HandMadeFigures.Light(kind, poles, parts.Pole.HeightM);
        return new SiteDesign(
            site, HandMadeFigures.Climate(site), poles, kitId, parts, light, 0.8, energy, structure, HandMadeFigures.Checks(parts, light, energy, structure),
            site.SoilStated ? [] : [Diagnostic.Warning("TK501", "soil not stated, worst class taken: 71.8 kPa against 95.8 kPa for medium; state the soil or survey it", new Place(Site: id))]);
    }

    private static readonly ImmutableArray<DesignRule> Rules =
    [
        new("array.derating", 0.86, 0.7, 1, "", "common practice, no source", "energy balance", false),
        new("array.load_ratio", 1.2, 1.1, 1.5, "", "IEEE 1562, from memory", "hand method", false),
        new("array.recovery", 10, 5, 30, "d", "common practice, no source", "hand method", false),
        new("battery.end_of_life", 0.8, 0.6, 1, "", "IEEE 1013, from memory", "battery capacity", false),
        new("battery.enclosure_rise", 8, 0, 20, "K", "common practice, no source", "battery temperature", true),
        new("controller.compensation", -4.5, -5, -3, "mV/K per cell", "common practice, no source", "controller settings", false),
        new("foundation.overturning", 1.5, 1.3, 2, "", "common practice, no source", "foundation", false),
        new("light.maintenance_factor", 0.8, 0.6, 0.95, "", "CIE 154, from memory", "illuminance", false),
        new("wiring.earth_ohm", 100, 1, 200, "Ohm", "common practice, no source", "acceptance sheets", false),
    ];

    private static readonly ImmutableArray<InputDigest> Inputs = [new("tender.yaml", Digest('a')), new("sites.xlsx", Digest('b')), new("design-rules.yaml", Digest('d'))];

    private static readonly ImmutableArray<Diagnostic> Notices =
    [
        Diagnostic.Warning("TK310", "climate is an estimate, nearest station 214 km away; supply twelve monthly means with their source"),
        Diagnostic.Note("TK101", "heading 'Lenght' read as length", new Place("sites.xlsx", "Sites", 1, "D")),
    ];

    private static string Digest(char digit) => new(digit, 64);
}
