using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Catalog.Store;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog.Import;

/// <summary>Reads a folder of one .csv or .xlsx file per family into a store: all of it, or nothing when anything is wrong.</summary>
public static class CatalogImporter
{
    /// <summary>Folder of the photometric files inside a catalogue folder.</summary>
    public const string PhotometryFolder = "photometry";

    private static readonly string[] Extensions = [".csv", ".xlsx", ".xls"];

    /// <summary>Reads the folder into a new store in memory.</summary>
    public static Outcome<CatalogStore> FromFolder(string folder)
    {
        var place = new Place(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)));
        if (!Directory.Exists(folder))
            return Outcome.None<CatalogStore>(Diagnostic.Error("TK601", "the catalogue folder does not exist; check the path", place));
        var found = new List<Diagnostic>();
        var parts = PartFamily.All.SelectMany(f => Family(folder, f, found)).ToList();
        if (parts.Count == 0)
            found.Add(Diagnostic.Error("TK601",
                $"the folder holds no part; it needs {string.Join(", ", PartFamily.All.Select(f => f.Name + ".csv"))}", place));
        found.AddRange(Duplicates(parts));
        var photometry = Photometry(folder, parts, found);
        if (found.Exists(d => d.Severity == Severity.Error)) return Outcome.None<CatalogStore>(found);
        var store = CatalogStore.InMemory();
        store.Replace(parts.Select(p => p.Part), photometry);
        return Outcome.Of(store, found);
    }

    /// <summary>Reads the folder and, when nothing is wrong, writes it as one .db file; an older file of that name stays until the new one is whole.</summary>
    public static Outcome<CatalogStore> FromFolderToFile(string folder, string path)
    {
        var outcome = FromFolder(folder);
        outcome.Value?.SaveAs(path);
        return outcome;
    }

    private static IEnumerable<PlacedPart> Family(string folder, PartFamily family, List<Diagnostic> found)
    {
        var files = Extensions.Select(e => Path.Combine(folder, family.Name + e)).Where(File.Exists).ToList();
        if (files.Count == 0)
        {
            if (!family.Optional)
            {
                found.Add(Diagnostic.Warning("TK609", $"there is no {family.Name}.csv: the catalogue has no {family.Name.Replace('_', ' ')}",
                    new Place(family.Name + ".csv")));
            }

            return [];
        }

        if (files.Count > 1)
            found.Add(Diagnostic.Error("TK611", $"{string.Join(" and ", files.Select(Path.GetFileName))} hold the same family; keep one",
                new Place(Path.GetFileName(files[1]))));
        var read = TableReader.Read(files[0]);
        found.AddRange(read.Diagnostics);
        return read.Value is { } file ? PartRows.Read(file.Tables.First(t => t.Rows.Length > 0), family, found) : [];
    }

    private static IEnumerable<Diagnostic> Duplicates(IEnumerable<PlacedPart> parts) =>
        from same in parts.GroupBy(p => p.Part.Code, StringComparer.OrdinalIgnoreCase)
        from repeated in same.Skip(1)
        select Diagnostic.Error("TK607", $"code '{repeated.Part.Code}' stands already in {same.First().Place}; give each part its own code",
            repeated.Place);

    private static ImmutableSortedDictionary<string, byte[]> Photometry(string folder, IEnumerable<PlacedPart> parts, List<Diagnostic> found)
    {
        var files = ImmutableSortedDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        foreach (var (part, place) in parts)
        {
            if (part is not Luminaire { PhotometricFile: var file } || files.ContainsKey(file)) continue;
            var path = Path.Combine(folder, PhotometryFolder, Path.GetFileName(file));
            if (Path.GetFileName(file) == file && File.Exists(path)) files[file] = File.ReadAllBytes(path);
            else found.Add(Diagnostic.Error("TK608",
                $"photometric file '{file}' is not in the folder {PhotometryFolder}; put it there or correct the name",
                place with { Column = "photometric_file" }));
        }

        return files.ToImmutable();
    }
}

/// <summary>A part and the row it came from.</summary>
internal readonly record struct PlacedPart(Part Part, Place Place);
