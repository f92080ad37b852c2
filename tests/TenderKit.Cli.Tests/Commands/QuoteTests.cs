using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Offers checked and compared, and an addendum compared, by command, on a tender of one site.</summary>
public class QuoteTests
{
    private const string Good = """
        We offer lot A, prices in USD, DAP Kisanora.
        - All-in-one solar street light 8 W, 100 lm, IP54, panel 10 W, battery LiFePO4 12.8 V 5 Ah, MPPT controller, qty 14 set @ 210.00 = 2,940.00
        Total: USD 2,940.00
        Offer valid 130 days. Delivery 100 days.
        """;

    [Fact]
    public void An_offer_is_checked_into_json_report_and_record()
    {
        using var folder = new TenderFolder().WithSites("S06");
        File.WriteAllText(folder.PathOf("offer.txt"), Good);
        var (code, output, errors) = TenderFolder.Run("quote", "check", folder.Tender, folder.PathOf("offer.txt"), "--out", folder.Out, "--format", "json");
        Assert.True(code == ExitCodes.SomethingUnmet, errors);
        var root = JsonNode.Parse(output)!;
        Assert.Equal(2940m, root["correctedTotal"]!.GetValue<decimal>());
        Assert.Equal("rules say not responsive: the committee decides", root["overall"]!.GetValue<string>());
        var line = root["lines"]![0]!;
        Assert.Equal("integrated", line["family"]!.GetValue<string>());
        Assert.Equal(10, line["read"]!["rated_wp"]!.GetValue<double>());
        Assert.Equal("cannot be true as stated", line["verdict"]!.GetValue<string>());
        var codes = root["findings"]!.AsArray().Select(f => f!["code"]!.GetValue<string>()).ToHashSet();
        Assert.Superset(new HashSet<string> { "TK805", "TK809", "TK819", "TK820", "TK831" }, codes);
        Assert.Single(root["sites"]!.AsArray());
        Assert.All(new[] { "quote-check.pdf", "quote-check.xlsx", "quote-readings.csv" }, f => Assert.True(new FileInfo(Path.Combine(folder.Out, f)).Length > 500, f));

        var compared = TenderFolder.Run("quote", "compare", folder.Tender, folder.PathOf("offer.txt"), "--out", folder.Out, "--format", "json");
        Assert.Null(JsonNode.Parse(compared.Output)!["offers"]![0]!["rank"]);
        Assert.True(File.Exists(Path.Combine(folder.Out, "quote-comparison.pdf")));
    }

    [Fact]
    public void An_addendum_is_told_by_what_it_changes()
    {
        using var folder = new TenderFolder().WithSites("S06");
        File.WriteAllText(folder.PathOf("after.yaml"), File.ReadAllText(folder.Tender).Replace("validity_days: 120", "validity_days: 90", StringComparison.Ordinal).Replace("profit: 7 %", "profit: 9 %", StringComparison.Ordinal));
        var (code, output, _) = TenderFolder.Run("changes", folder.Tender, folder.PathOf("after.yaml"), "--out", folder.Out, "--format", "json");
        Assert.Equal(ExitCodes.Good, code);
        var changes = JsonNode.Parse(output)!["changes"]!.AsArray();
        Assert.Contains(changes, c => c!["what"]!.GetValue<string>() == "validity, days" && c["difference"]!.GetValue<string>() == "-30");
        Assert.Contains(changes, c => c!["what"]!.GetValue<string>() == "grand total" && c["difference"]!.GetValue<string>().StartsWith('+'));
        Assert.DoesNotContain(changes, c => c!["part"]!.GetValue<string>() == "quantity");
        Assert.True(File.Exists(Path.Combine(folder.Out, "changes.pdf")));
    }

    [Fact]
    public void The_section_quotes_is_read_with_its_limits()
    {
        using var folder = new TenderFolder().WithSites("S06");
        File.AppendAllText(folder.Tender, "\nquotes:\n  incoterm: DAP\n  certificates: { module: [IEC 61215, IEC 61730], battery_lithium: [UN 38.3] }\n  warranty_years: { module: 10 }\n  missing_item: sometimes\n");
        File.WriteAllText(folder.PathOf("offer.txt"), Good);
        var (code, _, errors) = TenderFolder.Run("quote", "check", folder.Tender, folder.PathOf("offer.txt"));
        Assert.Equal(ExitCodes.CouldNotRun, code);
        Assert.Contains("TK117", errors, StringComparison.Ordinal);
        Assert.Contains("quotes.missing_item", errors, StringComparison.Ordinal);
    }
}
