using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>Reads a site list: every row is understood or says why not, and a bad row never stops the good ones.</summary>
public static class SiteListReader
{
    private static readonly string[][] Needed =
    [
        [SiteColumns.Latitude, SiteColumns.Coordinates], [SiteColumns.Longitude, SiteColumns.Coordinates], [SiteColumns.Length],
    ];

    /// <summary>Reads the sheet of a file whose headings fit best.</summary>
    /// <param name="classFinder">Target of a class by name, or null when the name is not known.</param>
    /// <param name="classNames">Names of classes, to suggest one for a name that is not known; those of the published standards when not given.</param>
    public static SiteListReading Read(TableFile file, SiteDefaults defaults, Func<string, LightTarget?> classFinder,
        IReadOnlyList<string>? classNames = null)
    {
        var mappings = file.Tables.Select(t => ColumnMap.Find(t, SiteColumns.All)).ToList();
        var best = mappings.MaxBy(m => m.Fit)!;
        var reading = Read(best, defaults, classFinder, classNames ?? LightClasses.Names);
        if (mappings.Count(m => m.HeaderRow is not null) < 2) return reading;
        var note = Diagnostic.Note("TK192", $"the workbook has {mappings.Count} sheets; '{best.Table.Sheet}' was read as the site list",
            new Place(file.File));
        return reading with { Diagnostics = reading.Diagnostics.Insert(0, note) };
    }

    /// <summary>Reads one table.</summary>
    /// <inheritdoc cref="Read(TableFile, SiteDefaults, Func{string, LightTarget?}, IReadOnlyList{string}?)" path="/param"/>
    public static SiteListReading Read(Table table, SiteDefaults defaults, Func<string, LightTarget?> classFinder,
        IReadOnlyList<string>? classNames = null) =>
        Read(ColumnMap.Find(table, SiteColumns.All), defaults, classFinder, classNames ?? LightClasses.Names);

    private static SiteListReading Read(ColumnMapping mapping, SiteDefaults defaults, Func<string, LightTarget?> classFinder,
        IReadOnlyList<string> classNames)
    {
        var found = mapping.Diagnostics.ToList();
        var place = new Place(mapping.Table.File, mapping.Table.Sheet, mapping.HeaderRow);
        var missing = mapping.HeaderRow is null ? [] : Needed.Where(names => names.All(n => mapping.Of(n) is null)).ToList();
        found.AddRange(missing.Select(names =>
            Diagnostic.Error("TK181", $"no column was understood as {names[0]}; add one with the heading '{names[0]}'", place)));
        if (mapping.HeaderRow is null || missing.Count > 0) return new([], [], mapping, [.. found]);
        if (mapping.Of(SiteColumns.Id) is null)
            found.Add(Diagnostic.Warning("TK194", "no column was understood as site id; sites are called after their rows", place));
        if (mapping.Of(SiteColumns.Kind) is null)
            found.Add(Diagnostic.Note("TK194", "no column was understood as kind; all sites are taken as roads", place));
        return Rows(mapping, new SiteRowReader(defaults, classFinder, classNames), place, found);
    }

    private static SiteListReading Rows(ColumnMapping mapping, SiteRowReader reader, Place place, List<Diagnostic> found)
    {
        var mark = DecimalMarks.Guess(mapping.DataRows.SelectMany(r => r).Where(c => c.Number is null).Select(c => c.Text));
        var (sites, rows, ids, blank) = (new List<Site>(), new List<SiteRowEcho>(), new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase), 0);
        foreach (var cells in mapping.DataRows)
        {
            if (cells.All(c => c.IsEmpty)) blank++;
            else if (Skipped(mapping, cells) is { } why) found.Add(Diagnostic.Note("TK191", why, place with { Row = cells[0].Row }));
            else
            {
                var row = new SiteRow(mapping, cells, mark);
                Identify(mapping, row, ids);
                var site = reader.Read(row);
                if (site is not null) sites.Add(site);
                rows.Add(row.Echo(site is not null));
                found.AddRange(row.Diagnostics);
            }
        }

        if (blank > 0)
            found.Add(Diagnostic.Note("TK190", string.Create(CultureInfo.InvariantCulture, $"{blank} blank rows between the sites were passed over"),
                place with { Row = null }));
        if (rows.Count == 0) found.Add(Diagnostic.Error("TK182", "the list holds no site; add a row for each", place));
        return new([.. sites], [.. rows], mapping, [.. found]);
    }

    private static void Identify(ColumnMapping mapping, SiteRow row, Dictionary<string, int> ids)
    {
        row.SiteId = mapping.Of(SiteColumns.Id) is null ? string.Create(CultureInfo.InvariantCulture, $"row-{row.Row}") : row.Echoed(SiteColumns.Id);
        if (row.SiteId.Length == 0) row.Error("TK182", SiteColumns.Id, "is missing; give every site its own");
        else if (!ids.TryAdd(row.SiteId, row.Row))
            row.Error("TK186", SiteColumns.Id,
                string.Create(CultureInfo.InvariantCulture, $"stands already in row {ids[row.SiteId]}; give every site its own"));
    }

    /// <summary>Why a filled row is no site, or null.</summary>
    private static string? Skipped(ColumnMapping mapping, ImmutableArray<Cell> cells)
    {
        var filled = cells.Where(c => !c.IsEmpty).ToList();
        if (filled.Exists(c => SiteWords.IsTotal(c.Text)) && !HasPosition(mapping, cells)) return "the row is a total and no site";
        if (filled.TrueForAll(c => mapping.Columns.Any(k => k.Column == c.Column && k.Heading == c.Text))) return "the row repeats the headings";
        return filled is [{ Number: null, Text.Length: > 20 }] ? $"the row holds one text only and no site: '{filled[0].Text}'" : null;
    }

    private static bool HasPosition(ColumnMapping mapping, ImmutableArray<Cell> cells) =>
        new[] { SiteColumns.Latitude, SiteColumns.Longitude, SiteColumns.Coordinates }.Any(m =>
            mapping.Of(m) is { } c && cells[c.Column - 1] is { IsEmpty: false, Text: var text } && !SiteWords.IsTotal(text));
}
