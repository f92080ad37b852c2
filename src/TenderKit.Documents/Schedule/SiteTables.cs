using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The site table, in two: light and energy.</summary>
internal static class SiteTables
{
    public static IEnumerable<Block> Of(TenderDesign design)
    {
        yield return new Heading(1, "Sites");
        if (design.Sites.IsEmpty)
        {
            yield return new Paragraph("No site of the list could be met; see the reasons under Sites not met.");
            yield break;
        }

        if (Drawings.SiteMap.Of(design) is { } map)
        {
            yield return new Heading(2, "Map of the sites");
            yield return map.Figure();
        }

        yield return new Heading(2, "Light of each site");
        if (ProvisionalWords.Holds(design.Sites)) yield return new Paragraph(ProvisionalWords.Legend, TextStyle.Small) { KeepWithNext = true };
        yield return Light(design);
        if (design.Unmet.IsEmpty) yield return new Paragraph("Every site asked for is met.");
        yield return new Heading(2, "Energy of each site");
        yield return Energy(design);
    }

    private static TableBlock Light(TenderDesign design) => new(
        "Maintained light, site by site",
        [
            new("Site", FixedPt: 42), new("Name", Share: 1), new("Kind", FixedPt: 32), new("Class", FixedPt: 32), Number("Poles", "", 36),
                Number("Spacing", "m", 42), Number("Height", "m", 38),
            Number("Eav", "lx", 32), Number("Emin", "lx", 34), Number("Uo", "", 30), Number("Level", "%", 34), new("Kit", FixedPt: 28),
        ],
        ByLot(design, s => Row.Of(
            s.Site.Id, s.Site.Name, Words.Of(s.Site.Kind), s.Site.Target.Name, Figures.Number(s.Poles, 0) + (s.Site.IsSurveyed ? "" : ProvisionalWords.Sign), Figures.Number(s.Light.SpacingM, 1),
            Figures.Number(s.Light.Layout?.MountingHeightM ?? s.Light.Yard?.MountingHeightM ?? double.NaN, 1), Figures.Number(s.Light.Result.AverageLx, 2),
                Figures.Number(s.Light.Result.MinimumLx, 2),
            Figures.Number(s.Light.Result.OverallUniformity, 2), Figures.Number(s.Light.LevelFraction * 100, 0), s.KitId)));

    private static TableBlock Energy(TenderDesign design) => new(
        "Energy, site by site",
        [
            new("Site", FixedPt: 42), new("Name", Share: 1), new("Kit", FixedPt: 28), Number("Night", "Wh", 40), Number("Autonomy", "nights", 52),
                Number("Dark nights", "a year, mean", 56),
            Number("Dark nights", "upper 90 %", 54), new("Climate", "grade, irradiation taken at", FixedPt: 112),
        ],
        ByLot(design, s => Row.Of(
            s.Site.Id, s.Site.Name, s.KitId, Figures.Number(s.Energy.NightlyWh, 0), Figures.Number(s.Energy.AutonomyNights, 1),
            Figures.Number(s.Energy.Simulated.DarkNightsPerYear, 2), Figures.Number(s.Energy.Simulated.DarkNightsUpperBound, 2),
                $"{Words.Of(s.Climate.Monthly.Grade)}, {Figures.Number(s.Climate.CautiousFactor, 2)}")));

    private static ImmutableArray<Row> ByLot(TenderDesign design, Func<SiteDesign, Row> row)
    {
        var lots = design.Sites.GroupBy(s => s.Site.Lot).ToImmutableArray();
        if (lots.Length == 1) return [.. design.Sites.Select(row)];
        return [.. lots.SelectMany(lot => lot.Select(row).Prepend(Row.Of($"Lot {lot.Key}: {Figures.Count(lot.Count(), "site", "sites")}, "
            + $"{Figures.Count(lot.Sum(s => s.Poles), "pole", "poles")}")))];
    }

    private static Column Number(string head, string unit, double widthPt) => new(head, unit, 1, Side.End, widthPt);
}
