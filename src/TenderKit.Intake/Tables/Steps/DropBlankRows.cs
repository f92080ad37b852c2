using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables.Steps;

/// <summary>Blank rows below the headings are passed over.</summary>
public static class DropBlankRows
{
    /// <param name="firstDataRow">First row below the headings, as the user's program counts it.</param>
    public static StepResult Apply(Table table, int firstDataRow)
    {
        bool IsBlank(System.Collections.Immutable.ImmutableArray<Cell> row) => row.Length == 0 || (row[0].Row >= firstDataRow && row.All(c => c.IsEmpty));
        var blank = table.Rows.Count(IsBlank);
        if (blank == 0) return StepResult.Same(table);
        var words = blank == 1 ? "1 blank row between the sites was" : string.Create(CultureInfo.InvariantCulture, $"{blank} blank rows between the sites were");
        return new(table with { Rows = [.. table.Rows.Where(r => !IsBlank(r))] },
            [Diagnostic.Note("TK190", words + " passed over", new Place(table.File, table.Sheet))]);
    }
}
