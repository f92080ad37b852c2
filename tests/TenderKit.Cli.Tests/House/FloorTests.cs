using System.Xml.Linq;
using Xunit;

namespace TenderKit.Cli.Tests.House;

/// <summary>Each floor of the house looks only down.</summary>
public class FloorTests
{
    private static readonly string[] FromTheGround = ["Sizing", "Intake", "Catalog", "Tendering", "Documents", "Cli"];

    [Theory]
    [InlineData("Sizing")]
    [InlineData("Intake")]
    [InlineData("Catalog")]
    [InlineData("Tendering")]
    [InlineData("Documents")]
    [InlineData("Cli")]
    public void A_floor_refers_only_to_floors_below(string floor)
    {
        var project = XDocument.Load(Path.Combine(Repository.Root, "src", $"TenderKit.{floor}", $"TenderKit.{floor}.csproj"));
        var referred = project.Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')).Replace("TenderKit.", "", StringComparison.Ordinal));
        Assert.All(referred, r => Assert.True(Array.IndexOf(FromTheGround, r) < Array.IndexOf(FromTheGround, floor), $"{floor} refers up to {r}"));
    }

    [Fact]
    public void The_engineering_touches_no_file_clock_or_culture()
    {
        string[] forbidden = ["System.IO", "File.", "DateTime.Now", "DateTime.UtcNow", "CurrentCulture", "new Random(", "Random.Shared", "Guid.NewGuid", "Environment."];
        var found = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "TenderKit.Sizing"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(f => forbidden.Where(w => File.ReadAllText(f).Contains(w, StringComparison.Ordinal)).Select(w => $"{Path.GetFileName(f)}: {w}"));
        Assert.Empty(found);
    }
}
