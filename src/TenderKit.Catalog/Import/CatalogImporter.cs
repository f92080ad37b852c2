using TenderKit.Catalog.Families;
using TenderKit.Catalog.Store;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog.Import;

/// <summary>
/// Reads a folder of one .csv or .xlsx file per family, or one workbook with a sheet per family, into a store: all of it, or nothing when
/// anything is wrong.
/// </summary>
public static class CatalogImporter
{
    /// <summary>Folder of the photometric files inside a catalogue folder, or beside a workbook.</summary>
    public const string PhotometryFolder = "photometry";

    private static readonly string[] Extensions = [".csv", ".xlsx", ".xls"];

    /// <summary>Whether a path names a workbook by its extension.</summary>
    public static bool IsWorkbook(string path) => Path.GetExtension(path).ToUpperInvariant() is ".XLSX" or ".XLS";

    /// <summary>Reads a folder or a workbook into a new store in memory.</summary>
    public static Outcome<CatalogStore> From(string source) => IsWorkbook(source) ? FromWorkbook(source) : FromFolder(source);

    /// <summary>Reads the folder into a new store in memory.</summary>
    public static Outcome<CatalogStore> FromFolder(string folder)
    {
        var place = new Place(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)));
        if (!Directory.Exists(folder))
            return Outcome.None<CatalogStore>(Diagnostic.Error("TK601", "the catalogue folder does not exist; check the path", place));
        var found = new List<Diagnostic>();
        var tables = PartFamily.All.Select(f => (f, FamilyFile(folder, f, found)));
        return Store(tables, folder, place, $"the folder holds no part; it needs {string.Join(", ", PartFamily.All.Select(f => f.Name + ".csv"))}", found);
    }

    /// <summary>Reads a workbook with one sheet per family into a new store in memory; the photometric files lie beside it.</summary>
    public static Outcome<CatalogStore> FromWorkbook(string path)
    {
        var place = new Place(Path.GetFileName(path));
        if (!File.Exists(path))
            return Outcome.None<CatalogStore>(Diagnostic.Error("TK601", "the catalogue workbook does not exist; check the path", place));
        var read = TableReader.Read(path);
        if (read.Value is not { } file) return Outcome.None<CatalogStore>(read.Diagnostics);
        var found = new List<Diagnostic>(read.Diagnostics);
        found.AddRange(OtherSheets(file));
        var tables = PartFamily.All.Select(f => (f, FamilySheet(file, f, found)));
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        return Store(tables, folder, place, $"the workbook holds no part; its sheets must be named {string.Join(", ", PartFamily.All.Select(f => f.Name))}", found);
    }

    /// <summary>Reads the folder and, when nothing is wrong, writes it as one .db file; an older file of that name stays until the new one is whole.</summary>
    public static Outcome<CatalogStore> FromFolderToFile(string folder, string path) => ToFile(folder, path);

    /// <summary>Reads a folder or a workbook and, when nothing is wrong, writes it as one .db file; an older file of that name stays until the new one is whole.</summary>
    public static Outcome<CatalogStore> ToFile(string source, string path)
    {
        var outcome = From(source);
        outcome.Value?.SaveAs(path);
        return outcome;
    }

    private static Outcome<CatalogStore> Store(IEnumerable<(PartFamily Family, TableRows? Rows)> tables, string folder, Place place, string nothing, List<Diagnostic> found)
    {
        var store = CatalogStore.InMemory();
        using (var fill = store.BeginReplace())
        {
            var taken = new PartsTaken(fill, Path.Combine(folder, PhotometryFolder), found);
            foreach (var (family, rows) in tables)
            {
                if (rows is not null) taken.Take(PartRows.Read(rows, family, found));
            }

            if (taken.Count == 0) found.Add(Diagnostic.Error("TK601", nothing, place));
            if (!found.Exists(d => d.Severity == Severity.Error))
            {
                fill.Commit();
                return Outcome.Of(store, found);
            }
        }

        store.Dispose();
        return Outcome.None<CatalogStore>(found);
    }

    private static TableRows? FamilyFile(string folder, PartFamily family, List<Diagnostic> found)
    {
        var files = Extensions.Select(e => Path.Combine(folder, family.Name + e)).Where(File.Exists).ToList();
        if (files.Count == 0)
        {
            if (!family.Optional) found.Add(Absent(family, $"there is no {family.Name}.csv", new Place(family.Name + ".csv")));
            return null;
        }

        if (files.Count > 1)
            found.Add(Diagnostic.Error("TK611", $"{string.Join(" and ", files.Select(Path.GetFileName))} hold the same family; keep one",
                new Place(Path.GetFileName(files[1]))));
        return IsWorkbook(files[0]) ? FirstSheet(files[0], found) : Said(TableReader.Rows(files[0]), found);
    }

    private static TableRows? FirstSheet(string path, List<Diagnostic> found) =>
        Said(TableReader.Read(path), found) is { } file ? TableRows.Of(file.Tables.First(t => t.Rows.Length > 0)) : null;

    private static TableRows? FamilySheet(TableFile file, PartFamily family, List<Diagnostic> found)
    {
        if (file.Tables.FirstOrDefault(t => IsOf(t, family) && t.Rows.Length > 0) is { } table) return TableRows.Of(table);
        if (!family.Optional) found.Add(Absent(family, $"there is no sheet {family.Name}", new Place(file.File)));
        return null;
    }

    private static IEnumerable<Diagnostic> OtherSheets(TableFile file) =>
        from table in file.Tables
        where !PartFamily.All.Any(f => IsOf(table, f))
        select Diagnostic.Note("TK614", "the sheet has the name of no family and was not read", new Place(file.File, table.Sheet));

    private static bool IsOf(Table table, PartFamily family) => PartColumn.Key(table.Sheet ?? "") == PartColumn.Key(family.Name);

    private static Diagnostic Absent(PartFamily family, string what, Place place) =>
        Diagnostic.Warning("TK609", $"{what}: the catalogue has no {family.Name.Replace('_', ' ')}", place);

    private static T? Said<T>(Outcome<T> read, List<Diagnostic> found)
        where T : class
    {
        found.AddRange(read.Diagnostics);
        return read.Value;
    }
}
