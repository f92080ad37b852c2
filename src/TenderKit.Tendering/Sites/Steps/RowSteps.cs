using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Tables.Steps;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>Steps over the rows of a table whose columns are understood, in the order in which they run.</summary>
public static class RowSteps
{
    private static readonly ImmutableArray<Func<ColumnMapping, ColumnMapping>> All =
    [
        OnTable(DropBlankRows.Apply), DropRepeatedHeadings.Apply, GroupRows.Apply, OnTable(FillDitto.Apply), DropTotals.Apply, DropRemarks.Apply,
    ];

    /// <summary>The mapping on the table after all steps, with what each did.</summary>
    public static ColumnMapping Apply(ColumnMapping mapping) => All.Aggregate(mapping, (m, step) => step(m));

    private static Func<ColumnMapping, ColumnMapping> OnTable(Func<Table, int, StepResult> step) => mapping =>
    {
        var (table, found) = step(mapping.Table, mapping.FirstDataRow);
        return mapping with { Table = table, Diagnostics = mapping.Diagnostics.AddRange(found) };
    };

    /// <summary>The table without the rows a test picks, each said in a note.</summary>
    internal static ColumnMapping Without(ColumnMapping mapping, Func<ImmutableArray<Cell>, string?> reason)
    {
        var (kept, found) = (new List<ImmutableArray<Cell>>(), new List<Diagnostic>());
        foreach (var row in mapping.Table.Rows)
        {
            if (row.Length == 0 || row[0].Row < mapping.FirstDataRow || reason(row) is not { } why) kept.Add(row);
            else found.Add(Diagnostic.Note("TK191", why, new Place(mapping.Table.File, mapping.Table.Sheet, row[0].Row)));
        }

        return found.Count == 0 ? mapping : mapping with { Table = mapping.Table with { Rows = [.. kept] }, Diagnostics = mapping.Diagnostics.AddRange(found) };
    }
}
