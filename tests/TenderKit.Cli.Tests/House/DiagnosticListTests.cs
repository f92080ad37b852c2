using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace TenderKit.Cli.Tests.House;

/// <summary>Every diagnostic code is listed in DEVELOPERS.md and asked for by a test.</summary>
public partial class DiagnosticListTests
{
    [Fact]
    public void Every_code_is_listed()
    {
        var listed = new SortedSet<int>();
        foreach (Match match in Listed().Matches(File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md"))))
        {
            var first = Number(match.Groups[1]);
            var last = match.Groups[2].Success ? Number(match.Groups[2]) : first;
            for (var code = first; code <= last; code++) listed.Add(code);
        }

        Assert.Empty(Codes("src").Except(listed));
    }

    [Fact]
    public void Every_code_stands_in_a_test() => Assert.Empty(Codes("src").Except(Codes("tests")));

    private static SortedSet<int> Codes(string folder) => new(
        Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(f => Code().Matches(File.ReadAllText(f)).Select(m => Number(m.Groups[1]))));

    private static int Number(Group group) => int.Parse(group.ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\bTK(\d{3})")]
    private static partial Regex Code();

    [GeneratedRegex(@"TK(\d{3})(?:-(\d{3}))?")]
    private static partial Regex Listed();
}
