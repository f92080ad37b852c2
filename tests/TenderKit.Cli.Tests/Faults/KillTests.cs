using System.Text;
using TenderKit.Documents.Bids;
using Xunit;

namespace TenderKit.Cli.Tests.Faults;

/// <summary>A run killed at any moment of writing leaves the old set of files whole, or says that it does not.</summary>
public class KillTests
{
    private const int Moments = 20;

    [Fact]
    public void A_run_killed_at_twenty_moments_of_writing_leaves_a_whole_set_of_files()
    {
        var source = Path.Combine(Repository.Root, "catalog-sample");
        using var folder = new TenderFolder();
        var first = folder.PathOf("first");
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("catalog", "export", source, "--out", first).Code);
        var killed = 0;
        Parallel.For(0, Moments, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i =>
        {
            var place = folder.PathOf($"export-{i}");
            foreach (var file in Files(first))
            {
                var copy = Path.Combine(place, Path.GetRelativePath(first, file));
                Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
                File.WriteAllText(copy, File.ReadAllText(file) + "\n");
            }

            var (old, files) = (View(place), Files(place).Length);
            using var export = Child.Start(["catalog", "export", source, "--out", place]);
            while (!export.HasExited && Directory.EnumerateFiles(place, "*.being-written", SearchOption.AllDirectories).Count() * Moments < i * files) Thread.Yield();
            if (i == Moments - 1) while (!export.HasExited && !File.Exists(Path.Combine(place, BidFolder.UnfinishedName))) Thread.Yield();
            if (!export.HasExited) Interlocked.Increment(ref killed);
            export.Kill();
            export.WaitForExit();
            if (!File.Exists(Path.Combine(place, BidFolder.UnfinishedName))) Assert.Contains(View(place), new[] { old, New(old) });
            if (i % 5 != 4) return;
            Assert.Equal(ExitCodes.Good, TenderFolder.Run("catalog", "export", source, "--out", place).Code);
            Assert.Equal(New(old), View(place));
            Assert.Equal(files, Directory.EnumerateFiles(place, "*", SearchOption.AllDirectories).Count());
        });
        Assert.True(killed > Moments / 2, $"only {killed} runs were still at work when they were to be killed");
    }

    /// <summary>The old files are the new ones with an empty line more.</summary>
    private static string New(string old) => old.Replace("\n\u0001", "\u0001", StringComparison.Ordinal);

    private static string View(string place)
    {
        var view = new StringBuilder();
        foreach (var file in Files(place)) view.Append(Path.GetFileName(file)).Append(": ").Append(File.ReadAllText(file, Encoding.Latin1)).Append('\u0001');
        return view.ToString();
    }

    private static string[] Files(string place) =>
        [.. Directory.EnumerateFiles(place, "*.csv").Concat(Directory.EnumerateFiles(Path.Combine(place, "photometry"), "*.ies")).Order(StringComparer.Ordinal)];
}
