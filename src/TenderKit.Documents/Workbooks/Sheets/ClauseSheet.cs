using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>The employer's clauses: what each asks, what each kit offers, and those the bidder answers in words.</summary>
internal static class ClauseSheet
{
    public static void Write(Book book, TenderDesign design)
    {
        if (design.Clauses.All.IsEmpty && design.Clauses.Statements.IsEmpty) return;
        var sheet = book.Add("Clauses", landscape: true);
        sheet.Columns(10, 8, 14, 24, 24, 24, 10, 9, 60);
        var row = TitleBlock.Write(sheet, book, "The employer's clauses");
        sheet.Header(row, "Clause", "Kit", "Item", "Property", "Required", "Offered", "Margin", "Met", "Text");
        sheet.Repeat(row, row);
        foreach (var (kit, check) in design.Kits.SelectMany(k => k.Checks.Where(c => c.Clause.Length > 0).Select(c => (k, c))).OrderBy(p => p.c.Clause, StringComparer.Ordinal))
        {
            var words = new[]
            {
                check.Clause, kit.Id, check.Item, check.Property, CheckText.Required(check), CheckText.Offered(check), CheckText.Margin(check), check.Complies ? "yes" : "NO", check.Basis,
            };
            row++;
            for (var c = 0; c < words.Length; c++) sheet.Words(row, c + 1, words[c], Look.Row with { Bold = !check.Complies });
        }

        foreach (var statement in design.Clauses.Statements)
        {
            var words = new[] { statement.Number, "", statement.Item, "", "", "", "", "state", statement.Text };
            row++;
            for (var c = 0; c < words.Length; c++) sheet.Words(row, c + 1, words[c], Look.Row);
        }
    }
}
