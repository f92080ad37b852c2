using System.Text.RegularExpressions;
using Xunit;

namespace TenderKit.Cli.Tests.Release;

/// <summary>What is handed out beside the program is true of this state of it.</summary>
public class ReleaseTests
{
    [Fact]
    public void Third_party_notices_are_those_of_what_is_handed_out()
    {
        var path = Path.Combine(Repository.Root, "THIRD-PARTY-NOTICES");
        if (Environment.GetEnvironmentVariable("TENDERKIT_REWRITE_NOTICES") == "1") File.WriteAllText(path, Notices.Text());
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), Notices.Text());
    }

    [Fact]
    public void The_version_stands_in_one_place_and_has_its_release_notes()
    {
        var version = Regex.Match(File.ReadAllText(Path.Combine(Repository.Root, "Directory.Build.props")), "<Version>(.*)</Version>").Groups[1].Value;
        Assert.Equal(version, ProgramVersion.Text);
        Assert.Contains("\n## " + version, File.ReadAllText(Path.Combine(Repository.Root, "RELEASES.md")), StringComparison.Ordinal);
        Assert.DoesNotContain(Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.csproj", SearchOption.AllDirectories), p => File.ReadAllText(p).Contains("<Version>", StringComparison.Ordinal));
    }
}
