using System.Text.RegularExpressions;
using Xunit;

namespace TenderKit.Cli.Tests.Faults;

/// <summary>Language, clock and time zone of the machine change no byte of a bid.</summary>
public class SurroundingsTests
{
    // French and Arabic are tried within one process by the tests of the whole bid
    [Fact]
    public void A_machine_of_another_language_and_time_zone_writes_the_same_bytes()
    {
        const string language = "tr_TR.UTF-8";
        using var folder = new TenderFolder().WithSites("S11");
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        var environment = new Dictionary<string, string> { ["LANG"] = language, ["LC_ALL"] = language, ["TZ"] = "Pacific/Kiritimati" };
        using var bid = Child.Start(["bid", folder.Tender, "--out", folder.PathOf("other")], environment);
        Assert.Equal(ExitCodes.Good, bid.WaitForExit());
        Assert.Equal(File.ReadAllText(Path.Combine(folder.Out, "documents.sha256")), File.ReadAllText(folder.PathOf("other/documents.sha256")));
    }

    [Fact]
    public void Nothing_asks_for_the_time_or_for_chance()
    {
        var asks = new Regex(@"DateTime(Offset)?\.(Now|UtcNow|Today)|new Random\(\)|Random\.Shared|Guid\.NewGuid|Environment\.TickCount|GetUtcNow|GetLocalNow");
        var found = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => asks.IsMatch(File.ReadAllText(f)))
            .Select(f => Path.GetFileName(f));
        Assert.Empty(found);
    }
}
