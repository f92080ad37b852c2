using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Columns;

/// <summary>Finds the header row of a table and what each column means.</summary>
public static class ColumnMap
{
    private const int RowsSearched = 20;

    /// <summary>Columns looked at while the header row is sought; all are read once it is found.</summary>
    private const int ColumnsSearched = 200;

    private const int LeastColumns = 2;

    /// <summary>The first row with nearly as many understood headings as the best one is the header.</summary>
    private const double NearlyBest = 0.6;

    /// <summary>Fits closer together than this cannot be told apart.</summary>
    private const double ScoreTie = 0.02;

    /// <summary>Understands a table.</summary>
    public static ColumnMapping Find(Table table, IReadOnlyList<ColumnMeaning> meanings)
    {
        var searched = table.Rows.Take(RowsSearched).Select((cells, index) => (Index: index, Known: Known(cells, meanings))).ToList();
        var best = searched.Count == 0 ? 0 : searched.Max(r => r.Known);
        if (best < LeastColumns)
        {
            var wanted = string.Join(", ", meanings.Take(6).Select(m => m.Synonyms[0]));
            return new(table, null, 1, [],
                [Diagnostic.Error("TK171", $"no row of headings was found in the first {RowsSearched} rows; add one with headings such as {wanted}",
                    new Place(table.File, table.Sheet))]);
        }

        return At(table, searched.First(r => r.Known >= Math.Max(LeastColumns, NearlyBest * best)).Index + 1, meanings);
    }

    /// <summary>Understands a table whose header row is known.</summary>
    /// <param name="headerRow">Row of the headings, 1-based.</param>
    public static ColumnMapping At(Table table, int headerRow, IReadOnlyList<ColumnMeaning> meanings) => Mapped(table, headerRow - 1, meanings);

    private static int Known(ImmutableArray<Cell> cells, IReadOnlyList<ColumnMeaning> meanings) =>
        cells.Take(ColumnsSearched).Where(HeaderRows.IsHeading).Select(c => HeadingMatch.Fits(c.Text, meanings)).Where(f => f.Count > 0).Select(f => f[0].Meaning).Distinct().Count();

    private static ColumnMapping Mapped(Table table, int headerIndex, IReadOnlyList<ColumnMeaning> meanings)
    {
        var (headings, next) = HeaderRows.Join(table, headerIndex, meanings);
        (table, headings, var angles) = AngleParts.Join(table, headings, next);
        var found = angles.Select(a => Diagnostic.Note("TK180", $"degrees, minutes and seconds in columns of their own were joined: {a}")).ToList();
        var columns = headings.Select((heading, index) => Column(table, heading, index, next, meanings, found)).OfType<MappedColumn>()
            .Select(c => c with { IsHidden = table.HiddenColumns.Contains(c.Column) }).ToList();
        var place = new Place(table.File, table.Sheet, headerIndex + 1);
        return new(table, headerIndex + 1, next + 1, [.. OneColumnEach(columns, place, found)],
            [.. found.Select(d => d with { Place = place with { Column = d.Place.Column, Cell = AddressOf(headings, headerIndex, d.Place.Column) } })]);
    }

    private static string? AddressOf(ImmutableArray<string> headings, int headerIndex, string? heading) =>
        heading is not null && headings.IndexOf(heading) is >= 0 and var index ? new Cell("", headerIndex + 1, index + 1).Address : null;

    private static MappedColumn? Column(Table table, string heading, int index, int firstData, IReadOnlyList<ColumnMeaning> meanings,
        List<Diagnostic> found)
    {
        var sample = table.Rows.Skip(firstData).Select(r => r[index].Text).FirstOrDefault(t => t.Length > 0) ?? "";
        if (heading.Length == 0)
        {
            if (sample.Length > 0)
                found.Add(Diagnostic.Warning("TK175", $"column without heading is not read; its first cell is '{sample}'",
                    Here(Cell.ColumnName(index + 1))));
            return null;
        }

        var fits = HeadingMatch.Fits(heading, meanings);
        var column = new MappedColumn(index + 1, heading, null, null, 0, sample);
        if (fits.Count == 0)
        {
            found.Add(Diagnostic.Note("TK175", $"heading '{heading}' is not known and its column is not read", Here(heading)));
            return column;
        }

        if (fits.Count > 1 && fits[0].Score < 1 && fits[0].Score - fits[1].Score < ScoreTie)
        {
            found.Add(Ambiguous(heading, fits[0].Meaning, fits[1].Meaning));
            return column;
        }

        found.AddRange(Remarks(heading, fits[0]));
        return column with { Meaning = fits[0].Meaning, Unit = fits[0].Unit, Score = fits[0].Score };
    }

    private static Diagnostic Ambiguous(string heading, ColumnMeaning one, ColumnMeaning other) => Diagnostic.Warning(
        "TK174",
        $"heading '{heading}' could mean {one.Id} or {other.Id} and its column is not read; write '{one.Synonyms[0]}' or '{other.Synonyms[0]}'",
        Here(heading));

    private static IEnumerable<Diagnostic> Remarks(string heading, HeadingFit fit)
    {
        if (fit.Score < 1)
            yield return Diagnostic.Note("TK173",
                string.Create(CultureInfo.InvariantCulture,
                    $"heading '{heading}' was taken as {fit.Meaning.Id} (likeness {fit.Score:0.00}); check it"), Here(heading));
        if (fit is not { UnknownUnit: { } unit, Meaning.Kind: { } kind } || kind == QuantityKind.Degrees) yield break;
        var taken = UnitSpellings.BaseSymbol(kind);
        yield return Diagnostic.Warning(
            "TK176", $"'{unit}' in the heading '{heading}' is no unit known here; numbers are taken in {taken} unless a cell names its unit", Here(heading));
    }

    private static IEnumerable<MappedColumn> OneColumnEach(List<MappedColumn> columns, Place place, List<Diagnostic> found)
    {
        var kept = columns.Where(c => c.Meaning is not null).GroupBy(c => c.Meaning!.Id).ToDictionary(g => g.Key, g => g.OrderBy(c => c.IsHidden).ThenByDescending(c => c.Score).First());
        foreach (var column in columns)
        {
            if (column.Meaning is null || kept[column.Meaning.Id] == column)
            {
                yield return column;
                continue;
            }

            var used = kept[column.Meaning.Id];
            var why = column.IsHidden && !used.IsHidden ? "the second is hidden and not read" : "the first is read, the second is not: rename or remove one";
            found.Add(Diagnostic.Warning("TK172", $"'{used.Heading}' and '{column.Heading}' both mean {column.Meaning.Id}; {why}",
                place with { Column = column.Heading }));
            yield return column with { Meaning = null, Unit = null, Score = 0 };
        }
    }

    private static Place Here(string column) => new(Column: column);
}
