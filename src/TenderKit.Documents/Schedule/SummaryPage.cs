using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The whole offer on one page: five figures and at most 200 words.</summary>
internal static class SummaryPage
{
    public static IEnumerable<Block> Of(TenderDesign design)
    {
        yield return new Heading(1, "Summary");
        yield return new KeyFigures(
        [
            new(Figures.Number(design.Sites.Length, 0), "sites" + (design.Unmet.IsEmpty ? ""
                : $", of {Figures.Number(design.Sites.Length + design.Unmet.Length, 0)} asked for")),
            new(Figures.Number(design.PoleCount, 0), ProvisionalWords.Holds(design.Sites) ? "poles, provisional until surveyed" : "poles"),
            new(Figures.Number(design.Kits.Length, 0), design.Kits.Length == 1 ? "kit" : "kits"),
            new(Worst(design, sites => sites.Max(s => s.Energy.Simulated.DarkNightsUpperBound), 2), "dark nights a year at the worst site, upper 90 % bound"),
            new(Worst(design, sites => sites.Min(s => s.Energy.AutonomyNights), 1), "nights of autonomy at the worst site, at end of life"),
        ]);
        foreach (var text in Texts(design)) yield return new Paragraph(text);
    }

    /// <summary>The paragraphs of the summary.</summary>
    internal static IEnumerable<string> Texts(TenderDesign design)
    {
        yield return Scope(design);
        if (!design.Unmet.IsEmpty) yield return Unmet(design);
        if (!design.Sites.IsEmpty) yield return Reliability(design);
        yield return Caution(design);
    }

    private static string Worst(TenderDesign design, Func<ImmutableArray<SiteDesign>, double> pick, int decimals) =>
        design.Sites.IsEmpty ? "–" : Figures.Number(pick(design.Sites), decimals);

    private static string Scope(TenderDesign design) =>
        $"Stand-alone solar street lighting for {Figures.Count(design.Sites.Length, "site", "sites")}: {Figures.Count(design.PoleCount, "pole", "poles")} in "
            + $"{Figures.Count(design.Kits.Length, "kit", "kits")}. "
        + Compliance(design)
        + (design.Tender.Choice.ByPresentValue ? $" Among what meets them all, the parts of least {design.Tender.Choice.InWords} were taken." : "");

    private static string Compliance(TenderDesign design)
    {
        if (design.Sites.IsEmpty) return "No site could be met.";
        var failing = design.Sites.Count(s => s.Checks.Any(c => !c.Complies));
        return failing == 0
            ? "Every requirement checked is met; the compliance tables show each with its margin."
            : $"At {Figures.Count(failing, "site", "sites")} a requirement is NOT met; the compliance tables show which.";
    }

    private static string Unmet(TenderDesign design) =>
        $"{Figures.Count(design.Unmet.Length, "site asked for is", "sites asked for are")} not met and not in this offer: "
            + $"{(design.Unmet.Length <= 3 ? string.Join("; ", design.Unmet.Select(u => $"{u.SiteId} {u.Name}")) : Words.List(design.Unmet.Select(u => u.SiteId), 8))}. The reasons stand under Sites not met.";

    private static string Reliability(TenderDesign design)
    {
        var target = design.Tender.Reliability;
        var years = design.Sites.Min(s => s.Energy.Simulated.YearCount);
        var estimated = design.Sites.Count(s => ClimateGrades.IsEstimate(s.Climate.Monthly.Grade));
        return $"Asked for: at most {Figures.Short(target.DarkNightsPerYear)} dark {(target.DarkNightsPerYear == 1 ? "night" : "nights")} a year and at least "
            + $"{Figures.Short(target.AutonomyNights)} {(target.AutonomyNights == 1 ? "night" : "nights")} of autonomy. "
            + $"Each site was simulated hour by hour over {Figures.Number(years, 0)} years. "
            + (estimated == 0 ? "All climates were supplied." : $"The climate of {Figures.Count(estimated, "site", "sites")} is an estimate, taken with "
                + "caution; twelve monthly means with their source should replace it.");
    }

    private static string Caution(TenderDesign design)
    {
        var rules = design.Rules.Count(r => !r.InRange);
        var warnings = Warnings.Of(design).Count(d => d.Severity != Severity.Note);
        var soils = design.Sites.Count(s => !s.Site.SoilStated);
        return (soils == 0 ? "" : $"Soil was not stated for {Figures.Count(soils, "site", "sites")}: the worst class is taken, to be surveyed before the foundations "
                + "are ordered. ")
            + (rules == 0 ? "" : $"{Figures.Count(rules, "design rule lies", "design rules lie")} outside the allowed range. ")
            + (warnings == 0 ? "" : $"{Figures.Count(warnings, "warning is", "warnings are")} listed and should be read. ")
            + "Poles and foundations rest on a screening calculation, to be signed by a licensed structural engineer; local codes prevail.";
    }
}
