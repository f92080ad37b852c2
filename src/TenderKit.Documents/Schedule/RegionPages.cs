using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Regions;

namespace TenderKit.Documents.Schedule;

/// <summary>The region a tender without sites is designed for: its places, and which of them governs what.</summary>
internal static class RegionPages
{
    public static IEnumerable<Block> Of(TenderDesign design)
    {
        if (design.Region is not { } region) yield break;
        var (dull, mild) = (region.Governing, region.Mild);
        yield return new Heading(1, "The region");
        yield return new Paragraph(
            $"The tender names no sites yet. One kit is designed to serve every place of {region.Ask.Name}; places looked at: {Figures.Number(region.Sampled, 0)}. "
            + $"{dull.Name} governs the energy, in month {dull.DarkestMonth}, and this document is made for it. {mild.Name} is the mildest: alone it would need {Figures.Number(mild.ArrayWp, 0)} Wp and {Figures.Number(mild.BatteryWh, 0)} Wh.");
        yield return new Paragraph(
            ClimateGrades.IsEstimate(dull.Grade)
                ? $"How sure: the sun at {dull.Name} is an estimate and is taken at {Figures.Number(dull.CautiousFactor, 2)}. Between the places looked at a valley, a coast or a cloud belt may be duller still. Fix the sites, or fetch data for the governing place, before the kit is final."
                : $"How sure: the climate of {dull.Name} is graded '{ClimateGrades.Words(dull.Grade)}' and taken at {Figures.Number(dull.CautiousFactor, 2)}. Between the places looked at a valley, a coast or a cloud belt may be duller still.");
        if (!region.Unserved.IsEmpty) yield return new Paragraph($"Not served by the kit: {Words.List(region.Unserved, 12)}.", TextStyle.BodyStrong);
        yield return new Paragraph(
            "Designed in full were the dullest, coldest, hottest and mildest of the places looked at. Own array and battery: of the cheapest design for that place alone. Nights: with the common kit, dark ones as upper bound, 90 % sure.", TextStyle.Small);
        yield return Places(region);
        yield return Alike(region);
        yield return Governs(region);
        yield return new PageBreak();
    }

    private static TableBlock Places(RegionDesign region) => new(
        "Places designed in full",
        [
            new("Place", Share: 2.2), new("Latitude", "degrees", 1, Side.End, 42), new("Longitude", "degrees", 1, Side.End, 50), new("Climate", Share: 1.6), new("Taken at", "", 1, Side.End, 36), new("Month", "", 1, Side.End, 32),
            new("Sun over lamp", "kWh/m² h", 1, Side.End, 46), new("Array", "Wp", 1, Side.End, 34), new("Battery", "Wh", 1, Side.End, 40), new("Dark nights", "a year", 1, Side.End, 36), new("Autonomy", "nights", 1, Side.End, 44),
        ],
        [.. region.Places.Select(p => new Row(
            [
                p.Name, Figures.Signed(p.LatitudeDegrees, 2), Figures.Signed(p.LongitudeDegrees, 2), ClimateGrades.Words(p.Grade), Figures.Number(p.CautiousFactor, 2), Figures.Number(p.DarkestMonth, 0),
                Figures.Number(p.SunOverLamp, 3), Figures.Number(p.ArrayWp, 0), Figures.Number(p.BatteryWh, 0), Figures.Number(p.DarkNightsPerYear, 2), Figures.Number(p.AutonomyNights, 1),
            ],
            Strong: p.SiteId == region.GoverningSiteId))]);

    private static Paragraph Alike(RegionDesign region)
    {
        var differing = region.Governs.Where(g => !g.Places.IsEmpty).Select(g => g.Item).ToHashSet(StringComparer.Ordinal);
        var alike = region.Governs.Select(g => g.Item).Where(i => !differing.Contains(i)).Distinct().Select(i => i.ToLowerInvariant()).ToImmutableArray();
        return new Paragraph($"Alike at every place: {Words.List(alike, 20)}.", TextStyle.Small);
    }

    private static TableBlock Governs(RegionDesign region) => new(
        "Which place leaves the least margin of what",
        [new("Item", FixedPt: 70), new("Requirement", Share: 1.4), new("Governing place", Share: 1.2), new("Margin", "%", 1, Side.End, 46)],
        [.. region.Governs.Where(g => !g.Places.IsEmpty).Select(g => Row.Of(g.Item, g.Property, Words.List(g.Places, 3), g.MarginFraction is { } m ? Figures.Number(m * 100, 0) : "–"))]);
}
