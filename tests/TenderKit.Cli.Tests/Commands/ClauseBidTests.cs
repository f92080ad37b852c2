using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

public sealed class ClauseBidTests
{
    [Fact]
    public void ClausesFilterTheCatalogueAndFillTheComplianceTable()
    {
        using var folder = new TenderFolder().WithSites("S01");
        File.WriteAllText(
            folder.PathOf("clauses.csv"),
            "clause,item,property,comparison,value,unit,text\n4.1,battery,chemistry,equals,gel,,Batteries shall be gel\n4.2,luminaire,colour temperature,equals,4000 K,,Neutral white\n4.3,energy,autonomy,at least,4 nights,,\n4.4,luminaire,efficacy,at least,400 lm/W,,\n");
        var (code, _, errors) = folder.Bid();
        Assert.True(code == ExitCodes.SomethingUnmet, errors);
        Assert.True(Directory.Exists(folder.Out), errors);
        Assert.Contains("TK648", errors, StringComparison.Ordinal);
        var kit = TenderFolder.BidJson(folder.Out)["kits"]!.AsArray().Single()!;
        JsonNode Row(string clause) => kit["checks"]!.AsArray().Single(c => c!["clause"]?.GetValue<string>() == clause)!;
        Assert.Equal("gel", Row("4.1")["offeredText"]!.GetValue<string>());
        Assert.True(Row("4.2")["complies"]!.GetValue<bool>());
        Assert.True(Row("4.3")["offered"]!.GetValue<double>() >= 4);
        Assert.False(Row("4.4")["complies"]!.GetValue<bool>());
    }
}
