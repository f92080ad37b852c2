using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Catalog.Store;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog;

/// <summary>A catalogue ready for use.</summary>
/// <param name="Parts">All parts.</param>
/// <param name="Digest">SHA-256 of the catalogue's canonical text; see <see cref="CatalogStore.Digest"/>.</param>
/// <param name="Photometry">Bytes of the photometric files by name.</param>
public sealed record CatalogSource(PartsCatalog Parts, string Digest, ImmutableSortedDictionary<string, byte[]> Photometry);

/// <summary>Opens catalogues of either form.</summary>
public static class Catalogs
{
    /// <summary>Opens a folder of csv files, a workbook with a sheet per family or a .db file.</summary>
    public static Outcome<CatalogSource> Open(string path)
    {
        if (Directory.Exists(path) || CatalogImporter.IsWorkbook(path)) return Source(CatalogImporter.From(path));
        try
        {
            var outcome = Source(CatalogStore.Open(path));
            return outcome.Value is { } source && Problems(source, Path.GetFileName(path)).ToList() is { Count: > 0 } problems
                ? Outcome.None<CatalogSource>(problems)
                : outcome;
        }
        catch (Exception e) when (e is FormatException or SqliteException)
        {
            return Outcome.None<CatalogSource>(Diagnostic.Error("TK610",
                $"the catalogue file is damaged ({e.Message}); import it again from its csv files", new Place(Path.GetFileName(path))));
        }
    }

    /// <summary>Opens a catalogue of any form as a store.</summary>
    public static Outcome<CatalogStore> OpenStore(string path) =>
        Directory.Exists(path) || CatalogImporter.IsWorkbook(path) ? CatalogImporter.From(path) : CatalogStore.Open(path);

    private static Outcome<CatalogSource> Source(Outcome<CatalogStore> opened)
    {
        using var store = opened.Value;
        return store is null
            ? Outcome.None<CatalogSource>(opened.Diagnostics)
            : Outcome.Of(new CatalogSource(store.Load(), store.Digest(), store.Photometry()), opened.Diagnostics);
    }

    /// <summary>A file changed by other means than the importer meets the same limits.</summary>
    private static IEnumerable<Diagnostic> Problems(CatalogSource source, string file)
    {
        foreach (var part in source.Parts.All)
        {
            foreach (var column in PartFamily.Of(part).Columns)
            {
                if (column.RangeProblem(part) is { } problem)
                    yield return Diagnostic.Error("TK605", $"{part.Code}: {column.Name} '{column.Text(column.Of(part))}' {problem}",
                        new Place(file, Column: column.Name));
            }

            foreach (var contradiction in PartContradiction.Of(part).Where(c => c.IsCertain))
                yield return Diagnostic.Error("TK606", $"{part.Code}: {contradiction.Message}", new Place(file));
        }
    }
}
