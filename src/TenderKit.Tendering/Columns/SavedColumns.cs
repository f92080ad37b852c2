using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Words;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Columns;

/// <summary>One column of a saved mapping; an empty meaning is a column not to be read.</summary>
public sealed record SavedColumn(string Letter, string Heading, string Meaning, string? Unit, int Line);

/// <summary>The saved columns of one sheet.</summary>
/// <param name="Sheet">Sheet name; null for a csv file.</param>
public sealed record SavedTable(string File, string? Sheet, int? HeaderRow, ImmutableArray<SavedColumn> Columns);

/// <summary>What columns mean as saved beside the tender (<c>columns.yaml</c>) and edited by hand; it wins over what is found.</summary>
public sealed record SavedColumns(string File, ImmutableArray<SavedTable> Tables)
{
    public const string FileName = "columns.yaml";

    private const string Ignore = "ignore";

    public static readonly SavedColumns None = new(FileName, []);

    /// <summary>Reads the saved mapping.</summary>
    public static SavedColumns Read(string text, string file, List<Diagnostic> problems)
    {
        if (YamlFile.Read(text, file, problems) is not { } top) return None;
        var tables = top.Sections("tables").Select(TableOf).ToImmutableArray();
        top.ReportUnknownKeys();
        return new(file, tables);
    }

    /// <summary>The text of a mapping, to be saved and edited.</summary>
    public static string Text(IEnumerable<ColumnMapping> mappings, IReadOnlyList<ColumnMeaning> meanings)
    {
        var text = new StringBuilder();
        text.Append("# What each column means. Change a meaning or a unit, write 'ignore' for a column not to be read, or delete this file to start anew.\n");
        text.Append(CultureInfo.InvariantCulture, $"# Meanings: {string.Join(", ", meanings.Select(m => m.Id))}\n");
        text.Append("tables:\n");
        foreach (var mapping in mappings.Where(m => m.HeaderRow is not null)) Append(text, mapping);
        return text.ToString();
    }

    /// <summary>The saved table for a sheet, or null.</summary>
    public SavedTable? For(Table table) => Tables.FirstOrDefault(t => t.Sheet == table.Sheet && (t.File.Length == 0 || t.File == table.File));

    /// <summary>A mapping with the saved meanings in the place of those found.</summary>
    public ColumnMapping Apply(ColumnMapping found, IReadOnlyList<ColumnMeaning> meanings)
    {
        if (For(found.Table) is not { } saved || found.HeaderRow is null) return found;
        var columns = found.Columns.ToArray();
        var problems = new List<Diagnostic>();
        foreach (var entry in saved.Columns) Apply(columns, entry, meanings, problems);
        var confirmed = columns.Where(c => c.IsConfirmed).ToList();
        var taken = confirmed.Where(c => c.Meaning is not null).Select(c => c.Meaning!.Id).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < columns.Length; i++)
        {
            if (!columns[i].IsConfirmed && columns[i].Meaning is { } meaning && taken.Contains(meaning.Id)) columns[i] = columns[i] with { Meaning = null, Unit = null, Score = 0 };
        }

        var stale = confirmed.Select(c => c.Heading).ToHashSet(StringComparer.Ordinal);
        return found with { Columns = [.. columns], Diagnostics = [.. found.Diagnostics.Where(d => d.Place.Column is null || !stale.Contains(d.Place.Column)), .. problems] };
    }

    private void Apply(MappedColumn[] columns, SavedColumn entry, IReadOnlyList<ColumnMeaning> meanings, List<Diagnostic> problems)
    {
        var place = new Place(File, Row: entry.Line, Column: entry.Heading.Length > 0 ? entry.Heading : entry.Letter);
        var words = HeadingMatch.Words(entry.Heading);
        var index = Array.FindIndex(columns, c => HeadingMatch.Words(c.Heading) == words && Cell.ColumnName(c.Column) == entry.Letter);
        if (index < 0) index = Array.FindIndex(columns, c => HeadingMatch.Words(c.Heading) == words);
        if (index < 0)
        {
            problems.Add(Diagnostic.Warning("TK129", "the saved column is no longer in the list; save the columns again", place));
            return;
        }

        var isIgnored = entry.Meaning.Length == 0 || entry.Meaning == Ignore;
        if (!isIgnored && meanings.All(m => m.Id != entry.Meaning))
        {
            var nearest = Nearest.Of(entry.Meaning, meanings.Select(m => m.Id)) is { } near ? $"; the nearest is '{near}'" : "";
            problems.Add(Diagnostic.Error("TK129", $"'{entry.Meaning}' is no meaning of a column{nearest}, or write '{Ignore}'", place));
            return;
        }

        var meaning = isIgnored ? null : meanings.First(m => m.Id == entry.Meaning);
        columns[index] = columns[index] with { Meaning = meaning, Unit = entry.Unit, Score = isIgnored ? 0 : 1, IsConfirmed = true };
    }

    private static SavedTable TableOf(YamlSection section)
    {
        var table = new SavedTable(
            section.Text("file") ?? "", section.Text("sheet"),
            int.TryParse(section.Text("header_row"), NumberStyles.None, CultureInfo.InvariantCulture, out var row) && row > 0 ? row : null,
            [.. section.Sections("columns").Select(ColumnOf)]);
        section.ReportUnknownKeys();
        return table;
    }

    private static SavedColumn ColumnOf(YamlSection section)
    {
        var column = new SavedColumn(section.Text("column") ?? "", section.RequiredText("heading"), section.Text("meaning") ?? "", section.Text("unit"), section.Line);
        section.Text("confidence");
        section.Text("sample");
        section.ReportUnknownKeys();
        return column;
    }

    private static void Append(StringBuilder text, ColumnMapping mapping)
    {
        text.Append(CultureInfo.InvariantCulture, $"  - file: {Quoted(mapping.Table.File)}\n");
        if (mapping.Table.Sheet is { } sheet) text.Append(CultureInfo.InvariantCulture, $"    sheet: {Quoted(sheet)}\n");
        text.Append(CultureInfo.InvariantCulture, $"    header_row: {mapping.HeaderRow}\n    columns:\n");
        foreach (var column in mapping.Columns.Where(c => c.Heading.Length > 0))
        {
            var unit = column.Unit is { } u ? $", unit: {Quoted(u)}" : "";
            var sure = column.Meaning is null ? "" : string.Create(CultureInfo.InvariantCulture, $", confidence: {column.Score * 100:0} %");
            text.Append(CultureInfo.InvariantCulture,
                $"      - {{ column: {Cell.ColumnName(column.Column)}, heading: {Quoted(column.Heading)}, meaning: {column.Meaning?.Id ?? Ignore}{unit}{sure}, sample: {Quoted(column.Sample)} }}\n");
        }
    }

    private static string Quoted(string text) =>
        "\"" + string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
