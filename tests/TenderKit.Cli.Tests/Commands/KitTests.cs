using Xunit;

namespace TenderKit.Cli.Tests.Commands;

public class KitTests
{
    [Fact]
    public void Fewer_kits_are_kept_to_and_their_price_is_told()
    {
        using var folder = new TenderFolder().WithSites("S01", "S02", "S08", "S13").Change("tender.yaml", "at_most: 5", "at_most: 2");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var bid = TenderFolder.BidJson(folder.Out);
        Assert.InRange(bid["kits"]!.AsArray().Count, 1, 2);
        Assert.Contains("TK641", TenderFolder.Codes(folder.Out));
        Assert.All(bid["sites"]!.AsArray().SelectMany(s => s!["checks"]!.AsArray()), c => Assert.True(c!["complies"]!.GetValue<bool>(), c.ToJsonString()));
    }

    [Fact]
    public void More_kits_than_allowed_are_used_when_they_must_be_and_that_warns()
    {
        using var folder = new TenderFolder().WithSites("S05", "S06").Change("tender.yaml", "at_most: 5", "at_most: 1")
            .Change("sites.csv", "4.5 to 5,8 %", "5,8 %").Change("sites.csv", "all-night,,5 to 6", "all-night,,6");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        Assert.Contains("TK640", run.Errors, StringComparison.Ordinal);
        Assert.Equal(2, TenderFolder.BidJson(folder.Out)["kits"]!.AsArray().Count);
    }
}
