using System.Collections.Immutable;
using System.Text.RegularExpressions;
using F23.StringSimilarity;
using TenderKit.Catalog.Families;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog.Import;

/// <summary>Rows of one family's table as parts; every bad cell is named, and the good rows still come through.</summary>
internal static partial class PartRows
{
    public static IEnumerable<PlacedPart> Read(Table table, PartFamily family, List<Diagnostic> found)
    {
        var header = table.Rows.First(r => r.Any(c => !c.IsEmpty));
        var columns = Columns(table, header, family, found);
        var mark = DecimalMarks.Guess(table.Rows.SelectMany(r => r).Where(c => c.Number is null).Select(c => c.Text));
        var parts = new List<PlacedPart>();
        foreach (var row in table.Rows.Where(r => r.Length > 0 && r[0].Row > header[0].Row && r.Any(c => !c.IsEmpty)))
        {
            if (Part(table, row, family, columns, mark, found) is { } part) parts.Add(part);
        }

        return parts;
    }

    private static ImmutableArray<(PartColumn Column, int Index)> Columns(Table table, ImmutableArray<Cell> header, PartFamily family,
        List<Diagnostic> found)
    {
        var columns = ImmutableArray.CreateBuilder<(PartColumn Column, int Index)>();
        foreach (var cell in header.Where(c => !c.IsEmpty))
        {
            var place = new Place(table.File, table.Sheet, cell.Row, cell.Text);
            if (family.Columns.FirstOrDefault(c => PartColumn.Key(c.Name) == PartColumn.Key(cell.Text)) is not { } column)
                found.Add(Diagnostic.Error("TK602",
                    $"column '{cell.Text}' is not known; the nearest is '{Nearest(cell.Text, family)}': rename it or take it out", place));
            else if (columns.Any(c => c.Column == column))
                found.Add(Diagnostic.Error("TK611", $"column '{cell.Text}' stands twice; keep one", place));
            else
                columns.Add((column, cell.Column - 1));
        }

        foreach (var missing in family.Columns.Where(c => c.IsRequired && columns.All(k => k.Column != c)))
            found.Add(Diagnostic.Error("TK603", $"column '{missing.Name}' is missing; add it", new Place(table.File, table.Sheet, header[0].Row)));
        return columns.ToImmutable();
    }

    private static string Nearest(string heading, PartFamily family)
    {
        var likeness = new NormalizedLevenshtein();
        return family.Columns.MinBy(c => likeness.Distance(PartColumn.Key(heading), PartColumn.Key(c.Name)))!.Name;
    }

    private static PlacedPart? Part(
        Table table, ImmutableArray<Cell> row, PartFamily family, ImmutableArray<(PartColumn Column, int Index)> columns, DecimalMark mark,
        List<Diagnostic> found)
    {
        var part = family.NewPart();
        var rowPlace = new Place(table.File, table.Sheet, row[0].Row);
        var errors = new List<Diagnostic>();
        foreach (var (column, index) in columns)
        {
            if (Fill(part, column, row[index], mark) is var (code, problem))
                errors.Add(Diagnostic.Error(code, $"{column.Name} '{row[index].Text}' {problem}", rowPlace with { Column = column.Name }));
        }

        found.AddRange(errors);
        found.AddRange(columns.Where(c => c.Column.IsText && row[c.Index].Number is not null).Select(c => Diagnostic.Warning(
            "TK612",
            $"{c.Column.Name} '{row[c.Index].Text}' is held as a number, which drops zeros at either end; format the column as text",
            rowPlace with { Column = c.Column.Name })));
        if (errors.Count > 0 || columns.Count(c => c.Column.IsRequired) < family.Columns.Count(c => c.IsRequired)) return null;
        found.AddRange(PartContradiction.Of(part).Select(c =>
            new Diagnostic(c.IsCertain ? "TK606" : "TK613", c.IsCertain ? Severity.Error : Severity.Warning, $"{part.Code}: {c.Message}", rowPlace)));
        return new(part, rowPlace);
    }

    private static (string Code, string Problem)? Fill(Part part, PartColumn column, Cell cell, DecimalMark mark)
    {
        if (cell.IsEmpty) return column.IsRequired ? ("TK604", "is empty; fill it in") : null;
        var (value, problem) = column.Read(cell, mark);
        if (problem is not null) return ("TK604", problem);
        if (column.PropertyName == nameof(Families.Part.Currency) && !CurrencyCode().IsMatch(cell.Text))
            return ("TK604", "is no currency code; write its three letters, such as USD");
        column.Set(part, value);
        return column.RangeProblem(part) is { } outside ? ("TK605", outside) : null;
    }

    [GeneratedRegex("^[A-Z]{3}$")]
    private static partial Regex CurrencyCode();
}
