using System.Globalization;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

/// <summary>Reads a table of tests/Published: comment lines with its source, a heading, rows.</summary>
internal static class PublishedTable
{
    public static IReadOnlyList<string[]> Rows(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "tests", "Published"))) folder = folder.Parent;
        Assert.NotNull(folder);
        var lines = File.ReadAllLines(Path.Combine(folder.FullName, "tests", "Published", name));
        Assert.StartsWith("# ", lines[0], StringComparison.Ordinal);
        return [.. lines.Where(l => l.Length > 0 && l[0] != '#').Skip(1).Select(l => l.Split(','))];
    }

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
