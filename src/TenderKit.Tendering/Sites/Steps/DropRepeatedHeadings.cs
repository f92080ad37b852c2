using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>Headings repeated at the top of each printed page are no sites.</summary>
public static class DropRepeatedHeadings
{
    public static ColumnMapping Apply(ColumnMapping mapping)
    {
        var headings = mapping.Columns.ToDictionary(c => c.Column, c => HeadingMatch.Words(c.Heading));
        bool Repeats(Cell cell) => headings.TryGetValue(cell.Column, out var words) && words == HeadingMatch.Words(cell.Text);
        return RowSteps.Without(mapping, row => Filled(row) is { Count: > 1 } filled && filled.TrueForAll(Repeats) ? "the row repeats the headings" : null);
    }

    private static List<Cell> Filled(ImmutableArray<Cell> row) => [.. row.Where(c => !c.IsEmpty)];
}
