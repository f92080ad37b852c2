using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
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
        Change(other, "CREATE TABLE t (a)");
        Assert.Equal("TK610", Code(other));
    }

    [Fact]
    public void CatalogueOfAnotherVersionIsRefused()
    {
        using var folder = new SmallCatalog();
        var path = Path.Combine(folder.Folder, "parts.db");
        CatalogImporter.FromFolderToFile(folder.Folder, path).Value!.Dispose();
        Change(path, "ALTER TABLE poles DROP COLUMN zinc_um");
        Assert.Equal("TK610", Code(path));
        Assert.Contains("zinc_um", CatalogStore.Open(path).Diagnostics[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TK605", "UPDATE poles SET height_m = 600")]
    [InlineData("TK606", "UPDATE modules SET maximum_power_v = 30")]
    [InlineData("TK610", "UPDATE controllers SET chemistries = 'Magic'")]
    public void FileChangedByHandMeetsTheSameLimits(string code, string sql)
    {
        using var folder = new SmallCatalog();
        var path = Path.Combine(folder.Folder, "parts.db");
        CatalogImporter.FromFolderToFile(folder.Folder, path).Value!.Dispose();
        Change(path, sql);
        var outcome = Catalogs.Open(path);
        Assert.Null(outcome.Value);
        Assert.Equal(code, Assert.Single(outcome.Diagnostics).Code);
    }

    [Theory]
    [InlineData("UPDATE poles SET height_m = 'tall'")]
    [InlineData("UPDATE batteries SET chemistry = 'Magic'")]
    [InlineData("UPDATE poles SET description = NULL")]
    [InlineData("UPDATE controllers SET dimming = 2")]
    public void TablesRefuseWrongKinds(string sql)
    {
        using var folder = new SmallCatalog();
        var path = Path.Combine(folder.Folder, "parts.db");
        CatalogImporter.FromFolderToFile(folder.Folder, path).Value!.Dispose();
        Assert.Throws<SqliteException>(() => Change(path, sql));
    }

    [Fact]
    public void AnyNumberSurvivesFileAndExport()
    {
        using var folder = new SmallCatalog();
        using var store = CatalogImporter.FromFolder(folder.Folder).Value!;
        var pole = store.Load().Poles[0];
        var exported = Path.Combine(folder.Folder, "exported");
        Gen.Select(Gen.Double[2, 20], Gen.Double[1, 25], Gen.Int[0, 999_999_999]).Sample(
            (height, wall, cents) =>
            {
                var changed = pole with { HeightM = height, WallMm = wall, UnitPrice = cents / 1000m, Description = "a \"b\", c; d" };
                store.Replace([changed], ImmutableSortedDictionary<string, byte[]>.Empty);
                store.Export(exported);
                Assert.Equal(changed, Assert.Single(store.Load().All));
                Assert.Equal(store.Digest(), Catalogs.Open(exported).Value!.Digest);
            },
            iter: 20, threads: 1);
    }

    [Fact]
    public void ExportDoesNotDependOnTheCulture()
    {
        using var folder = new SmallCatalog();
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("fr-FR");
            using var store = CatalogImporter.FromFolder(folder.Folder).Value!;
            store.Export(Path.Combine(folder.Folder, "exported"));
            Assert.Equal(store.Digest(), Catalogs.Open(Path.Combine(folder.Folder, "exported")).Value!.Digest);
            Assert.Contains(",-0.0037,", File.ReadAllText(Path.Combine(folder.Folder, "exported", "modules.csv")), StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void Change(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static string Code(string path) => Assert.Single(CatalogStore.Open(path).Diagnostics).Code;
}
