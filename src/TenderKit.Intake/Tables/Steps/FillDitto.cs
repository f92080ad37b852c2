using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables.Steps;

/// <summary>Ditto marks below the headings: a cell that says "as above" gets the text of the cell above.</summary>
public static class FillDitto
{
    private const int RowsLookedBack = 3;

    private static readonly string[] Marks =
        ["\"", "\"\"", "''", ",,", "do", "do.", "-do-", "- do -", "--do--", "ditto", "idem", "id.", "ibid", "ibid.", "as above", "same as above", "same", "igual", "lo mismo", "o mesmo", "le meme"];

    /// <param name="firstDataRow">First row below the headings, as the user's program counts it.</param>
    public static StepResult Apply(Table table, int firstDataRow)
    {
        var rows = table.Rows.Select(r => r.ToArray()).ToArray();
        var (count, addresses) = (0, new List<string>());
        for (var r = 1; r < rows.Length; r++)
        {
            for (var c = 0; c < rows[r].Length; c++)
            {
                if (rows[r][c].Row <= firstDataRow || !IsMark(rows[r][c]) || Above(rows, r, c, firstDataRow) is not { } above) continue;
                rows[r][c] = rows[r][c] with { Text = above.Text, Number = above.Number };
                if (++count <= 6) addresses.Add(rows[r][c].Address);
            }
        }

        if (count == 0) return StepResult.Same(table);
        var more = count > 6 ? FormattableString.Invariant($" and {count - 6} more") : "";
        return new(table with { Rows = [.. rows.Select(r => ImmutableArray.Create(r))] },
            [Diagnostic.Note("TK123", $"ditto marks were read as the cell above: {string.Join(", ", addresses)}{more}", new Place(table.File, table.Sheet))]);
    }

    /// <summary>The nearest filled cell above; a subtotal between the two rows may leave it empty.</summary>
    private static Cell? Above(Cell[][] rows, int row, int column, int firstDataRow)
    {
        for (var r = row - 1; r >= Math.Max(0, row - RowsLookedBack); r--)
        {
            if (rows[r][column] is { IsEmpty: false } cell) return cell.Row >= firstDataRow ? cell : null;
        }

        return null;
    }

    private static bool IsMark(Cell cell) =>
        cell is { Number: null, Text.Length: > 0 and <= 13 } && Marks.Contains(Spelling.Folded(Spelling.Plain(cell.Text)));
}
