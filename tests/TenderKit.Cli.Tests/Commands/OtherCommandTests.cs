using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

public class OtherCommandTests
{
    [Fact]
    public void Inspect_shows_columns_rows_and_problems()
    {
        using var folder = new TenderFolder().UseCsv().Change("sites.csv", "-13.7211", "north");
        var run = TenderFolder.Run("inspect", folder.Tender);
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("Mounting height (m)", run.Output, StringComparison.Ordinal);
        Assert.Contains("Tolavi village road east", run.Output, StringComparison.Ordinal);
        Assert.Contains("sites.csv, row 4, column Latitude", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Inspect_speaks_json()
    {
        using var folder = new TenderFolder();
        var run = TenderFolder.Run("inspect", folder.Tender, "--format", "json");
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Equal(14, JsonNode.Parse(run.Output)!["sites"]!.AsArray().Count);
    }

    [Fact]
    public void New_writes_a_tender_that_bids_on_its_own()
    {
        using var folder = new TenderFolder();
        var place = folder.PathOf("fresh");
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("new", place).Code);
        var run = TenderFolder.Run("inspect", Path.Combine(place, "tender.yaml"));
        Assert.True(run.Code == ExitCodes.Good, run.Output);
        Assert.Equal(ExitCodes.CouldNotRun, TenderFolder.Run("new", place).Code);
    }

    [Fact]
    public void A_catalogue_file_gives_the_same_bid_as_its_folder()
    {
        using var folder = new TenderFolder().WithSites("S11");
        folder.Bid(folder.PathOf("a"));
        var source = Path.Combine(Repository.Root, "catalog-sample").Replace('\\', '/');
        var import = TenderFolder.Run("catalog", "import", source, "--to", folder.PathOf("parts.db"));
        Assert.True(import.Code == ExitCodes.Good, import.Errors);
        folder.Change("tender.yaml", "catalog: " + source, "catalog: parts.db");
        folder.Bid(folder.PathOf("b"));
        decimal Total(string name) => TenderFolder.BidJson(folder.PathOf(name))["grandTotal"]!.GetValue<decimal>();
        Assert.Equal(Total("a"), Total("b"));
        Assert.Equal(TenderFolder.BidJson(folder.PathOf("a"))["catalogSha256"]!.ToString(), TenderFolder.BidJson(folder.PathOf("b"))["catalogSha256"]!.ToString());
    }

    [Fact]
    public void Catalog_list_names_every_part()
    {
        var run = TenderFolder.Run("catalog", "list", Path.Combine(Repository.Root, "catalog-sample"));
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Contains("LUM-R30-40", run.Output, StringComparison.Ordinal);
    }
}
