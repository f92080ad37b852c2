using System.Text;
using System.Text.Json.Nodes;
using TenderKit.Documents.Machine;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Corpus;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>One site list in many disguises gives one bid: every number of bid.json, the digests of the inputs and the notes on reading (TK1xx) apart.</summary>
public class DisguiseTests
{
    private const string Plain =
        "Site,Name,Latitude,Longitude,Kind,Length (m),Width (m),Class,Schedule,Arrangement,Mounting height (m),Shading,Soil\n"
        + "S02,Tolavi road,-13.7065,34.5402,road,120,4,P5,village-night,single-sided,5,3 %,medium\n"
        + "S11,Deshoro water point,-13.6522,34.5351,yard,20,15,P4,all-night,,5,0 %,medium\n";

    private const string FrenchWithCommas =
        "R\u00E9publique de Kasola;;;;;;;;;;;;\n;;;;;;;;;;;;\n"
        + "N\u00B0 du site;Nom du site;Latitude;Longitude;Type de site;Longueur (m);Largeur (m);Classe d'\u00E9clairage;Programme;Disposition;Hauteur de feu (m);Ombrage;Type de sol\n"
        + "S02;Tolavi road;-13,7065;34,5402;rue;120,0;4,0;P5;village-night;unilat\u00E9ral;5;3 %;moyen\n"
        + "S11;Deshoro water point;-13,6522;34,5351;place;20,0;15,0;P4;all-night;;5;0 %;moyen\n";

    private const string DegreesTotalsDitto =
        "Site;Name;Latitude;Longitude;Kind;Length;Width;Class;Schedule;Arrangement;Mounting height;Shading;Soil\n"
        + "S02;Tolavi road;13\u00B042'23.4\u201D S;34\u00B032\u203224.72\u2033 E;road;0.12 km;400 cm;P5;village-night;single-sided;5 m;0.03;medium\n;;;;;;;;;;;;\n"
        + "S11;Deshoro water point;S 13 39 7.92;E 34 32 6.36;yard;20 m;15 m;P4;all-night;;5 m;0;ditto\n"
        + "Sub-total;;;;;140 m;;;;;;;\n";

    // recomputed with PROJ 9.1.1
    private const string GridInZone36 =
        "All positions in UTM zone 36 S,,,,,,,,,,,,\nSite,Name,Easting,Northing,Kind,Length (m),Width (m),Class,Schedule,Arrangement,Mounting height (m),Shading,Soil\n"
        + "S02,Tolavi road,666554.2455,8484202.4160,road,120,4,P5,village-night,single-sided,5,3 %,medium\n"
        + "S11,Deshoro water point,@11,yard,20,15,P4,all-night,,5,0 %,medium\n";

    private const string Map =
        """
        { "type": "FeatureCollection", "bbox": [34.5, -13.8, 34.6, -13.6], "features": [
          { "type": "Feature", "properties": { "Site": "S02", "name": "Tolavi road", "Kind": "road", "Length (m)": 120, "Width (m)": "4 m", "Class": "P5", "Schedule": "village-night",
            "Arrangement": "single-sided", "Mounting height (m)": 5, "Shading": "3 %", "Soil": "medium" }, "geometry": { "type": "Point", "coordinates": [34.5402, -13.7065, 812.4] } },
          { "type": "Feature", "properties": { "Site": "S11", "name": "Deshoro water point", "Kind": "yard", "Length (m)": 20, "Width (m)": 15, "Class": "P4", "Schedule": "all-night",
            "Mounting height (m)": 5, "Shading": 0, "Soil": "medium" }, "geometry": { "type": "Point", "coordinates": [34.5351, -13.6522] } } ] }
        """;

    private static readonly Sheet TwoRows = new("Liste", [
        ["STREET LIGHTING, LOT 1"], [],
        ["Site", "Name", "GPS coordinates", null, "Kind", "Dimensions (m)", null, "Class", "Schedule", "Arrangement", "Mounting height (m)", "Shading", "Soil"],
        [null, null, "Latitude", "Longitude", null, "Length", "Width", null, null, null, null, null, null],
        ["S02", "Tolavi road", -13.7065, 34.5402, "road", 120, 4, "P5", "village-night", "single-sided", "5 m", 0.03, "medium"],
        ["S11", "Deshoro water point", -13.6522, 34.5351, "yard", 20, 15, "P4", "all-night", null, 5, 0, null]])
    {
        Merged = ["A1:M1", "C3:D3", "F3:G3", "M5:M6"],
    };

    [Fact]
    public void Eight_disguises_give_one_bid()
    {
        var plain = Bid("sites.csv", Encoding.UTF8.GetBytes(Plain));
        Assert.Contains("\"grandTotal\"", plain, StringComparison.Ordinal);
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var grid = GridInZone36.Replace("@11", "666040.6941,8490213.0060", StringComparison.Ordinal);
        Assert.Equal(plain, Bid("sites.csv", Encoding.GetEncoding(1252).GetBytes(FrenchWithCommas)));
        Assert.Equal(plain, Bid("sites.csv", Encoding.UTF8.GetBytes(DegreesTotalsDitto)));
        Assert.Equal(plain, Bid("sites.csv", Encoding.UTF8.GetBytes(grid)));
        Assert.Equal(plain, Bid("sites.geojson", Encoding.UTF8.GetBytes(Map)));
        Assert.Equal(plain, Bid("sites.xlsx", Book.Of(TwoRows)));
        Assert.Equal(plain, Bid("sites.xlsx", Book.Of(new Sheet("Notes", [["see next"]]), TwoRows with { Name = "List" })));
        Assert.Equal(plain, Bid("sites.csv", [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Plain.Replace(',', '\t'))]));
    }

    private static string Bid(string file, byte[] list)
    {
        using var folder = new TenderFolder();
        File.WriteAllBytes(folder.PathOf(file), list);
        folder.Change("tender.yaml", "sites: sites.xlsx", "sites: " + file);
        File.AppendAllText(folder.Tender, "\nrules_changed: { climate.years: 10 }\n");
        var loaded = TenderLoader.Load(folder.Tender);
        var design = TenderDesigner.Run(loaded.Inputs!, loaded.Diagnostics);
        var json = JsonNode.Parse(BidJson.Make(design, BillBuilder.Build(design).Value))!.AsObject();
        Assert.Equal(2, json["sites"]!.AsArray().Count);
        json.Remove("inputs");
        json["diagnostics"] = new JsonArray([.. json["diagnostics"]!.AsArray().Where(d => !d!["code"]!.GetValue<string>().StartsWith("TK1", StringComparison.Ordinal)).Select(d => d!.DeepClone())]);
        return json.ToJsonString();
    }
}
