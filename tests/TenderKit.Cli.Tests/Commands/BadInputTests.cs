using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>What a user gets wrong: a clear message, the other sites still done, nothing half-written.</summary>
public class BadInputTests
{
    [Fact]
    public void A_wrong_key_names_its_line_and_the_nearest_key_and_nothing_is_written()
    {
        using var folder = new TenderFolder().Change("tender.yaml", "autonomy_nights: 3", "autonomy_nigths: 3");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("TK111", run.Errors, StringComparison.Ordinal);
        Assert.Contains("did you mean 'autonomy_nights'?", run.Errors, StringComparison.Ordinal);
        var line = File.ReadAllLines(folder.Tender).ToList().FindIndex(l => l.Contains("autonomy_nigths", StringComparison.Ordinal)) + 1;
        Assert.Contains($"tender.yaml, row {line}", run.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.Out));
    }

    [Theory]
    [InlineData("sites: sites.xlsx", "sites: nowhere.xlsx", "nowhere.xlsx")]
    [InlineData("rules: ", "rules: lost/", "design-rules.yaml")]
    [InlineData("{ default: climate.csv }", "{ default: lost.csv }", "lost.csv")]
    [InlineData("catalog: ", "catalog: lost", "TK601")]
    public void A_missing_file_is_named(string from, string to, string name)
    {
        using var folder = new TenderFolder().Change("tender.yaml", from, to);
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(name, run.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.Out));
    }

    [Fact]
    public void A_missing_tender_file_is_named()
    {
        var run = TenderFolder.Run("bid", "no-such-tender.yaml");
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("no-such-tender.yaml", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-13.7042", "-137.042", "Latitude")]
    [InlineData("road,1200", "road,long", "Length (m)")]
    [InlineData("1200,5,P4", "1200,5,P9", "Class")]
    public void A_bad_row_is_named_with_sheet_row_and_column_and_the_others_are_done(string from, string to, string column)
    {
        using var folder = new TenderFolder().WithSites("S01", "S11").Change("sites.csv", from, to);
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("sites.csv, row 2", run.Errors, StringComparison.Ordinal);
        Assert.Contains(column, run.Errors, StringComparison.Ordinal);
        var sites = TenderFolder.BidJson(folder.Out)["sites"]!.AsArray();
        Assert.Equal("S11", Assert.Single(sites)!["siteId"]!.GetValue<string>());
    }

    [Fact]
    public void A_site_no_part_fits_names_the_nearest_miss_and_the_others_are_done()
    {
        using var folder = new TenderFolder().WithSites("S01", "S11").Change("sites.csv", "S01,Tolavi village road east,-13.7042,34.5518,road,1200,5,P4", "S01,Tolavi village road east,-13.7042,34.5518,road,1200,25,C0");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Matches("nearest miss (LUM|INT)-", run.Errors);
        var bid = TenderFolder.BidJson(folder.Out);
        Assert.Equal("S01", Assert.Single(bid["unmetSites"]!.AsArray())!["siteId"]!.GetValue<string>());
        Assert.Single(bid["sites"]!.AsArray());
    }

    [Fact]
    public void A_site_whose_climate_file_is_missing_is_left_out_and_the_others_are_done()
    {
        using var folder = new TenderFolder().WithSites("S08", "S11").Change("sites.csv", "dense,estimate", "dense,lost.csv");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK321", run.Errors, StringComparison.Ordinal);
        Assert.Single(TenderFolder.BidJson(folder.Out)["sites"]!.AsArray());
    }

    [Fact]
    public void An_open_document_stops_the_run_and_changes_nothing()
    {
        using var folder = new TenderFolder().WithSites("S11");
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        var json = Path.Combine(folder.Out, "internal", "bid.json");
        var before = File.ReadAllBytes(json);
        folder.Change("tender.yaml", "validity_days: 120", "validity_days: 90");
        using (new FileStream(Path.Combine(folder.Out, "financial", "price-workbook.xlsx"), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
            var run = folder.Bid();
            Assert.Equal(ExitCodes.CouldNotRun, run.Code);
            Assert.Contains("price-workbook.xlsx is open in another program", run.Errors, StringComparison.Ordinal);
        }

        Assert.Equal(before, File.ReadAllBytes(json));
        Assert.DoesNotContain(Directory.EnumerateFiles(folder.Out, "*", SearchOption.AllDirectories), f => f.EndsWith("being-written", StringComparison.Ordinal));
    }

    [Fact]
    public void A_changed_rule_outside_its_range_warns()
    {
        using var folder = new TenderFolder().WithSites("S11").Change("tender.yaml", "kits:", "rules_changed: { energy.soiling: 0.6 }\n\nkits:");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Contains("TK120", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_rule_names_the_nearest()
    {
        using var folder = new TenderFolder().Change("tender.yaml", "kits:", "rules_changed: { energy.soilin: 0.9 }\n\nkits:");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("did you mean 'energy.soiling'?", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void TK118_a_rule_that_stands_twice_is_named_with_its_line()
    {
        using var folder = new TenderFolder();
        var rules = File.ReadAllText(Path.Combine(Repository.Root, "templates", "design-rules.yaml"));
        var first = rules.Split('\n').First(l => l.TrimStart().StartsWith("- {", StringComparison.Ordinal));
        File.WriteAllText(folder.PathOf("rules.yaml"), rules.TrimEnd() + "\n" + first + "\n");
        folder.Change("tender.yaml", "rules: " + Path.Combine(Repository.Root, "templates", "design-rules.yaml").Replace('\\', '/'), "rules: rules.yaml");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("TK118", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("- { from: dusk, for: 4 h, level: 100 % }", "- { from: noon, for: 4 h, level: 100 % }", "TK115")]
    [InlineData("class: P4", "class: P44", "TK117")]
    [InlineData("mounting_height_m: 5 to 6", "mounting_height_m: tall", "TK114")]
    [InlineData("autonomy_nights: 3", "autonomy_nights: 300", "TK116")]
    [InlineData("dark_nights_per_year: 1", "dark_nights_per_year: 0", "TK116")]
    [InlineData("profit: 7 %", "profit: -120 %", "TK116")]
    [InlineData("tax: 16.5 %", "tax: 1650 %", "TK116")]
    [InlineData("rate_decimals: 2", "rate_decimals: 30", "TK116")]
    [InlineData("validity_days: 120", "validity_days: -5", "TK116")]
    [InlineData("delivery_days: 150", "delivery_days: 1000000000000", "TK116")]
    [InlineData("- { from: dusk, for: 4 h, level: 100 % }", "- { from: dusk, for: 30 h, level: 100 % }", "TK115")]
    [InlineData("- { from: dusk, for: 4 h, level: 100 % }", "- { from: dusk, for: -4 h, level: 100 % }", "TK115")]
    [InlineData("  all-night:\n    - { rest: 100 % }", "  all-night:\n    - { rest: 0 % }", "TK115")]
    [InlineData("kits:", "rules_changed: { climate.years: 0.4 }\n\nkits:", "TK116")]
    [InlineData("kits:", "rules_changed: { night.switching_elevation: -40 }\n\nkits:", "TK116")]
    [InlineData("kits:", "rules_changed: { battery.end_of_life: 0 }\n\nkits:", "TK116")]
    [InlineData("kits:", "rules_changed: { energy.soiling: 3 }\n\nkits:", "TK116")]
    [InlineData("tender:\n", "tender\n", "TK110")]
    [InlineData("  title: ", "  subject: ", "TK113")]
    [InlineData("freight: 9 %", "freight: { a: 1 }", "TK112")]
    public void Each_fault_of_the_tender_file_has_its_code(string from, string to, string code)
    {
        using var folder = new TenderFolder().Change("tender.yaml", from, to);
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(code, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_command_is_exit_code_2()
    {
        Assert.Equal(ExitCodes.CouldNotRun, TenderFolder.Run("bidd").Code);
        Assert.Equal(ExitCodes.CouldNotRun, TenderFolder.Run("bid").Code);
    }

    [Fact]
    public void Json_of_bid_is_json()
    {
        using var folder = new TenderFolder().WithSites("S11");
        var run = TenderFolder.Run("bid", folder.Tender, "--out", folder.Out, "--format", "json");
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Equal(1, JsonNode.Parse(run.Output)!["sitesDesigned"]!.GetValue<int>());
    }
}
