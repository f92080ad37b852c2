using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables.Steps;

/// <summary>
/// Merged cells: each cell of a merged range gets the text of its first one. A title alone in its row is left as it is, since it
/// speaks of the whole sheet and not of each column below it.
/// </summary>
public static class FillMerged
{
    public static StepResult Apply(Table table)
    {
        if (table.Merged.IsEmpty) return StepResult.Same(table);
        var rows = table.Rows.Select(r => r.ToArray()).ToArray();
        var filled = new List<string>();
        foreach (var range in table.Merged)
        {
            if (Clipped(range, table) is not { } r || rows[r.FirstRow - 1][r.FirstColumn - 1] is not { IsEmpty: false } first || IsTitle(table, r)) continue;
            if (Fill(rows, r, first)) filled.Add(r.Address);
        }

        if (filled.Count == 0) return StepResult.Same(table);
        var note = Diagnostic.Note("TK122", $"merged cells were read as if each held the text of the first: {List(filled)}", new Place(table.File, table.Sheet));
        return new(table with { Rows = [.. rows.Select(r => System.Collections.Immutable.ImmutableArray.Create(r))] }, [note]);
    }

    private static bool Fill(Cell[][] rows, CellRange range, Cell first)
    {
        var any = false;
        for (var r = range.FirstRow; r <= range.LastRow; r++)
        {
            for (var c = range.FirstColumn; c <= range.LastColumn; c++)
            {
                ref var cell = ref rows[r - 1][c - 1];
                if (!cell.IsEmpty) continue;
                cell = cell with { Text = first.Text, Number = first.Number };
                any = true;
            }
        }

        return any;
    }

    private static CellRange? Clipped(CellRange range, Table table)
    {
        var width = table.Rows.IsEmpty ? 0 : table.Rows[0].Length;
        var clipped = range with { LastRow = Math.Min(range.LastRow, table.Rows.Length), LastColumn = Math.Min(range.LastColumn, width) };
        return range.FirstRow >= 1 && range.FirstColumn >= 1 && clipped.LastRow >= range.FirstRow && clipped.LastColumn >= range.FirstColumn ? clipped : null;
    }

    private static bool IsTitle(Table table, CellRange range) =>
        range.LastColumn > range.FirstColumn && table.Rows[range.FirstRow - 1].Count(c => !c.IsEmpty) == 1;

    private static string List(List<string> ranges) =>
        ranges.Count <= 6 ? string.Join(", ", ranges) : FormattableString.Invariant($"{string.Join(", ", ranges.Take(6))} and {ranges.Count - 6} more");
}
