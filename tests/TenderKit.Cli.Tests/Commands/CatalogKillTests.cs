using System.Diagnostics;
using TenderKit.Catalog;
using TenderKit.Catalog.Tests;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>An import killed at any moment leaves the old catalogue whole.</summary>
public class CatalogKillTests
{
    private const int Parts = 4000;
    private string target = "";

    [Fact]
    public void A_killed_import_leaves_the_old_catalogue_whole()
    {
        using var folder = new TenderFolder();
        using var large = new LargeCatalog(Parts);
        var path = target = folder.PathOf("parts.db");
        var small = Path.Combine(Repository.Root, "catalog-sample");
        using (var whole = Import(large.Folder, path)) whole.WaitForExit();
        var known = new[] { small, path }.Select(p => Catalogs.Open(p).Value!.Digest).ToArray();
        Assert.NotEqual(known[0], known[1]);
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("catalog", "import", small, "--to", path).Code);
        var killed = 0;
        foreach (var moment in new Action<Process>[] { AfterMs(60), AfterMs(250), WhenItWrites(0), WhenItWrites(2), WhenItWrites(8) })
        {
            using var import = Import(large.Folder, path);
            moment(import);
            if (!import.HasExited) killed++;
            import.Kill();
            import.WaitForExit();
            Assert.Contains(Catalogs.Open(path).Value?.Digest, known);
        }

        Assert.True(killed > 0, "no import was still at work when it was to be killed");
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("catalog", "import", small, "--to", path).Code);
        Assert.Empty(Directory.EnumerateFiles(Path.GetDirectoryName(path)!, "*.new"));
    }

    private static Action<Process> AfterMs(int ms) => process => process.WaitForExit(ms);

    /// <summary>Once the new file appears beside the old one, which is replaced when the new one is whole.</summary>
    private Action<Process> WhenItWrites(int thenMs) => process =>
    {
        while (!process.HasExited && !File.Exists(FormattableString.Invariant($"{target}.{process.Id}.new"))) Thread.Yield();
        Thread.Sleep(thenMs);
    };

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
