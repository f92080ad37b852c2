using TenderKit.Catalog.Families;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog.Import;

/// <summary>Counts the cells of a workbook that hold a number as text, by column; in a csv file every number is text.</summary>
internal sealed class NumbersAsText(TableRows table)
{
    private readonly SortedDictionary<string, (int Count, Cell First)> seen = new(StringComparer.Ordinal);

    public void Note(PartColumn column, Cell cell)
    {
        if (table.Sheet is null || cell.IsEmpty || cell.Number is not null || !column.IsNumeric || column.IsList) return;
        seen[column.Name] = seen.TryGetValue(column.Name, out var old) ? (old.Count + 1, old.First) : (1, cell);
    }

    public IEnumerable<Diagnostic> Warnings() => seen.Select(s => Diagnostic.Warning(
        "TK615",
        FormattableString.Invariant($"{s.Value.Count} cell(s) of {s.Key} hold a number as text, the first '{s.Value.First.Text}'; they were read as numbers: format them as numbers"),
        new Place(table.File, table.Sheet, s.Value.First.Row, s.Key)));
}
