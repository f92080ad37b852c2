using TenderKit.Intake.Numbers;

namespace TenderKit.Intake.Tables;

/// <summary>A table whose rows are read anew each time they are gone through; rows are as long as the file has them.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Sheet">Sheet name; null for csv.</param>
/// <param name="Mark">Decimal mark of its numbers.</param>
/// <param name="Rows">Rows in the order of the file, blank ones included.</param>
public sealed record TableRows(string File, string? Sheet, DecimalMark Mark, IEnumerable<IReadOnlyList<Cell>> Rows)
{
    /// <summary>The rows of a table at hand.</summary>
    public static TableRows Of(Table table) => new(
        table.File, table.Sheet,
        DecimalMarks.Guess(table.Rows.SelectMany(r => r).Where(c => c.Number is null && DecimalMarks.MayTell(c.Text)).Select(c => c.Text)),
        table.Rows.Select(r => (IReadOnlyList<Cell>)r));
}
