using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Classes of luminance and classes of parts of the night, in a whole bid.</summary>
public class LightClassTests
{
    [Fact]
    public void A_road_may_ask_for_luminance()
    {
        using var folder = new TenderFolder().WithSites("S01").Change("sites.csv", "1200,5,P4", "1200,6,M5");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var checks = TenderFolder.BidJson(folder.Out)["sites"]![0]!["checks"]!.AsArray().Select(c => c!["id"]!.GetValue<string>()).ToList();
        Assert.Contains("light.average-luminance", checks);
        Assert.Contains("light.longitudinal-uniformity-of-the-luminance", checks);
        Assert.Contains("light.threshold-increment", checks);
        Assert.Contains("light.edge-illuminance-ratio", checks);
        Assert.DoesNotContain("light.average", checks);
    }

    [Fact]
    public void A_road_of_an_illuminance_class_is_checked_for_glare()
    {
        using var folder = new TenderFolder().WithSites("S01");
        folder.Bid();
        var checks = TenderFolder.BidJson(folder.Out)["sites"]![0]!["checks"]!.AsArray();
        Assert.Contains(checks, c => c!["id"]!.GetValue<string>() == "light.threshold-increment" && c["required"]!.GetValue<double>() == 30);
    }

    [Fact]
    public void TK232_luminance_is_for_roads()
    {
        using var folder = new TenderFolder().WithSites("S05", "S11").Change("sites.csv", "20,15,P4", "20,15,M4");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK232", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_of_the_night_may_ask_for_a_class_of_its_own()
    {
        using var folder = new TenderFolder().WithSites("S01").Change("tender.yaml", "- { rest: 40 % }", "- { rest: 40 %, class: P6 }");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var checks = TenderFolder.BidJson(folder.Out)["sites"]![0]!["checks"]!.AsArray();
        var average = checks.Single(c => c!["id"]!.GetValue<string>() == "light.at40.P6.average")!;
        var full = checks.Single(c => c!["id"]!.GetValue<string>() == "light.average")!;
        Assert.Equal(0.4 * full["offered"]!.GetValue<double>(), average["offered"]!.GetValue<double>(), 1e-3);
    }

    [Fact]
    public void A_part_that_cannot_reach_its_class_refuses_the_light()
    {
        using var folder = new TenderFolder().WithSites("S01").Change("tender.yaml", "- { rest: 40 % }", "- { rest: 40 %, class: P3 }");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK230", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_class_of_a_part_is_named()
    {
        using var folder = new TenderFolder().Change("tender.yaml", "- { rest: 40 % }", "- { rest: 40 %, class: Q9 }");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("TK117", run.Errors, StringComparison.Ordinal);
    }
}
