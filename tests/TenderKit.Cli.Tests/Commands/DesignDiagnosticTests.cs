using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Each diagnostic of the design is raised by the case it is for.</summary>
public class DesignDiagnosticTests
{
    [Fact]
    public void TK320_an_estimated_climate_warns() => AssertRaised("TK320", "S09");

    [Fact]
    public void TK520_a_soil_not_stated_is_noted() => AssertRaised("TK520", "S06");

    [Fact]
    public void TK632_an_expired_price_is_left_out() => AssertRaised("TK632", "S11");

    [Fact]
    public void TK633_a_part_that_comes_too_late_is_left_out() => AssertRaised("TK633", "S11");

    [Fact]
    public void TK325_heavy_shading_warns() => AssertRaised("TK325", "S11", f => f.Change("sites.csv", "all-night,,5,0 %", "all-night,,5,35 %"));

    [Fact]
    public void TK326_a_climate_file_of_another_place_warns() =>
        AssertRaised("TK326", "S11", f => f.Change("climate.csv", "# record_low_c: 8", "# latitude: 9.0\n# longitude: 38.8\n# record_low_c: 8"));

    [Fact]
    public void TK332_a_place_without_winter_sun_is_an_answer()
    {
        using var folder = new TenderFolder().WithSites("S09", "S11").Change("sites.csv", "-13.6701,34.4968", "68.5,27.5");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK332", run.Errors, StringComparison.Ordinal);
        Assert.Single(TenderFolder.BidJson(folder.Out)["sites"]!.AsArray());
    }

    [Fact]
    public void TK334_a_fault_on_one_site_leaves_the_others()
    {
        using var folder = new TenderFolder().WithSites("S09", "S11");
        var inputs = TenderLoader.Load(folder.Tender).Inputs!;
        var odd = inputs.Sites[0] with { LatitudeDegrees = double.NaN };
        var design = TenderDesigner.Run(inputs with { Sites = [odd, inputs.Sites[1]] }, []);
        Assert.Contains(design.Diagnostics, d => d.Code == "TK334" && d.Place.Site == odd.Id);
        Assert.Equal("S11", Assert.Single(design.Sites).Site.Id);
    }

    [Fact]
    public void TK331_a_lead_acid_battery_seldom_full_warns() =>
        AssertRaised("TK331", "S01", f => f.Change("tender.yaml", "kits:", "rules_changed: { battery.days_to_full: 2, battery.depth.LithiumIronPhosphate: 0.2 }\n\nkits:"));

    [Fact]
    public void TK230_no_luminaire_is_an_answer()
    {
        using var folder = new TenderFolder().WithSites("S01", "S11").Change("sites.csv", "1200,5,P4", "1200,25,C0");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK230", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1", "single-sided", "1200 m apart")]
    [InlineData("700", "single-sided", "1.71 m apart")]
    [InlineData("81", "opposite", "opposite pairs")]
    public void TK231_a_number_of_poles_that_cannot_stand_is_an_answer(string poles, string arrangement, string words)
    {
        using var folder = new TenderFolder().WithSites("S01", "S11");
        var lines = File.ReadAllLines(folder.PathOf("sites.csv"));
        File.WriteAllLines(folder.PathOf("sites.csv"), lines.Select((l, i) => i == 0 ? l + ",Poles" : l.Contains("single-sided", StringComparison.Ordinal) ? l.Replace("single-sided", arrangement, StringComparison.Ordinal) + "," + poles : l + ","));
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK231", run.Errors, StringComparison.Ordinal);
        Assert.Contains(words, run.Errors, StringComparison.Ordinal);
        Assert.Single(TenderFolder.BidJson(folder.Out)["sites"]!.AsArray());
    }

    [Fact]
    public void TK195_TK196_lots_that_do_not_match_the_site_list_warn()
    {
        using var folder = new TenderFolder().WithSites("S01", "S11").Change("tender.yaml", "B: [S08, S09, S10, S11,", "B: [S08, S09, S10, S99,");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Contains("TK195", run.Errors, StringComparison.Ordinal);
        Assert.Contains("S99", run.Errors, StringComparison.Ordinal);
        Assert.Contains("site S11: stands in no lot", run.Errors, StringComparison.Ordinal);
        Assert.Contains("TK196", TenderFolder.Codes(folder.Out));
    }

    // a short lane with one pole: the light is that of one pole, not of an endless row
    [Fact]
    public void A_lone_pole_is_measured_alone()
    {
        using var alone = new TenderFolder().WithSites("S01").Change("sites.csv", "road,1200,5,P4", "road,12,5,P4");
        Assert.Equal(ExitCodes.Good, alone.Bid().Code);
        var lone = TenderFolder.BidJson(alone.Out)["sites"]!.AsArray()[0]!;
        Assert.Equal(1, lone["poles"]!.GetValue<int>());
        Assert.InRange(lone["light"]!["averageLx"]!.GetValue<double>(), 5.0, 7.5);
    }

    [Fact]
    public void The_number_of_poles_asked_for_holds_in_a_yard_too()
    {
        using var folder = new TenderFolder().WithSites("S03");
        var lines = File.ReadAllLines(folder.PathOf("sites.csv"));
        File.WriteAllLines(folder.PathOf("sites.csv"), lines.Select((l, i) => l + (i == 0 ? ",Poles" : ",6")));
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        Assert.Equal(6, TenderFolder.BidJson(folder.Out)["sites"]!.AsArray()[0]!["poles"]!.GetValue<int>());
    }

    [Fact]
    public void TK330_no_battery_is_an_answer_with_the_nearest_miss()
    {
        using var folder = new TenderFolder().WithSites("S05").Change("tender.yaml", "kits:", "rules_changed: { battery.enclosure_rise: 60 }\n\nkits:");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK330", run.Errors, StringComparison.Ordinal);
        Assert.Contains("required at least 93 degC", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void TK302_irradiation_in_the_wrong_unit_stops_the_site()
    {
        using var folder = new TenderFolder().WithSites("S11");
        var lines = File.ReadAllLines(folder.PathOf("climate.csv")).Select(l => l.Split(','));
        File.WriteAllLines(folder.PathOf("climate.csv"), lines.Select(c => c.Length == 5 && double.TryParse(c[1], out var kWh) ? string.Join(',', [c[0], FormattableString.Invariant($"{kWh * 3.6:0.00}"), .. c[2..]]) : string.Join(',', c)));
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK302", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void TK631_a_part_in_a_currency_without_exchange_rate_is_left_out()
    {
        using var folder = new TenderFolder().WithSites("S11");
        CopyCatalogue(folder);
        folder.Change("catalog/enclosures.csv", ",USD,", ",EUR,");
        var run = folder.Bid();
        Assert.Contains("TK631", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void TK121_a_rules_file_that_lacks_a_rule_stops_the_run()
    {
        using var folder = new TenderFolder().WithSites("S11");
        var rules = File.ReadAllLines(Path.Combine(Repository.Root, "templates", "design-rules.yaml")).Where(l => !l.Contains("energy.soiling", StringComparison.Ordinal));
        File.WriteAllLines(folder.PathOf("rules.yaml"), rules);
        var named = File.ReadAllLines(folder.Tender).Select(l => l.StartsWith("rules: ", StringComparison.Ordinal) ? "rules: rules.yaml" : l);
        File.WriteAllLines(folder.Tender, named);
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("TK121", run.Errors, StringComparison.Ordinal);
        Assert.Contains("energy.soiling", run.Errors, StringComparison.Ordinal);
    }

    private static void CopyCatalogue(TenderFolder folder)
    {
        var source = Path.Combine(Repository.Root, "catalog-sample");
        foreach (var file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(folder.PathOf("catalog"), Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        folder.Change("tender.yaml", source.Replace('\\', '/'), "catalog");
    }

    private static void AssertRaised(string code, string site, Action<TenderFolder>? change = null)
    {
        using var folder = new TenderFolder().WithSites(site);
        change?.Invoke(folder);
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        Assert.Contains(code, TenderFolder.Codes(folder.Out));
    }
}
