using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>
/// Rows of totals and subtotals are no sites, but they are what the employer counted: each is compared with the rows above it, since the row
/// before or from the top.
/// </summary>
public static class DropTotals
{
    /// <summary>Rounding of printed totals, fraction. Common practice, no source.</summary>
    private const double RoundingFraction = 0.005;

    private static readonly (string Meaning, QuantityKind Kind)[] Summed = [(SiteColumns.Length, QuantityKind.Length), (SiteColumns.Poles, QuantityKind.Count)];

    public static ColumnMapping Apply(ColumnMapping mapping)
    {
        var sums = Summed.Where(s => mapping.Of(s.Meaning) is not null).Select(s => new Sum(mapping, mapping.Of(s.Meaning)!, s.Kind)).ToList();
        var (kept, found) = (new List<ImmutableArray<Cell>>(), new List<Diagnostic>());
        foreach (var row in mapping.Table.Rows)
        {
            if (row.Length > 0 && row[0].Row >= mapping.FirstDataRow && IsTotal(mapping, row, sums))
            {
                var place = new Place(mapping.Table.File, mapping.Table.Sheet, row[0].Row);
                found.Add(Diagnostic.Note("TK191", "the row is a total and no site", place));
                found.AddRange(sums.Select(s => s.Compared(row, place)).OfType<Diagnostic>());
                continue;
            }

            kept.Add(row);
            if (row.Length > 0 && row[0].Row >= mapping.FirstDataRow) sums.ForEach(s => s.Add(row));
        }

        return found.Count == 0 ? mapping : mapping with { Table = mapping.Table with { Rows = [.. kept] }, Diagnostics = mapping.Diagnostics.AddRange(found) };
    }

    private static bool IsTotal(ColumnMapping mapping, ImmutableArray<Cell> row, List<Sum> sums)
    {
        var filled = row.Where(c => !c.IsEmpty).ToList();
        if (filled.Exists(c => SiteWords.IsTotal(c.Text))) return !HasPosition(mapping, row);
        // a sum alone in its row, without a word
        return filled.Count is 1 or 2 && filled.TrueForAll(c => sums.Exists(s => s.IsSumAt(c)));
    }

    private static bool HasPosition(ColumnMapping mapping, ImmutableArray<Cell> row) =>
        new[] { SiteColumns.Latitude, SiteColumns.Longitude, SiteColumns.Coordinates, SiteColumns.Easting }.Any(m =>
            mapping.Of(m) is { } c && row[c.Column - 1] is { IsEmpty: false, Text: var text } && !SiteWords.IsTotal(text));

    private sealed class Sum(ColumnMapping mapping, MappedColumn column, QuantityKind kind)
    {
        private readonly DecimalMark mark = DecimalMarks.Guess(mapping.DataRows.Select(r => r[column.Column - 1]).Where(c => c.Number is null).Select(c => c.Text));
        private double sinceLast;
        private double sinceTop;
        private int rows;

        public void Add(ImmutableArray<Cell> row)
        {
            if (Value(row[column.Column - 1]) is not { } value) return;
            (sinceLast, sinceTop, rows) = (sinceLast + value, sinceTop + value, rows + 1);
        }

        public bool IsSumAt(Cell cell) => cell.Column == column.Column && rows > 1 && Value(cell) is { } value && (IsNear(value, sinceLast) || IsNear(value, sinceTop));

        public Diagnostic? Compared(ImmutableArray<Cell> row, Place place)
        {
            var cell = row[column.Column - 1];
            var (last, top) = (sinceLast, sinceTop);
            sinceLast = 0;
            if (Value(cell) is not { } stated || IsNear(stated, last) || IsNear(stated, top)) return null;
            string Say(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} {UnitSpellings.BaseSymbol(kind)}").TrimEnd();
            return Diagnostic.Warning("TK126",
                $"states a total of {Say(stated)}, the rows above add to {Say(last == 0 ? top : last)}; find the row that is missing, twice or wrong",
                place with { Column = column.Heading, Cell = cell.Address });
        }

        private double? Value(Cell cell) => cell.IsEmpty ? null : UserNumber.Read(cell, kind, mark, column.Unit).Value;

        private static bool IsNear(double stated, double sum) => sum > 0 && Math.Abs(stated - sum) <= RoundingFraction * sum;
    }
}
