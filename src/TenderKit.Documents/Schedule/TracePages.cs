using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Trace;

namespace TenderKit.Documents.Schedule;

/// <summary>Every headline figure of each kit followed to its formula, its inputs and their sources.</summary>
internal static class TracePages
{
    /// <summary>Longer lists are given by their number, ends and sum.</summary>
    private const int MostListed = 12;

    public static IEnumerable<Block> Of(TenderDesign design)
    {
        var kits = design.Kits.Select(k => (Kit: k, Figures: KitTrace.Of(design, k))).Where(k => !k.Figures.IsEmpty).ToImmutableArray();
        if (kits.IsEmpty) yield break;
        var used = TraceFormulas.All.Where(f => kits.Any(k => k.Figures.Any(p => p.Figure.FormulaId == f.Id))).ToImmutableArray();
        var rules = new RuleNumbers(design);
        yield return new Heading(1, "Trace of the figures");
        yield return new Paragraph("Each figure follows from the formula and the inputs beside it, and each input from a part, a design rule, the tender, the site list, the climate or "
            + "another figure of the same table. The formulas are arithmetic as printed, angles in degrees, unless they are in words. Numbers are printed to five digits.", TextStyle.Small)
        { KeepWithNext = true };
        foreach (var (kit, figures) in kits)
        {
            yield return new Heading(2, $"Trace of kit {kit.Id}");
            yield return Table(kit, figures, used, rules);
        }

        yield return new Heading(2, "Formulas and their sources");
        yield return new TableBlock(
            "Formulas of the trace", [new("", Side: Side.End, FixedPt: 14), new("Formula", Share: 1.1), new("Source", Share: 1)],
            [.. used.Select((f, i) => Row.Of(Figures.Number(i + 1, 0), f.Text, f.Source))])
        { Compact = true };
    }

    private static TableBlock Table(Kit kit, ImmutableArray<(SiteDesign Site, TracedFigure Figure)> figures, ImmutableArray<TraceFormula> used, RuleNumbers rules)
    {
        var rows = new List<Row>();
        foreach (var group in figures.GroupBy(p => (p.Figure.Group, p.Site.Site.Id)))
        {
            rows.Add(Row.Of(Title(group.Key.Group, group.Key.Id)));
            rows.AddRange(group.Select(p => Line(p.Figure, p.Site, figures, used, rules)));
        }

        return new TableBlock(
            $"Figures of kit {kit.Id}, each at the site that leaves the least margin",
            [new("", Side: Side.End, FixedPt: 16), new("Figure", FixedPt: 108), new("Value", Side: Side.End, FixedPt: 62), new("", FixedPt: 4), new("Formula [number in the list below] and inputs")],
            [.. rows])
        { Compact = true };
    }

    private static Row Line(TracedFigure figure, SiteDesign site, ImmutableArray<(SiteDesign Site, TracedFigure Figure)> all, ImmutableArray<TraceFormula> used, RuleNumbers rules)
    {
        var formula = TraceFormulas.Of(figure.FormulaId);
        var inputs = string.Join("; ", figure.Inputs.Select(i => $"{i.Symbol} {Value(i)}, {Words.Unit(i.Name)} ({Origin(i, site, all, rules)})"));
        return Row.Of(
            NumberOf(figure.Id, all), Words.Unit(figure.Name), WithUnit(Digits(figure.Value), figure.Unit), "",
            $"{formula.Text}  [{Figures.Number(used.IndexOf(formula) + 1, 0)}]\n{inputs}");
    }

    private static string Title(TraceGroup group, string siteId) => group switch
    {
        TraceGroup.Light => $"Light, at site {siteId}",
        TraceGroup.Energy => $"Energy, at site {siteId}",
        TraceGroup.Wiring => $"Wiring, at site {siteId}",
        _ => $"Wind, pole and foundation, at site {siteId}",
    };

    private static string NumberOf(string id, ImmutableArray<(SiteDesign Site, TracedFigure Figure)> all) =>
        Figures.Number(1 + all.Select(p => p.Figure.Id).ToList().IndexOf(id), 0);

    private static string Origin(TraceInput input, SiteDesign site, ImmutableArray<(SiteDesign Site, TracedFigure Figure)> all, RuleNumbers rules) => input.Origin switch
    {
        TraceOrigin.Figure => $"figure {NumberOf(input.Key, all)}",
        TraceOrigin.Rule => rules.InWords("design rules " + input.Key),
        TraceOrigin.Part => input.Key.Length > 0 ? input.Key : "parts of the kit",
        TraceOrigin.Site => $"site {site.Site.Id}",
        TraceOrigin.Tender => "tender",
        TraceOrigin.Climate => "climate",
        TraceOrigin.Standard => input.Key,
        TraceOrigin.Light => "light, point by point",
        TraceOrigin.Simulation => "hourly balance",
        _ => "found by the search",
    };

    private static string Value(TraceInput input) => input.Values.Length switch
    {
        0 => "none",
        1 => WithUnit(Digits(input.Values[0]), input.Unit),
        <= MostListed => WithUnit(string.Join(" | ", input.Values.Select(Digits)), input.Unit),
        _ => WithUnit($"{Figures.Number(input.Values.Length, 0)} values from {Digits(input.Values.Min())} to {Digits(input.Values.Max())}, sum {Digits(input.Values.Sum())}", input.Unit),
    };

    private static string WithUnit(string number, string unit) => unit.Length == 0 ? number : unit == "degrees" ? number + "°" : number + " " + Words.Unit(unit);

    /// <summary>Five significant digits, none trailing.</summary>
    internal static string Digits(double value)
    {
        if (value == 0 || !double.IsFinite(value)) return Figures.Number(value, 0);
        var decimals = Math.Clamp(4 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 8);
        return Math.Round(value, decimals).ToString("#,0.########", System.Globalization.CultureInfo.InvariantCulture).Replace('-', '−');
    }
}
