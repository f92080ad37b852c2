using System.Diagnostics;
using Xunit;

namespace TenderKit.Cli.Tests.Faults;

/// <summary>Ctrl-C and a request to end.</summary>
public class StopTests
{
    [SkippableTheory]
    [InlineData("INT", "Designing")]
    [InlineData("TERM", "Writing technical/settings")]
    public void A_bid_that_is_stopped_ends_at_once_and_writes_nothing(string signal, string at)
    {
        Skip.If(OperatingSystem.IsWindows(), "signals are sent with the program 'kill'");
        using var folder = signal == "INT" ? new TenderFolder() : new TenderFolder().WithSites("S11");
        using var bid = Child.Start(["bid", folder.Tender, "--out", folder.Out]);
        while (!bid.HasExited && !bid.Errors.Contains(at, StringComparison.Ordinal)) Thread.Sleep(20);
        bid.Signal(signal);
        var since = Stopwatch.StartNew();
        Assert.Equal(ExitCodes.Stopped, bid.WaitForExit());
        // A tenth of a second on a free machine; the design alone takes far longer than this bound
        Assert.True(since.Elapsed < TimeSpan.FromSeconds(3), $"took {since.Elapsed}");
        Assert.Contains("Stopped", bid.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.Out));
    }

    [SkippableFact]
    public void An_export_stopped_while_it_writes_leaves_no_half_file()
    {
        Skip.If(OperatingSystem.IsWindows(), "signals are sent with the program 'kill'");
        using var folder = new TenderFolder();
        using var export = Child.Start(["catalog", "export", Path.Combine(Repository.Root, "catalog-sample"), "--out", folder.Out]);
        while (!export.HasExited && !(Directory.Exists(folder.Out) && Directory.EnumerateFiles(folder.Out, "*", SearchOption.AllDirectories).Any())) Thread.Yield();
        export.Signal("INT");
        Assert.Contains(export.WaitForExit(), new[] { ExitCodes.Stopped, ExitCodes.Good });
        var files = Directory.Exists(folder.Out) ? Directory.EnumerateFiles(folder.Out, "*", SearchOption.AllDirectories).Select(Path.GetExtension).Distinct() : [];
        Assert.Subset(new HashSet<string?> { ".csv", ".ies" }, files.ToHashSet());
    }
}
