using System.Collections.Immutable;
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
    /// <summary>Opens a folder of csv files or a .db file.</summary>
    public static Outcome<CatalogSource> Open(string path)
    {
        var outcome = Directory.Exists(path) ? CatalogImporter.FromFolder(path) : CatalogStore.Open(path);
        using var store = outcome.Value;
        return store is null
            ? Outcome.None<CatalogSource>(outcome.Diagnostics)
            : Outcome.Of(new CatalogSource(store.Load(), store.Digest(), store.Photometry()), outcome.Diagnostics);
    }
}
