using System.Diagnostics;
using TenderKit.Catalog;
using TenderKit.Catalog.Tests;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>An import killed at any moment leaves the old catalogue whole.</summary>
public class CatalogKillTests
{
    private const int Parts = 4000;

    [Fact]
    public void A_killed_import_leaves_the_old_catalogue_whole()
    {
        using var folder = new TenderFolder();
        using var large = new LargeCatalog(Parts);
        var path = folder.PathOf("parts.db");
        var small = Path.Combine(Repository.Root, "catalog-sample");
        var watch = Stopwatch.StartNew();
        using (var whole = Import(large.Folder, path)) whole.WaitForExit();
        var durationMs = watch.ElapsedMilliseconds;
        var known = new[] { small, path }.Select(p => Catalogs.Open(p).Value!.Digest).ToArray();
        Assert.NotEqual(known[0], known[1]);
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("catalog", "import", small, "--to", path).Code);
        var killed = 0;
        foreach (var fraction in new[] { 0.4, 0.7, 0.8, 0.9, 0.97 })
        {
            using var import = Import(large.Folder, path);
            if (!import.WaitForExit((int)(durationMs * fraction)))
            {
                import.Kill();
                import.WaitForExit();
                killed++;
            }

            Assert.Contains(Catalogs.Open(path).Value?.Digest, known);
        }

        Assert.True(killed > 0, "no import was still at work when it was to be killed");
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("catalog", "import", small, "--to", path).Code);
        Assert.Empty(Directory.EnumerateFiles(Path.GetDirectoryName(path)!, "*.new"));
    }

    private static Process Import(string source, string target)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in new[] { typeof(App).Assembly.Location, "catalog", "import", source, "--to", target }) start.ArgumentList.Add(argument);
        var process = Process.Start(start)!;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }
}
