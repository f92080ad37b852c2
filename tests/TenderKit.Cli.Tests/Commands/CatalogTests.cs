using System.Text.Json.Nodes;
using TenderKit.Catalog;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

public class CatalogTests
{
    private static readonly string Sample = Path.Combine(Repository.Root, "catalog-sample");

    [Theory]
    [InlineData("parts")]
    [InlineData("parts.db")]
    [InlineData("parts.xlsx")]
    public void What_is_exported_imports_as_the_same_catalogue(string target)
    {
        using var folder = new TenderFolder();
        Directory.CreateDirectory(folder.PathOf("exported"));
        var path = Path.Combine(folder.PathOf("exported"), target);
        var run = TenderFolder.Run("catalog", "export", Sample, "--out", path);
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        Assert.Equal(Catalogs.Open(Sample).Value!.Digest, Catalogs.Open(path).Value!.Digest);
    }

    [Fact]
    public void Export_refuses_a_form_it_does_not_write() =>
        Assert.Equal(ExitCodes.CouldNotRun, TenderFolder.Run("catalog", "export", Sample, "--out", "parts.ods").Code);

    [Fact]
    public void List_takes_family_text_and_order()
    {
        var run = TenderFolder.Run("catalog", "list", Sample, "--family", "modules", "--text", "half cells", "--sort", "-rated_wp", "--format", "json");
        Assert.Equal(ExitCodes.Good, run.Code);
        var codes = JsonNode.Parse(run.Output)!["parts"]!.AsArray().Select(p => p!["code"]!.GetValue<string>()).ToList();
        Assert.All(codes, c => Assert.StartsWith("MOD-", c, StringComparison.Ordinal));
        var byCode = Catalogs.Open(Sample).Value!.Parts.Modules.ToDictionary(m => m.Code, m => m.RatedWp);
        Assert.Equal(codes.OrderByDescending(c => byCode[c]).Select(c => byCode[c]), codes.Select(c => byCode[c]));
        Assert.True(codes.Count is > 2 and < 50);
        Assert.Equal(ExitCodes.CouldNotRun, TenderFolder.Run("catalog", "list", Sample, "--sort", "beauty").Code);
    }

    [Fact]
    public void Show_explains_a_part_and_doubts_a_wrong_one()
    {
        var run = TenderFolder.Run("catalog", "show", "mod-150x", "--catalog", Sample);
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Contains("rated power over area 262 W/m2, to be expected at most 240: no", run.Output, StringComparison.Ordinal);
        Assert.Contains("certificates: none claimed", run.Output, StringComparison.Ordinal);
        Assert.Contains("rated power", run.Output, StringComparison.Ordinal);
        Assert.Contains("of brackets", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Show_says_where_a_tender_uses_a_part()
    {
        using var folder = new TenderFolder().WithSites("S11");
        var run = TenderFolder.Run("catalog", "show", "EAR-1", "--tender", folder.Tender, "--format", "json");
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var use = JsonNode.Parse(run.Output)!;
        var kit = Assert.Single(use["kits"]!.AsArray())!;
        Assert.Equal(("K1", 1.0), (kit["kit"]!.GetValue<string>(), kit["perPole"]!.GetValue<double>()));
        Assert.True(use["billItems"]![0]!["quantity"]!.GetValue<decimal>() >= kit["poles"]!.GetValue<int>());
        Assert.False(use["priceExpired"]!.GetValue<bool>());
    }

    [Fact]
    public void Show_names_the_nearest_codes()
    {
        var run = TenderFolder.Run("catalog", "show", "MOD-15", "--catalog", Sample);
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("MOD-150", run.Errors, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.CouldNotRun, TenderFolder.Run("catalog", "show", "MOD-150").Code);
    }
}
