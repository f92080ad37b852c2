using System.Globalization;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Documents.Forms;

/// <summary>A page for each site to be filled on the ground: what the bid assumes, boxes for what is found, cautions, signature. No money in it. Same design, same bytes.</summary>
public static class SurveyForms
{
    private const double WriteInPt = 23;
    private const string Box = "□";

    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design));
    }

    internal static PaperDocument Document(TenderDesign design)
    {
        var head = design.Tender.Head;
        return new PaperDocument($"{head.Reference} {head.Title}: survey forms", head.Bidder, "Survey forms", $"{head.Reference}  ·  Survey forms", head.IssueDate,
            [.. Opening(design), .. design.Sites.SelectMany(s => Page(s.Site, $"{Figures.Number(s.Poles, 0)}, {Figures.Number(s.Light.SpacingM, 1)} m, {s.KitId}")),
                .. design.Unmet.Select(u => u.Site).OfType<Site>().SelectMany(s => Page(s, "none: no design was found, see the technical schedule"))])
        { Wording = Echoes.WordingOf(design) };
    }

    /// <summary>Degrees with decimal minutes, as a hand-held receiver shows them.</summary>
    internal static string DegreesMinutes(double degrees, string positive, string negative)
    {
        var thousandths = (long)Math.Round(Math.Abs(degrees) * 60_000, MidpointRounding.AwayFromZero);
        return string.Create(CultureInfo.InvariantCulture, $"{thousandths / 60_000}° {thousandths % 60_000 / 1000.0:00.000}′ {(degrees < 0 ? negative : positive)}");
    }

    private static IEnumerable<Block> Opening(TenderDesign design)
    {
        var head = design.Tender.Head;
        yield return new Paragraph("Survey forms", TextStyle.BodyStrong);
        yield return new Paragraph(head.Title, TextStyle.Title, AfterSteps: 1);
        yield return new Paragraph($"{head.Reference}, {Figures.Date(head.IssueDate)}", TextStyle.Section, AfterSteps: 2);
        var open = design.Sites.Select(s => s.Site).Concat(design.Unmet.Select(u => u.Site).OfType<Site>()).Count(s => !s.IsSurveyed);
        yield return new Paragraph(open == 0 ? "Every site is stated to be surveyed; the forms are for checking before work begins."
            : $"{Figures.Count(open, "site is", "sites are")} not surveyed. Until they are, their quantities are provisional. One page a site: the upper table is what the offer assumes; cross it out where the ground differs.");
        yield return new Paragraph("How to measure", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
        yield return new ItemList(
        [
            "Angles: stand where the pole will stand. With a compass go round in steps of 30 degrees clockwise from true north and read the angle from the level line up to the top of whatever hides the sky. Correct the compass for the local declination. A tree that grows counts with the height it will have when next cut.",
            "Angles are read at the eye. For a module higher up by h at an obstacle d away the angle is less; write the height of the eye and the distance where that matters.",
            "Soil by hand, at 0.5 m and at the depth of the foundation. Soft: a thumb goes in with ease, or sand runs down the sides of the hole. Medium: a thumb marks it with strong pressure; a spade is enough. Dense: the nail only scratches it; a pick is needed. A hand test (common practice, no source) sorts soils for an offer; it replaces no ground report where the code asks for one.",
            "Water: note how deep it stands in the hole after an hour, and ask two neighbours how high the worst flood came.",
        ],
            Numbered: true);
        yield return new Paragraph("How to bring it back", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
        yield return new ItemList(
        [
            "Type the answers into survey-answers.xlsx, a row a site, or straight into the site list under the same headings.",
            "Horizon: pairs of direction and angle with a colon between, such as 0:5 30:0 60:12 90:20; degrees, clockwise from north; at least two pairs, none above 80.",
            "Soil: dense, medium or soft. Flood prone: yes or no. Surveyed: the day, such as 2027-03-15. Then run the bid again.",
        ]);
        yield return new Paragraph("Cautions", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
        yield return new ItemList(
        [
            "Traffic: two persons, bright vests, face the traffic; the road authority's rules hold.",
            "Overhead lines: never raise a rod, ladder or tape below or near one; measure from the ground with an angle and a distance. The line's owner gives the distance to keep.",
            "Digging by hand only, after asking the owners of cables and pipes. Cover every hole.",
            "Dogs, snakes, bees, steep banks, flood water: turn back. Nobody climbs trees, roofs or poles for a survey.",
            "Ask before entering or taking photographs. Local law and codes prevail over these lines.",
        ]);
    }

    private static IEnumerable<Block> Page(Site site, string poles)
    {
        yield return new PageBreak();
        yield return new Heading(1, $"{site.Id}  {site.Name}", Numbered: false);
        yield return Assumed(site, poles);
        yield return new SkylineBlock();
        yield return Found();
        yield return new Paragraph("Traffic, overhead lines, open holes, dogs, heights: see the cautions on page 1; local code prevails.", TextStyle.Small);
        yield return Signed();
    }

    private static TableBlock Assumed(Site site, string poles)
    {
        (string Name, string Value)[] facts =
        [
            ("District", site.District.Length == 0 ? "not stated" : site.District), ("Lot", site.Lot.Length == 0 ? "–" : site.Lot),
            ("Position", site.IsPositionStated ? $"{Figures.Signed(site.LatitudeDegrees, 5)}, {Figures.Signed(site.LongitudeDegrees, 5)}" : "not stated: write it below"),
            ("", site.IsPositionStated ? DegreesMinutes(site.LatitudeDegrees, "N", "S") + "  " + DegreesMinutes(site.LongitudeDegrees, "E", "W") : ""),
            ("Kind, size", $"{Words.Of(site.Kind)}, {Figures.Short(site.LengthM)} × {Figures.Short(site.WidthM)} m"),
            ("Poles, spacing, kit", poles),
            ("Soil", site.SoilStated ? site.Soil.Name : "not stated: worst class taken"),
            ("Wind", $"{Figures.Short(site.BasicWindMPerS)} m/s, terrain {Words.TerrainName(site.Terrain)}"),
            ("Shading taken", Figures.Percent(site.ShadedFraction) + (site.Horizon is { } h ? "; horizon " + HorizonText.Of(h) : "; free horizon")),
            ("Flood prone", site.Ground.FloodProne ? "yes" : "no"),
            ("Surveyed", site.SurveyedOn is { } on ? Figures.Date(on) : site.IsSurveyed ? "yes" : "no: quantities provisional"), ("Remark", site.Remark.Length == 0 ? "–" : site.Remark),
        ];
        return new TableBlock("What the offer assumes", [new("", FixedPt: 72), new(""), new("", FixedPt: 86), new("")],
            [.. facts.Chunk(2).Select(p => Row.Of(p[0].Name, p[0].Value, p[1].Name, p[1].Value))])
        { Compact = true, KeepTogether = true };
    }

    private static TableBlock Found()
    {
        (string What, string Boxes)[] rows =
        [
            ("Position read at the first pole", "latitude ________________  longitude ________________  length ________ m  width ________ m"),
            ("Overhead lines", $"{Box} none   height ______ m  distance ______ m  kind: {Box} telephone  {Box} low voltage  {Box} high voltage  {Box} not known"),
            ("Buried services", $"{Box} none known   {Box} water  {Box} sewer  {Box} power  {Box} telephone   asked of: ____________________________"),
            ("Soil by hand", $"{Box} soft  {Box} medium  {Box} dense  {Box} rock  {Box} fill      water in the hole at ______ m   {Box} none"),
            ("Flood", $"{Box} never  {Box} yes: ______ m above ground, about every ______ years"),
            ("Access for a lorry", $"{Box} to each pole  {Box} to ______ m from it  {Box} dry season only   narrowest ______ m   bridge limit ______ t"),
            ("Owners' consent", $"{Box} public land  {Box} consent signed by: ______________________________  {Box} open"),
            ("Existing poles", $"{Box} none   number ______  {Box} to stay  {Box} to go   owner: ____________________"),
            ("Risk of theft", $"{Box} low  {Box} middle  {Box} high   what was stolen nearby: ______________________________"),
            ("Photographs", $"{Box} along the site, both ways  {Box} skyline  {Box} hole  {Box} lines   numbers: ______________"),
            ("Mobile reception", "not needed: the lights work by themselves"),
            ("Remarks", ""),
        ];
        return new TableBlock("What is found", [new("", FixedPt: 104), new("")],
            [.. rows.Select(r => Row.Of(r.What, r.Boxes) with { LeastHeightPt = r.What == "Remarks" ? 62 : r.What == "Mobile reception" ? 0 : WriteInPt })])
        { Compact = true, KeepTogether = true };
    }

    private static TableBlock Signed() => new(null, [new("Surveyed by", Share: 1.4), new("Day", FixedPt: 80), new("Signature", Share: 1.2), new("For the owner or committee", Share: 1.2)],
        [Row.Of("", "", "", "") with { LeastHeightPt = 30 }])
    { Compact = true, KeepTogether = true };
}
