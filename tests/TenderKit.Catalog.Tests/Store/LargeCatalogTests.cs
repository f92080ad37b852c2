using System.Diagnostics;
using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Catalog.Store;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Catalog.Tests.Store;

/// <summary>Set <c>TENDERKIT_LARGE=100000</c> to run with as many parts as a trade catalogue may hold and read the times.</summary>
public sealed class LargeCatalogTests(ITestOutputHelper output)
{
    private static int Parts => int.TryParse(Environment.GetEnvironmentVariable("TENDERKIT_LARGE"), out var parts) ? parts : 3000;

    [Fact]
    public void ManyPartsAreImportedAndFoundThroughIndexes()
    {
        using var folder = new LargeCatalog(Parts);
        var path = Path.Combine(folder.Folder, "parts.db");
        var watch = Stopwatch.StartNew();
        var imported = CatalogImporter.ToFile(folder.Folder, path);
        Say("import", watch);
        using (imported.Value!) Assert.Equal(Parts, imported.Value!.Count());
        Assert.All(imported.Diagnostics, d => Assert.Equal("TK609", d.Code));
        output.WriteLine($"peak {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB, file {new FileInfo(path).Length / 1e6:0.0} MB");
        watch.Restart();
        using var opened = CatalogStore.Open(path).Value!;
        Say("open", watch);
        watch.Restart();
        var found = opened.Find(PartQuery.For<Module>().Between(m => m.RatedWp, 100, 102));
        Say($"find {found.Length} modules", watch);
        Assert.NotEmpty(found);
        Assert.All(found, m => Assert.InRange(m.RatedWp, 100, 102));
        watch.Restart();
        var all = opened.Load();
        Say("load all", watch);
        Assert.Equal(all.Modules.Where(m => m.RatedWp is >= 100 and <= 102).Select(m => m.Code), found.Select(m => m.Code));
        watch.Restart();
        Assert.Equal(all.Poles[7].Description, opened.Find(all.Poles[7].Code)!.Description);
        Say("find one code", watch);
        watch.Restart();
        var digest = opened.Digest();
        Say("digest", watch);
        watch.Restart();
        var exported = Path.Combine(folder.Folder, "exported");
        opened.Export(exported);
        Say("export", watch);
        using var again = CatalogImporter.FromFolder(exported).Value!;
        Assert.Equal(digest, again.Digest());
    }

    private void Say(string what, Stopwatch watch) => output.WriteLine($"{what}: {watch.Elapsed.TotalMilliseconds:0.0} ms");
}
