using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Tables.Steps;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Sites.Positions;
using TenderKit.Tendering.Sites.Steps;

namespace TenderKit.Tendering.Sites;

/// <summary>Reads a site list: every row is understood or says why not, and a bad row never stops the good ones.</summary>
public static class SiteListReader
{
    private static readonly string[][] Needed =
    [
        [SiteColumns.Latitude, SiteColumns.Coordinates, SiteColumns.Northing, SiteColumns.Trace, SiteColumns.Outline],
        [SiteColumns.Longitude, SiteColumns.Coordinates, SiteColumns.Easting, SiteColumns.Trace, SiteColumns.Outline],
        [SiteColumns.Length, SiteColumns.Trace, SiteColumns.Outline],
    ];

    /// <summary>Reads the sheets of a file that are site lists; where none is whole, the one whose headings fit best.</summary>
    /// <param name="classFinder">Target of a class by name, or null when the name is not known.</param>
    /// <param name="classNames">Names of classes, to suggest one for a name that is not known; those of the published standards when not given.</param>
    /// <param name="saved">Meanings of columns saved beside the tender, which win over those found.</param>
    public static SiteListReading Read(TableFile file, SiteDefaults defaults, Func<string, LightTarget?> classFinder,
        IReadOnlyList<string>? classNames = null, SavedColumns? saved = null)
    {
        var sheets = file.Tables.Select(t => Understood(t, saved ?? SavedColumns.None)).ToImmutableArray();
        var picked = PickSheets.Apply(sheets, Needed);
        var reading = Read(picked.Read, new SiteRowReader(defaults, classFinder, classNames ?? LightClasses.Names));
        return reading with { Sheets = sheets, ReadSheets = [.. picked.Read.Select(m => m.Table.Sheet ?? "")], Diagnostics = reading.Diagnostics.InsertRange(0, picked.Diagnostics) };
    }

    /// <summary>Reads one table.</summary>
    /// <inheritdoc cref="Read(TableFile, SiteDefaults, Func{string, LightTarget?}, IReadOnlyList{string}?, SavedColumns?)" path="/param"/>
    public static SiteListReading Read(Table table, SiteDefaults defaults, Func<string, LightTarget?> classFinder,
        IReadOnlyList<string>? classNames = null) =>
        Read([Understood(table, SavedColumns.None)], new SiteRowReader(defaults, classFinder, classNames ?? LightClasses.Names));

    /// <summary>The table with its merged cells filled and its columns understood.</summary>
    private static ColumnMapping Understood(Table raw, SavedColumns saved)
    {
        var (table, found) = FillMerged.Apply(raw);
        var mapping = saved.For(table) is { HeaderRow: { } row } && row <= table.Rows.Length
            ? ColumnMap.At(table, row, SiteColumns.All)
            : ColumnMap.Find(table, SiteColumns.All);
        mapping = saved.Apply(mapping, SiteColumns.All);
        return mapping with { Diagnostics = mapping.Diagnostics.InsertRange(0, found) };
    }

    private static SiteListReading Read(ImmutableArray<ColumnMapping> mappings, SiteRowReader reader)
    {
        var found = new List<Diagnostic>();
        var usable = new List<ColumnMapping>();
        foreach (var mapping in mappings)
        {
            var cleaned = RowSteps.Apply(mapping);
            found.AddRange(cleaned.Diagnostics);
            if (HasNeeded(cleaned, found)) usable.Add(cleaned);
        }

        if (usable.Count == 0) return new([], [], mappings[0], [.. found]);
        return Rows(usable, reader, found);
    }

    private static bool HasNeeded(ColumnMapping mapping, List<Diagnostic> found)
    {
        if (mapping.HeaderRow is null) return false;
        var place = new Place(mapping.Table.File, mapping.Table.Sheet, mapping.HeaderRow);
        var missing = Needed.Where(names => names.All(n => mapping.Of(n) is null)).ToList();
        found.AddRange(missing.Select(names =>
            Diagnostic.Error("TK181", $"no column was understood as {names[0]}; add one with the heading '{names[0]}'", place)));
        if (missing.Count > 0) return false;
        if (mapping.Of(SiteColumns.Id) is null)
            found.Add(Diagnostic.Warning("TK194", "no column was understood as site id; sites are called after their rows", place));
        if (mapping.Of(SiteColumns.Kind) is null)
            found.Add(Diagnostic.Note("TK194", "no column was understood as kind; all sites are taken as roads", place));
        found.AddRange(HiddenParts.Of(mapping));
        return true;
    }

    private static SiteListReading Rows(List<ColumnMapping> mappings, SiteRowReader reader, List<Diagnostic> found)
    {
        var ids = new Dictionary<string, SiteRow>(StringComparer.OrdinalIgnoreCase);
        var rows = mappings.SelectMany(m => RowsOf(m, ids, mappings.Count > 1)).ToList();
        new PositionSettler(rows).Settle();
        var (sites, echoes) = (new List<Site>(), new List<SiteRowEcho>());
        foreach (var (row, _) in rows)
        {
            var site = reader.Read(row);
            if (site is not null) sites.Add(row.Drawing is { } drawing ? SiteDrawing.Add(site, drawing, [], row.IsFilled(SiteColumns.Length), row.File, found) : site);
            echoes.Add(row.Echo(site is not null));
            found.AddRange(row.Diagnostics);
        }

        if (rows.Count == 0)
            found.Add(Diagnostic.Error("TK182", "the list holds no site; add a row for each", new Place(mappings[0].Table.File, mappings[0].Table.Sheet, mappings[0].HeaderRow)));
        found.AddRange(DuplicateSites.Of([.. sites], mappings[0].Table.File));
        return new([.. sites], [.. echoes], mappings[0], [.. found]);
    }

    private static IEnumerable<(SiteRow Row, RowPosition Read)> RowsOf(ColumnMapping mapping, Dictionary<string, SiteRow> ids, bool isOneOfMany)
    {
        var data = mapping.DataRows.ToList();
        var width = data.Count == 0 ? 0 : data.Max(r => r.Length);
        var places = new[] { SiteColumns.Latitude, SiteColumns.Longitude, SiteColumns.Coordinates }.Select(m => mapping.Of(m)?.Column - 1).ToList();
        var marks = DecimalMarks.OfColumns([.. Enumerable.Range(0, width).Select(c =>
            (IReadOnlyList<string>)[.. data.Where(r => c < r.Length && r[c].Number is null).Select(r => r[c].Text)])], c => places.Contains(c));
        var positions = new PositionReader(mapping);
        foreach (var cells in data)
        {
            var row = new SiteRow(mapping, cells, marks);
            Identify(mapping, row, ids, isOneOfMany);
            row.ReadDrawing();
            yield return (row, positions.Read(row));
        }
    }

    private static void Identify(ColumnMapping mapping, SiteRow row, Dictionary<string, SiteRow> ids, bool isOneOfMany)
    {
        var sheet = isOneOfMany ? mapping.Table.Sheet + "-" : "";
        row.SiteId = mapping.Of(SiteColumns.Id) is null ? string.Create(CultureInfo.InvariantCulture, $"{sheet}row-{row.Row}") : row.Echoed(SiteColumns.Id);
        if (row.SiteId.Length == 0) row.Error("TK182", SiteColumns.Id, "is missing; give every site its own");
        else if (isOneOfMany && ids.TryGetValue(row.SiteId, out var other) && other.Sheet != row.Sheet)
        {
            row.Warning("TK186", SiteColumns.Id, $"stands already in sheet '{other.Sheet}'; the site is called {sheet}{row.SiteId}");
            row.SiteId = sheet + row.SiteId;
            ids.TryAdd(row.SiteId, row);
        }
        else if (!ids.TryAdd(row.SiteId, row))
            row.Error("TK186", SiteColumns.Id,
                string.Create(CultureInfo.InvariantCulture, $"stands already in row {ids[row.SiteId].Row}; give every site its own"));
    }
}
