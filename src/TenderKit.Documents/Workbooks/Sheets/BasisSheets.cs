using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>What the calculation stands on: design rules, warnings, assumptions, and the files that were read.</summary>
internal static class BasisSheets
{
    public static void Rules(Book book, TenderDesign design)
    {
        var sheet = book.Add("Design rules", landscape: true);
        sheet.Columns(34, 10, 8, 10, 10, 44, 28, 24);
        var row = TitleBlock.Write(sheet, book, "Design rules");
        sheet.Header(row, "Rule", ">Value", "Unit", ">From", ">To", "Source", "Used in", "Remark");
        sheet.Repeat(row, row);
        foreach (var rule in design.Rules)
        {
            sheet.Words(++row, 1, rule.Id, Look.Row);
            sheet.Figure(row, 2, rule.Value, Look.Number("General"));
            sheet.Words(row, 3, rule.Unit, Look.RowCentre);
            sheet.Figure(row, 4, rule.Low, Look.Number("General"));
            sheet.Figure(row, 5, rule.High, Look.Number("General"));
            sheet.Words(row, 6, rule.Source, Look.Row);
            sheet.Words(row, 7, rule.Where, Look.Row);
            sheet.Words(row, 8, string.Join("; ", new[] { rule.Overridden ? "set by the tender" : "", rule.InRange ? "" : "outside its range" }.Where(t => t.Length > 0)), Look.Row);
        }
    }

    /// <param name="remarks">Remarks on the price, printed as notes.</param>
    public static void Warnings(Book book, IEnumerable<Diagnostic> diagnostics, IEnumerable<string> remarks)
    {
        var sheet = book.Add("Warnings", landscape: true);
        sheet.Columns(11, 9, 30, 100);
        var row = TitleBlock.Write(sheet, book, "Errors, warnings and notes");
        sheet.Header(row, "Severity", "Code", "Place", "Message");
        sheet.Repeat(row, row);
        foreach (var diagnostic in diagnostics.Distinct().OrderByDescending(d => d.Severity).ThenBy(d => d.Code, StringComparer.Ordinal))
        {
            sheet.Words(++row, 1, diagnostic.Severity.ToString(), Look.Row with { Bold = diagnostic.Severity == Severity.Error });
            sheet.Words(row, 2, diagnostic.Code, Look.Row);
            sheet.Words(row, 3, diagnostic.Place.ToString(), Look.Row);
            sheet.Words(row, 4, diagnostic.Message, Look.Row);
        }

        foreach (var remark in remarks)
        {
            sheet.Words(++row, 1, nameof(Severity.Note), Look.Row);
            sheet.Words(row, 3, "bill, part 5", Look.Row);
            sheet.Words(row, 4, remark, Look.Row);
            sheet.Fill(row, 2, 2, Look.Row);
        }
    }

    public static void Sources(Book book, TenderDesign design)
    {
        var sheet = book.Add("Assumptions");
        sheet.Columns(34, 76);
        var row = TitleBlock.Write(sheet, book, "Assumptions and inputs");
        foreach (var (heading, lines) in new[] { ("Assumptions", Assumptions(design)), ("Files read, with the SHA-256 of their bytes", Files(design)) })
        {
            sheet.Words(row++, 1, heading, Look.Heading);
            foreach (var (name, text) in lines)
            {
                sheet.Words(row, 1, name, Look.Row);
                sheet.Words(row++, 2, text, Look.Row);
            }

            row++;
        }
    }

    private static IEnumerable<(string, string)> Assumptions(TenderDesign design)
    {
        var target = design.Tender.Reliability;
        yield return ("Dark nights a year", FormattableString.Invariant($"at most {target.DarkNightsPerYear}"));
        yield return ("Autonomy", FormattableString.Invariant($"at least {target.AutonomyNights} nights at end of life"));
        foreach (var climate in design.Sites.GroupBy(s => (s.Climate.Monthly.Source, s.Climate.Monthly.Grade)))
            yield return ("Climate", FormattableString.Invariant($"{climate.Key.Source}, {Words.Of(climate.Key.Grade)}, irradiation taken at {climate.First().Climate.CautiousFactor:0.00}: {Sites(climate)}"));
        foreach (var light in design.Sites.GroupBy(s => s.Site.Target)) yield return ("Light", FormattableString.Invariant($"{light.Key.Name}, {light.Key.Source}: {Sites(light)}"));
        foreach (var schedule in design.Sites.GroupBy(s => s.Site.Schedule.Name)) yield return ("Lighting schedule", FormattableString.Invariant($"{schedule.Key}, {Words.Of(schedule.First().Site.Schedule)}: {Sites(schedule)}"));
        foreach (var soil in design.Sites.GroupBy(s => (s.Site.Soil.Name, s.Site.SoilStated))) yield return ("Soil", FormattableString.Invariant($"{soil.Key.Name}{(soil.Key.SoilStated ? "" : ", not stated, the worst class taken")}: {Sites(soil)}"));
        foreach (var site in design.Sites.Where(s => s.Site.Remark.Length > 0)) yield return ("Site " + site.Site.Id, site.Site.Remark);
    }

    private static string Sites(IEnumerable<SiteDesign> sites) => sites.Count() is var count && count == 1 ? "1 site" : FormattableString.Invariant($"{count} sites");

    private static IEnumerable<(string, string)> Files(TenderDesign design) =>
        design.Inputs.Select(i => (i.File, i.Sha256)).Append(("catalogue", design.CatalogDigest));
}
