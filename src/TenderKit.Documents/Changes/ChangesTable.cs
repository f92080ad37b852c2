using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Changes;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Changes;

/// <summary>What an addendum or a new price file changes, as a workbook: numbers as numbers, their difference as a formula.</summary>
public static class ChangesTable
{
    public static byte[] Make(ImmutableArray<Change> changes, TenderHead head)
    {
        using var culture = InvariantScope.Enter();
        var book = new Book(head, "What changes", new Ledger([]));
        var sheet = book.Add("Changes", landscape: true);
        sheet.Columns(14, 40, 34, 34, 18);
        sheet.Words(1, 1, "What changes", Look.Title);
        sheet.Paragraph(2, 1, 5, $"{head.Title}, {head.Reference}.", Look.Paragraph);
        sheet.Paragraph(3, 1, 5, ChangesPage.Inside, Look.Paragraph with { Faint = true });
        sheet.Header(5, "Part", "What", ">Before", ">After", ">Difference");
        sheet.Repeat(5, 5);
        var row = 5;
        foreach (var change in changes)
        {
            row++;
            sheet.Words(row, 1, change.Part, Look.Row);
            sheet.Words(row, 2, change.What, Look.Row);
            if (Number(change.Old) is { } old && Number(change.New) is { } next)
            {
                var (before, after) = (sheet.Fixed(row, 3, old, Look.Money), sheet.Fixed(row, 4, next, Look.Money));
                sheet.Formula(row, 5, new Difference(new Reference(after), new Reference(before)), Look.Money);
                continue;
            }

            sheet.Words(row, 3, change.Old.Length == 0 ? "-" : change.Old, Look.RowCentre with { Wrap = true });
            sheet.Words(row, 4, change.New.Length == 0 ? "-" : change.New, Look.RowCentre with { Wrap = true });
            sheet.Fill(row, 5, 5, Look.Row);
        }

        if (changes.IsEmpty) sheet.Words(6, 1, "Nothing changes.", Look.Text);
        return book.Save();
    }

    private static decimal? Number(string text) => decimal.TryParse(text, NumberStyles.Number, CultureInfo.InvariantCulture, out var number) ? number : null;
}
