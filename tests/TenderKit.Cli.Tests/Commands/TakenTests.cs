using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Tenders that state parts in place of a duty, totals, or a region in place of sites, from the command line to the documents.</summary>
public class TakenTests
{
    [Fact]
    public void Parts_stated_end_in_a_request_ready_to_send()
    {
        using var folder = new TenderFolder().WithSites("S02");
        File.AppendAllText(folder.Tender, "\nrules_changed: { climate.years: 10 }\nstated: { sites: 2, poles: 500 }\nparts_stated: [ { name: Type A, clause: \"4.2\", text: \"40 Wp, 12 V 40 Ah, 20 W LED\" } ]\n");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.True(new FileInfo(Path.Combine(folder.Out, "technical", "clarification-request.pdf")).Length > 5000);
        var json = TenderFolder.BidJson(folder.Out);
        var questions = json["clarifications"]!.AsArray();
        Assert.Equal(Enumerable.Range(1, questions.Count), questions.Select(q => q!["number"]!.GetValue<int>()));
        Assert.All(questions, q => Assert.Equal("4.2", q!["clause"]!.GetValue<string>()));
        Assert.True(json["partsStated"]![0]!["sites"]![0]!["darkNightsPerYearUpperBound"]!.GetValue<double>() > 10);
        Assert.Contains("TK353", TenderFolder.Codes(folder.Out));
        Assert.Contains("TK128", TenderFolder.Codes(folder.Out));
    }

    [Fact]
    public void A_region_is_bid_for_its_governing_place()
    {
        using var folder = new TenderFolder();
        var text = File.ReadAllText(folder.Tender);
        var lots = text.IndexOf("\nlots:", StringComparison.Ordinal);
        text = text.Remove(lots, text.IndexOf("\n\n", lots, StringComparison.Ordinal) - lots);
        var sites = text.IndexOf("\nsites:", StringComparison.Ordinal);
        text = text.Remove(sites, text.IndexOf('\n', sites + 1) - sites);
        File.WriteAllText(folder.Tender, text + "\nrules_changed: { climate.years: 10 }\nregion: { name: Lakes, poles: 30, places: [ { name: South, latitude: -13.7, longitude: 34.5 }, { name: North, latitude: 31, longitude: 31.2 } ] }\n");
        var inspected = JsonNode.Parse(TenderFolder.Run("inspect", folder.Tender, "--format", "json").Output)!;
        Assert.Equal(["South", "North"], inspected["sites"]!.AsArray().Select(s => s!["name"]!.GetValue<string>()));
        Assert.Equal("Lakes", inspected["tender"]!["region"]!.GetValue<string>());
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        var json = TenderFolder.BidJson(folder.Out);
        Assert.Equal((30, "North"), (json["poleCount"]!.GetValue<int>(), json["region"]!["governingPlace"]!.GetValue<string>()));
        Assert.Contains("North", json["sites"]![0]!["name"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Inspect_says_every_cell_for_machines()
    {
        using var folder = new TenderFolder().WithSites("S01");
        var json = JsonNode.Parse(TenderFolder.Run("inspect", folder.Tender, "--format", "json").Output)!;
        var row = Assert.Single(json["rows"]!.AsArray())!;
        Assert.Equal(("S01", true), (row["siteId"]!.GetValue<string>(), row["isRead"]!.GetValue<bool>()));
        Assert.All(row["cells"]!.AsArray(), c => Assert.NotEmpty(c!["understood"]!.GetValue<string>()));
        Assert.Equal(3, json["tender"]!["autonomyNights"]!.GetValue<double>());
        Assert.Contains(json["inputs"]!.AsArray(), i => i!["file"]!.GetValue<string>() == "tender.yaml");
    }
}
