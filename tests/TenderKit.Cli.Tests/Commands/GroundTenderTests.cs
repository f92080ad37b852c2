using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>What a tender says of wind, air, traffic and ground reaches the design and its documents.</summary>
public class GroundTenderTests
{
    [Fact]
    public void A_gust_for_asce_a_flood_and_soil_values_are_used_and_shown()
    {
        using var folder = new TenderFolder().WithSites("S06")
            .Change("tender.yaml", "  terrain: II", "  terrain: II\n  wind_standard: asce\n  wind_definition: 3-s gust 50 years\n  flood: yes\n  soil_kpa_per_m: 25\n  soil_bearing_kpa: 120");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var site = TenderFolder.BidJson(folder.Out)["sites"]!.AsArray()[0]!;
        Assert.Equal(0.36 + (0.1 * Math.Log(8400)), site["structure"]!["windConversionFactor"]!.GetValue<double>(), 1e-4); // Peterka and Shahid, by hand
        Assert.Contains(site["checks"]!.AsArray(), c => c!["basis"]!.GetValue<string>().Contains("flood-prone", StringComparison.Ordinal));
        Assert.Contains(site["checks"]!.AsArray(), c => c!["id"]!.GetValue<string>() == "foundation.pressure" && c["required"]!.GetValue<double>() == 120);
        Assert.True(site["structure"]!["backfillM3"]!.GetValue<double>() > 0);
    }

    [Fact]
    public void Salt_air_asks_more_of_the_pole()
    {
        using var folder = new TenderFolder().WithSites("S11").Change("tender.yaml", "  terrain: II", "  terrain: II\n  corrosion: C5");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var check = TenderFolder.BidJson(folder.Out)["sites"]!.AsArray()[0]!["checks"]!.AsArray().Single(c => c!["id"]!.GetValue<string>() is "pole.zinc" or "pole.corrosion")!;
        Assert.Contains("ISO 9223 category C5", check["basis"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.True(check["complies"]!.GetValue<bool>());
    }

    [Theory]
    [InlineData("wind_standard: nbc", "TK117")]
    [InlineData("wind_definition: strong", "TK117")]
    [InlineData("flood: maybe", "TK117")]
    [InlineData("corrosion: C7", "TK117")]
    [InlineData("traffic_km_per_h: 500", "TK116")]
    [InlineData("soil_kpa_per_m: 1", "TK116")]
    public void What_is_not_understood_stops_with_its_line(string line, string code)
    {
        using var folder = new TenderFolder().WithSites("S11").Change("tender.yaml", "  terrain: II", "  terrain: II\n  " + line);
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(code, run.Errors, StringComparison.Ordinal);
    }
}
