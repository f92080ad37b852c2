using System.Text.Json.Nodes;
using TenderKit.Intake.Maps;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

public class MapTests
{
    private const string Map = """
        {"type":"FeatureCollection","features":[
        {"type":"Feature","properties":{"id":"R1","name":"Lakeside lane","width_m":4,"class":"P5"},"geometry":{"type":"LineString","coordinates":[[34.55,-13.70],[34.5512,-13.70],[34.5513,-13.6992]]}},
        {"type":"Feature","properties":{"id":"R2","name":"Mission lane","width_m":4,"class":"P5"},"geometry":{"type":"LineString","coordinates":[[34.5504,-13.70],[34.5504,-13.6990]]}},
        {"type":"Feature","properties":{"id":"Y1","name":"Market","class":"P5"},"geometry":{"type":"Polygon","coordinates":[[[34.552,-13.7],[34.5523,-13.7],[34.5520,-13.7004],[34.552,-13.7]]]}},
        {"type":"Feature","properties":{"id":"Y2","name":"Crossed yard","class":"P5"},"geometry":{"type":"Polygon","coordinates":[[[34.553,-13.7],[34.5535,-13.6996],[34.5535,-13.7],[34.553,-13.6996],[34.553,-13.7]]]}}
        ]}
        """;

    [Fact]
    public void A_map_is_bid_on_and_its_poles_are_placed()
    {
        using var folder = new TenderFolder().Change("tender.yaml", "sites: sites.xlsx", "sites: sites.geojson");
        File.WriteAllText(folder.PathOf("sites.geojson"), Map);
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var designed = TenderFolder.BidJson(folder.Out)["sites"]!.AsArray();
        var poles = MapReader.Read(Path.Combine(folder.Out, "technical", "poles.geojson")).Value!.Features;
        Assert.Equal(4, designed.Count);
        Assert.Equal("DrawnArea", designed[2]!["light"]!["arrangement"]!.GetValue<string>());
        Assert.NotEqual("DrawnArea", designed[3]!["light"]!["arrangement"]!.GetValue<string>()); // its inside is not known, so the rectangle around it is lit
        Assert.Equal(designed.Sum(s => s!["poles"]!.GetValue<int>()), poles.Length);
        Assert.Equal(poles.Length, MapReader.Read(Path.Combine(folder.Out, "technical", "poles.kml")).Value!.Features.Length);
        Assert.Equal(poles.Length + 1, File.ReadAllLines(Path.Combine(folder.Out, "technical", "poles.csv")).Length);
        Assert.Contains("TK750", TenderFolder.Codes(folder.Out));
        Assert.Contains("TK751", TenderFolder.Codes(folder.Out));
        Assert.Contains("TK752", TenderFolder.Codes(folder.Out));
    }

    [Fact]
    public void Columns_are_saved_edited_and_read_again()
    {
        using var folder = new TenderFolder().WithSites("S01", "S02");
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("inspect", folder.Tender, "--save-columns").Code);
        folder.Change("columns.yaml", "meaning: remark", "meaning: ignore").Change("columns.yaml", "heading: \"Name\", meaning: name", "heading: \"Name\", meaning: remark");
        var run = TenderFolder.Run("inspect", folder.Tender, "--format", "json");
        var json = JsonNode.Parse(run.Output)!;
        Assert.Equal("", json["sites"]![0]!["name"]!.GetValue<string>());
        var columns = json["sheets"]![0]!["columns"]!.AsArray();
        Assert.Equal("remark", columns.Single(c => c!["heading"]!.GetValue<string>() == "Name")!["meaning"]!.GetValue<string>());
        Assert.All(columns, c => Assert.True(c!["isSaved"]!.GetValue<bool>()));
        folder.Change("columns.yaml", "meaning: kind", "meaning: kund");
        var wrong = TenderFolder.Run("inspect", folder.Tender);
        Assert.Equal(ExitCodes.SomethingUnmet, wrong.Code);
        Assert.Contains("TK129", wrong.Output, StringComparison.Ordinal);
        Assert.Contains("nearest is 'kind'", wrong.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Problems_name_their_cells()
    {
        using var folder = new TenderFolder().UseCsv().Change("sites.csv", "-13.7211", "north");
        Assert.Contains("row 4, column Latitude, cell C4, site S03", TenderFolder.Run("inspect", folder.Tender).Output, StringComparison.Ordinal);
        var json = JsonNode.Parse(TenderFolder.Run("inspect", folder.Tender, "--format", "json").Output)!;
        Assert.Contains(json["diagnostics"]!.AsArray(), d => d!["cell"]?.GetValue<string>() == "C4");
    }
}
