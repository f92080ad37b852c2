using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Schedule;

/// <summary>What the design rests on: rules, climate, schedules, methods.</summary>
internal static class AssumptionPages
{
    public static IEnumerable<Block> Of(TenderDesign design)
    {
        yield return new Heading(1, "Assumptions");
        yield return new Heading(2, "Methods");
        yield return Methods();
        yield return new Heading(2, "Design rules");
        foreach (var block in Rules(design)) yield return block;
        if (design.Sites.IsEmpty) yield break;
        yield return new Heading(2, "Climate");
        foreach (var block in Climate(design)) yield return block;
        yield return new Heading(2, "Lighting schedules");
        yield return Schedules(design);
    }

    private static ItemList Methods() => new(
    [
        "Light: point by point over the grid of the road or yard, maintained values; the widest spacing that meets every limit of the class, then the lowest "
            + "level that still meets it. A road is taken as endless between two poles, so the outer half spacing at either end of a real row is darker; a row "
            + "of one pole a side is calculated as it stands. A yard has the finer of the road grid and the grid of EN 12464-2.",
        "Energy: hour by hour over many synthetic years whose long-run monthly means are the climate of the site, with battery limits, disconnect and "
            + "reconnect, own use and losses. A hand method stands beside it at each kit and decides nothing.",
        "Dark night: any hour with less light than asked. The upper 90 % bound of the mean number a year must not pass the number asked for.",
        "Autonomy: usable battery energy at end of life, in the coldest month, over the energy of the longest month's night.",
        "Structure: wind on shaft, module, luminaire and enclosure; stress of the shaft; overturning of the block. A screening calculation.",
    ]);

    private static IEnumerable<Block> Rules(TenderDesign design)
    {
        var shown = new RuleNumbers(design).Shown;
        yield return new Paragraph("Every margin and derating factor is a rule with a range; the compliance tables name a rule by its number here. A rule the "
            + "tender changed is marked changed; one outside its range is marked and raises a warning.", TextStyle.Small)
        { KeepWithNext = true };
        var marked = shown.Any(r => Mark(r).Length > 0);
        yield return new TableBlock(
            "Design rules in use",
            [
                new("", Side: Side.End, FixedPt: 14), new("Rule", FixedPt: 112), new("Value", Side: Side.End, FixedPt: 32), new("Unit", FixedPt: 48),
                new("Range", Side: Side.End, FixedPt: 52), new("Used in", FixedPt: 63), new("Source"),
                .. marked ? [new Column("Mark", FixedPt: 56)] : Array.Empty<Column>(),
            ],
            [.. shown.Select((r, i) => new Row([Figures.Number(i + 1, 0), r.Id, Figures.Short(r.Value), r.Unit == "-" ? "" : Words.Unit(r.Unit),
                $"{Figures.Short(r.Low)} to {Figures.Short(r.High)}", r.Where, r.Source, .. marked ? [Mark(r)] : Array.Empty<string>()], Strong: !r.InRange))])
        {
            Compact = true,
            Tight = true,
            LeadRows = 16,
        };
        if (shown.Length < design.Rules.Length) yield return new Paragraph($"{Figures.Count(design.Rules.Length - shown.Length, "rule is", "rules are")} "
            + "commercial and not part of the technical envelope.");
    }

    private static string Mark(DesignRule rule) => (rule.Overridden, rule.InRange) switch
    {
        (false, true) => "",
        (true, true) => "changed",
        (false, false) => "OUT OF RANGE",
        (true, false) => "changed,\nOUT OF RANGE",
    };

    private static IEnumerable<Block> Climate(TenderDesign design)
    {
        var groups = design.Sites.GroupBy(s => (s.Climate.Monthly.Grade, s.Climate.Monthly.Source, s.Climate.CautiousFactor)).ToImmutableArray();
        var rules = new RuleNumbers(design);
        yield return new TableBlock(
            "Climate of the sites",
            [
                new("Sites", Share: 2), new("Grade", FixedPt: 98), new("Years", "", 1, Side.End, 32), new("Nearest station", "km", 1, Side.End, 66),
                new("Taken at", "fraction", 1, Side.End, 40), new("Rule", FixedPt: 24), new("Between years", "spread, %", 1, Side.End, 56),
                new("Dullest month", "kWh/m² a day", 1, Side.End, 66),
            ],
            [.. groups.Select(g => Row.Of(
                Words.List(g.Select(s => s.Site.Id), 24), Words.Of(g.Key.Grade), Span(g.Select(s => (double?)s.Climate.Monthly.YearCount), 0),
                Span(g.Select(s => s.Climate.Monthly.NearestStationKm), 0), Figures.Number(g.Key.CautiousFactor, 2), rules.Of(Sizing.Climate.ClimateGrades.RuleId(g.Key.Grade)),
                g.First().Climate.Monthly.YearSpreadFraction is { } spread ? Figures.Number(spread * 100, 1) : "rule", Span(g.Select(s => (double?)s.Climate.Monthly.IrradiationKWhPerM2.Min()), 2)))]);
        yield return new Paragraph("Irradiation is taken at the fraction of its grade, the dullest month here before that. The spread between years is that of the "
            + "series itself where it has eight years or more, else a rule.", TextStyle.Small);
        foreach (var g in groups) yield return new Paragraph($"Source of {Words.List(g.Select(s => s.Site.Id), 24)}: {g.Key.Source}.", TextStyle.Small);
    }

    /// <summary>The least and the greatest of several values; one number when they print alike.</summary>
    private static string Span(IEnumerable<double?> values, int decimals)
    {
        var known = values.OfType<double>().ToImmutableArray();
        if (known.IsEmpty) return "–";
        var (low, high) = (Figures.Number(known.Min(), decimals), Figures.Number(known.Max(), decimals));
        return low == high ? low : $"{low} to {high}";
    }

    private static TableBlock Schedules(TenderDesign design) => new(
        "Lighting schedules as understood",
        [new("Schedule", Share: 1), new("Hours and levels", Share: 3), new("Sites", Side: Side.End, FixedPt: 40),
            new("Longest month", "full hours", 1, Side.End, 62)],
        [.. design.Sites.GroupBy(s => s.Site.Schedule.Name).Select(g => Row.Of(
            g.Key, Words.Of(g.First().Site.Schedule), Figures.Number(g.Count(), 0), Figures.Number(g.Max(s => s.Climate.Lamp.LongestMonthFullHours), 1)))]);
}
