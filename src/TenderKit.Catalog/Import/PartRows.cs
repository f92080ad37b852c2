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
    /// <summary>The parts one after another; <paramref name="found"/> grows while they are taken.</summary>
    public static IEnumerable<PlacedPart> Read(TableRows table, PartFamily family, List<Diagnostic> found)
    {
        ImmutableArray<(PartColumn Column, int Index)>? columns = null;
        var texts = new NumbersAsText(table);
        foreach (var row in table.Rows.Where(r => r.Any(c => !c.IsEmpty)))
        {
            if (columns is not { } known) columns = Columns(table, row, family, found);
            else if (Part(table, row, family, known, texts, found) is { } part) yield return part;
        }

        found.AddRange(texts.Warnings());
    }

    private static ImmutableArray<(PartColumn Column, int Index)> Columns(TableRows table, IReadOnlyList<Cell> header, PartFamily family,
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
        TableRows table, IReadOnlyList<Cell> row, PartFamily family, ImmutableArray<(PartColumn Column, int Index)> columns, NumbersAsText texts,
        List<Diagnostic> found)
    {
        var part = family.NewPart();
        var rowPlace = new Place(table.File, table.Sheet, row[0].Row);
        var errors = 0;
        foreach (var (column, index) in columns)
        {
            var cell = index < row.Count ? row[index] : new Cell("", row[0].Row, index + 1);
            texts.Note(column, cell);
            if (column.IsText && cell.Number is not null) found.Add(LostZeros(column, cell, rowPlace));
            if (Fill(part, column, cell, table.Mark) is not var (code, problem)) continue;
            found.Add(Diagnostic.Error(code, $"{column.Name} '{cell.Text}' {problem}", rowPlace with { Column = column.Name }));
            errors++;
        }

        if (errors > 0 || columns.Count(c => c.Column.IsRequired) < family.Columns.Count(c => c.IsRequired)) return null;
        found.AddRange(PartContradiction.Of(part).Select(c =>
            new Diagnostic(c.IsCertain ? "TK606" : "TK613", c.IsCertain ? Severity.Error : Severity.Warning, $"{part.Code}: {c.Message}", rowPlace)));
        return new(part, rowPlace);
    }

    private static Diagnostic LostZeros(PartColumn column, Cell cell, Place place) => Diagnostic.Warning(
        "TK612",
        $"{column.Name} '{cell.Text}' is held as a number, which drops zeros at either end; format the column as text",
        place with { Column = column.Name });

    private static (string Code, string Problem)? Fill(Part part, PartColumn column, Cell cell, DecimalMark mark)
    {
        if (cell.IsEmpty) return column.IsRequired ? ("TK604", "is empty; fill it in") : null;
        var (value, problem) = column.Read(cell, mark);
        if (problem is not null) return ("TK604", problem);
        if (column.IsText && FormProblem(column, cell.Text) is { } form) return ("TK604", form);
        column.Set(part, value);
        return column.RangeProblem(value) is { } outside ? ("TK605", outside) : null;
    }

    /// <summary>Texts with a form of their own.</summary>
    private static string? FormProblem(PartColumn column, string text) => column.PropertyName switch
    {
        nameof(Families.Part.Currency) when !CurrencyCode().IsMatch(text) => "is no currency code; write its three letters, such as USD",
        nameof(Families.Part.Origin) when !CountryCode().IsMatch(text) => "is no country code; write its two letters of ISO 3166-1, such as KE",
        nameof(FoundationSet.BoltGrade) when BoltClass.TensileMPa(text) is null => "is no property class of ISO 898-1; write it as 8.8",
        _ => null,
    };

    [GeneratedRegex("^[A-Z]{3}$")]
    private static partial Regex CurrencyCode();

    [GeneratedRegex("^[A-Z]{2}$")]
    private static partial Regex CountryCode();
}
