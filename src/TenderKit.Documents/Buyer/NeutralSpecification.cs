using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Buyer;

/// <summary>
/// The buyer's specification out of the same requirement: what is asked, where, under which conditions, how it is proved; no make, no part, no
/// bidder and no money. Same design, same bytes.
/// </summary>
public static class NeutralSpecification
{
    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design));
    }

    internal static PaperDocument Document(TenderDesign design)
    {
        var head = design.Tender.Head;
        Block[] body = [.. design.Sites.GroupBy(s => s.Site.Lot).SelectMany((lot, i) => Lot(design, lot.Key, [.. lot], i > 0)), .. Common()];
        return new PaperDocument($"{head.Reference} {head.Title}: specification", head.Employer, "Specification", $"{head.Reference}  ·  Specification", head.IssueDate,
            [.. Opening(design), Contents.For(body), new PageBreak(), .. body])
        { Wording = Echoes.WordingOf(design) };
    }

    private static IEnumerable<Block> Opening(TenderDesign design)
    {
        var head = design.Tender.Head;
        yield return new Paragraph("Specification", TextStyle.BodyStrong);
        yield return new Paragraph(head.Title, TextStyle.Title, AfterSteps: 1);
        yield return new Paragraph($"{head.Reference}, {head.Employer}, {Figures.Date(head.IssueDate)}", TextStyle.Section, AfterSteps: 2);
        yield return new Paragraph("Stand-alone lights, each with its own module, battery and control, in separate parts or in one unit. What is asked is the light, its hours and its reliability; the parts, their sizes and the "
            + "spacing of the poles are the bidder's to choose and to prove. Nothing here names or favours a make; where a standard is named, an equal one is accepted when the bidder shows that it is equal.");
        yield return new Paragraph("Draft for the buyer's own officers: licensed engineers check it, and local law on procurement and local codes prevail over every line.");
        if (!design.Unmet.IsEmpty) yield return new Paragraph("For these sites no design was found with parts known to the writer, so they are left out; ask the market before specifying them: " + Words.List(design.Unmet.Select(u => u.SiteId + " " + u.Name), 8) + ".");
    }

    private static IEnumerable<Block> Lot(TenderDesign design, string lot, ImmutableArray<SiteDesign> sites, bool breaks)
    {
        if (breaks) yield return new PageBreak();
        yield return new Heading(1, lot.Length == 0 ? "What is asked" : "Lot " + lot);
        yield return new Heading(2, "Sites and light");
        yield return new TableBlock("Sites",
            [new("Site", FixedPt: 36), new("Name", Share: 1), new("Latitude", "degrees", 1, Side.End, 52), new("Longitude", "degrees", 1, Side.End, 52), new("Kind", FixedPt: 32), new("Size", "m", 1, Side.End, 56),
                new("Class", FixedPt: 40), new("Hours", Share: 0.45), new("Height", "m", 1, Side.End, 40), new("Poles", FixedPt: 44)],
            [.. sites.Select(s => Row.Of(s.Site.Id, s.Site.Name, Where(s, s.Site.LatitudeDegrees), Where(s, s.Site.LongitudeDegrees), Words.Of(s.Site.Kind),
                $"{Figures.Short(s.Site.LengthM)} × {Figures.Short(s.Site.WidthM)}", s.Site.Target.Name, s.Site.Schedule.Name,
                string.Join("–", new[] { s.Site.MountingHeightsM[0], s.Site.MountingHeightsM[^1] }.Distinct().Select(Figures.Short)), s.Site.FixedPoles is { } fixedPoles ? Figures.Number(fixedPoles, 0) : "bidder's"))])
        { Compact = true };
        foreach (var table in Classes(sites)) yield return table;
        yield return new TableBlock("Hours", [new("Hours", FixedPt: 90), new("Part of the night and level")],
            [.. sites.Select(s => s.Site.Schedule).DistinctBy(s => s.Name).Select(s => Row.Of(s.Name, ScheduleWords.Of(s)))])
        { Compact = true };
        yield return new Heading(2, "Reliability and least ratings");
        yield return new TableBlock("Least requirements, measured; the hardest of the lot's sites", [new("Item", FixedPt: 80), new("Requirement"), new("Value", Side: Side.End, FixedPt: 110)],
            [.. NeutralRequirements.Of(design, sites).Select(r => Row.Of(r.Item, r.Property, r.Required))])
        { Compact = true };
        yield return new Heading(2, "Environment");
        yield return new TableBlock("Conditions of the sites",
            [new("Site", FixedPt: 36), new("Air lowest", "°C", 1, Side.End, 44), new("highest", "°C", 1, Side.End, 38), new("Dullest month", "kWh/m² a day", 1, Side.End, 64), new("of which counted", "fraction", 1, Side.End, 70),
                new("Obstacles", Share: 1), new("Wind", Share: 1.1), new("Corrosivity", FixedPt: 52), new("Ground", Share: 0.9)],
            [.. sites.Select(Environment)])
        { Compact = true };
        foreach (var wind in sites.Select(StructureWords.Wind).Distinct()) yield return new Paragraph("What the wind speed is: " + wind + ".", TextStyle.Small, AfterSteps: 0);
        yield return new Paragraph("Irradiation is on the horizontal; the fraction counted allows for what the data may be wrong by. Where the ground is not stated the bidder surveys it before the foundations are made; until then quantities are provisional.", TextStyle.Small);
    }

    private static string Where(SiteDesign site, double degrees) => site.Site.IsPositionStated ? Figures.Signed(degrees, 4) : "not stated";

    private static IEnumerable<TableBlock> Classes(ImmutableArray<SiteDesign> sites)
    {
        var targets = sites.Select(s => s.Site.Target).DistinctBy(t => (t.Name, t.AverageLx)).OrderBy(t => t.Name, StringComparer.Ordinal).ToImmutableArray();
        var lit = targets.Where(t => t.AverageLx > 0).ToImmutableArray();
        var roads = targets.Where(t => t.AverageLx <= 0).Select(t => RoadClasses.Find(t.Name)).OfType<RoadClass>().Where(c => c.Luminance is not null).ToImmutableArray();
        if (!lit.IsEmpty)
            yield return new TableBlock("Light to be kept up to the day of cleaning and replacement",
                [new("Class", FixedPt: 60), new("Average at least", "lx", 1, Side.End, 66), new("Least point", "lx", 1, Side.End, 54), new("Uniformity", "least/average", 1, Side.End, 66), new("Average at most", "lx", 1, Side.End, 66), new("Source")],
                [.. lit.Select(t => Row.Of(t.Name, Figures.Short(t.AverageLx), Number(t.MinimumLx), Number(t.OverallUniformity), Number(t.AverageCeilingLx), t.Source))])
            { Compact = true };
        if (!roads.IsEmpty)
            yield return new TableBlock("Luminance of the dry carriageway to be kept up to the day of cleaning and replacement, road surface R3",
                [new("Class", FixedPt: 40), new("Average at least", "cd/m²", 1, Side.End, 66), new("Overall", "uniformity", 1, Side.End, 56), new("Lengthwise", "uniformity", 1, Side.End, 56),
                    new("Threshold", "increment, %", 1, Side.End, 60), new("Edge ratio", "least", 1, Side.End, 50), new("Source")],
                [.. roads.Select(c => Row.Of(c.Name, Figures.Short(c.Luminance!.AverageCdM2), Figures.Short(c.Luminance.OverallUniformity), Number(c.Luminance.LongitudinalUniformity),
                    Number(c.Glare?.IncrementFraction * 100), Number(c.EdgeRatio), c.Source))])
            { Compact = true };
    }

    private static string Number(double? value) => value is { } v ? Figures.Short(v) : "–";

    private static Row Environment(SiteDesign s) => Row.Of(
        s.Site.Id, Figures.Signed(s.Climate.Monthly.RecordLowC, 0), Figures.Signed(s.Climate.Monthly.RecordHighC, 0), Figures.Number(s.Climate.Monthly.IrradiationKWhPerM2.Min(), 2), Figures.Number(s.Climate.CautiousFactor, 2),
        s.Site.Horizon is not null ? "horizon given" : s.Site.ShadedFraction > 0 ? Figures.Percent(s.Site.ShadedFraction) + " lost" : "free",
        $"{Figures.Short(s.Site.BasicWindMPerS)} m/s, terrain {Words.TerrainName(s.Site.Terrain)}", s.Site.Ground.Corrosivity is { } c ? $"{c}" : "not stated", (s.Site.SoilStated ? s.Site.Soil.Name : "not stated") + (s.Site.Ground.FloodProne ? ", floods" : ""));

    private static IEnumerable<Block> Common()
    {
        yield return new PageBreak();
        yield return new Heading(1, "Tests and acceptance");
        yield return new ItemList(
        [
            "Before delivery the bidder hands in the light calculation of every kind of site: file of the luminaire's light distribution, grid, maintenance factor with its parts, average, least point, uniformity.",
            "And the energy calculation: hourly over at least 20 years of weather with the monthly means above, battery at end of life, own uses and losses; the dark nights a year and the autonomy follow from it.",
            "And the calculation of pole and foundation for the wind above, signed by a licensed structural engineer.",
            "On site, the first pole of each kind: light when new measured at the grid points with a calibrated meter, dusk and dawn switching, levels and hours, charging current at noon, voltage drop, earth resistance.",
            "For every pole: upright, bolts tight, settings written down, lamp through one whole night.",
            "Trial: 30 nights without a dark one for which weather is not the cause. A pole that fails begins again after repair.",
            "Acceptance is signed by both sides pole by pole; training of the caretaker and drawings as built are part of it.",
        ],
            Numbered: true);
        yield return new Heading(1, "Documents to hand in");
        yield return new ItemList(
        [
            "Data sheets and test certificates of module, battery, control, luminaire (or of the unit), cables and protection, each with the standard and the laboratory.",
            "The calculations named above. Drawings of pole, foundation, connection.",
            "Warranty of each part in years and what it covers. Place of service and spare parts; time to answer.",
            "Battery: chemistry, expected life under this use, how it is carried and taken back under local law.",
            "Plan of maintenance. Programme of the works. Plan of safety for traffic, height, lifting, excavation, batteries.",
            "The two tables below, filled and signed, and the price form.",
        ],
            Numbered: true);
        yield return new Heading(1, "To be filled by the bidder");
        yield return new TableBlock("What is offered, by lot",
            [new("What", Share: 1.2), new("Unit", FixedPt: 56), new("Offered", Share: 1), new("Proof, page", Share: 0.8)], [.. Offered().Select(r => Row.Of(r.What, r.Unit, "", "") with { LeastHeightPt = 16 })])
        { Compact = true };
        yield return new TableBlock("Deviations; left empty it says that there are none",
            [new("Clause or table", FixedPt: 90), new("What is offered instead", Share: 1.2), new("Why it is equal or better", Share: 1.2)], [.. Enumerable.Range(0, 8).Select(_ => Row.Of("", "", "") with { LeastHeightPt = 24 })])
        { Compact = true };
        yield return new TableBlock(null, [new("For the bidder", Share: 1.4), new("Date", FixedPt: 80), new("Signature and stamp", Share: 1.4)], [Row.Of("", "", "") with { LeastHeightPt = 30 }]) { Compact = true, KeepTogether = true };
    }

    private static IEnumerable<(string What, string Unit)> Offered() =>
    [
        ("Luminaire or unit: maker and type", ""), ("Light output of the luminaire at the level used", "lm"), ("Electrical input at that level, driver included", "W"), ("Protection against dust and water, against blows", "IP, IK"),
        ("Highest air temperature", "°C"), ("Life to 80 % of the light", "h"), ("Modules: maker and type", ""), ("Power of the modules on a pole", "Wp"), ("Tilt and direction", "degrees"),
        ("Battery: maker, type, chemistry", ""), ("Rated energy on a pole", "Wh"), ("Greatest depth of discharge used", "%"), ("Expected life of the battery", "years"), ("Autonomy at end of life, coldest month", "nights"),
        ("Dark nights a year", "nights"), ("Control: maker and type", ""), ("Pole: height, protection against corrosion", "m, µm"), ("Foundation: size", "m"), ("Greatest spacing by class", "m"), ("Poles in all", ""),
    ];
}
