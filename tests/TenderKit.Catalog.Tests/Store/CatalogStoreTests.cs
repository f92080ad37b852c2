using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using TenderKit.Catalog.Import;
using TenderKit.Catalog.Store;
using Xunit;

namespace TenderKit.Catalog.Tests.Store;

public sealed class CatalogStoreTests
{
    [Fact]
    public void FolderFileAndExportHaveOneDigest()
    {
        using var folder = new SmallCatalog();
        var path = Path.Combine(folder.Folder, "parts.db");
        var exported = Path.Combine(folder.Folder, "exported");
        using (var store = CatalogImporter.FromFolderToFile(folder.Folder, path).Value!) store.Export(exported);
        var sources = new[] { folder.Folder, path, exported }.Select(p => Catalogs.Open(p).Value!).ToList();
        Assert.Single(sources.Select(s => s.Digest).Distinct());
        Assert.Equal(64, sources[0].Digest.Length);
        Assert.All(sources, s => Assert.Equal(["path.ies", "road.ies"], s.Photometry.Keys));
        Assert.All(sources, s => Assert.Equal(13, s.Parts.All.Count()));
        Assert.Equal(sources[0].Parts.Luminaires[1], sources[1].Parts.Luminaires[1]);
    }

    [Theory]
    [InlineData("poles", ",180,", ",180.01,")]
    [InlineData("poles", "Pole 6 m", "Pole 6.0 m")]
    [InlineData("controllers", "12;24", "24;12")]
    public void DigestFollowsEveryCell(string family, string old, string replacement)
    {
        using var folder = new SmallCatalog();
        var before = Catalogs.Open(folder.Folder).Value!.Digest;
        Assert.NotEqual(before, Catalogs.Open(folder.With(family, old, replacement).Folder).Value!.Digest);
    }

    [Fact]
    public void DigestFollowsThePhotometryButNotTheOrderOfRowsOrColumns()
    {
        using var folder = new SmallCatalog();
        var before = Catalogs.Open(folder.Folder).Value!.Digest;
        var lines = File.ReadAllLines(folder.FileOf("services"));
        File.WriteAllLines(folder.FileOf("services"), [lines[0], lines[2], lines[1]]);
        folder.With("brackets", "code,description", "description,code").With("brackets", "K-1,Bracket", "Bracket,K-1").With("poles", ",180,", ",180.00,");
        Assert.Equal(before, Catalogs.Open(folder.Folder).Value!.Digest);
        File.WriteAllText(Path.Combine(folder.Folder, "photometry", "road.ies"), "other");
        Assert.NotEqual(before, Catalogs.Open(folder.Folder).Value!.Digest);
    }

    [Fact]
    public void ReplaceIsAllOrNothing()
    {
        using var folder = new SmallCatalog();
        using var store = CatalogImporter.FromFolder(folder.Folder).Value!;
        var (parts, digest) = (store.Load(), store.Digest());
        var changed = parts.Poles[0] with { UnitPrice = 1 };
        Assert.Throws<SqliteException>(() => store.Replace([changed, changed with { HeightM = 7 }], ImmutableSortedDictionary<string, byte[]>.Empty));
        Assert.Throws<SqliteException>(() => store.Replace([changed, parts.Luminaires[0]], ImmutableSortedDictionary<string, byte[]>.Empty));
        Assert.Equal(digest, store.Digest());
        store.Replace([changed], ImmutableSortedDictionary<string, byte[]>.Empty);
        Assert.Equal(changed, Assert.Single(store.Load().All));
    }

    [Fact]
    public void FilesThatAreNoCatalogueAreRefused()
    {
        using var folder = new SmallCatalog();
        Assert.Equal("TK601", Code(Path.Combine(folder.Folder, "missing.db")));
        Assert.Equal("TK610", Code(folder.FileOf("poles")));
        var other = Path.Combine(folder.Folder, "other.db");
        using (var connection = new SqliteConnection($"Data Source={other};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "CREATE TABLE t (a)";
            command.ExecuteNonQuery();
        }

        Assert.Equal("TK610", Code(other));
    }

    [Fact]
    public void CatalogueOfAnotherVersionIsRefused()
    {
        using var folder = new SmallCatalog();
        var path = Path.Combine(folder.Folder, "parts.db");
        CatalogImporter.FromFolderToFile(folder.Folder, path).Value!.Dispose();
        using (var connection = new SqliteConnection($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "ALTER TABLE poles DROP COLUMN zinc_um";
            command.ExecuteNonQuery();
        }

        Assert.Equal("TK610", Code(path));
        Assert.Contains("zinc_um", CatalogStore.Open(path).Diagnostics[0].Message, StringComparison.Ordinal);
    }

    private static string Code(string path) => Assert.Single(CatalogStore.Open(path).Diagnostics).Code;
}
