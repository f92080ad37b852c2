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
        var first = JsonNode.Parse(compared.Output)!;
        Assert.Null(first["offers"]![0]!["rank"]);
        Assert.Equal(2940m, first["offers"]![0]!["byLot"]![0]!["evaluated"]!.GetValue<decimal>() - first["offers"]![0]!["byLot"]![0]!["added"]!.GetValue<decimal>());
        Assert.Equal("A", first["lots"]![0]!["lot"]!.GetValue<string>());
        Assert.Null(first["combination"]);
        Assert.All(new[] { "quote-comparison.pdf", "quote-comparison.xlsx" }, f => Assert.True(new FileInfo(Path.Combine(folder.Out, f)).Length > 500, f));
    }

    /// <summary>Kits stated in the tender; a stated battery that is too small is the tender's fault and said as such. The keys are the contract.</summary>
    [Fact]
    public void Stated_kits_are_the_measure_and_weak_ones_are_told()
    {
        using var folder = new TenderFolder().WithSites("S06");
        File.WriteAllText(folder.PathOf("asked.csv"), """
            kit,family,property,comparison,value,unit
            K3,kit,lot A,equal,14,poles
            K3,kit,sites,equal,S06,
            K3,luminaire,flux_lm,at least,1120,lm
            K3,luminaire,input_power_w,at most,8,W
            K3,luminaire,ip_code,at least,65,IP
            K3,module,rated_wp,at least,10,Wp
            K3,battery,nominal_voltage_v,equal,12,V
            K3,battery,rated_ah,at least,5,Ah
            K3,controller,rated_charge_a,at least,1,A
            K3,pole,height_m,at least,5,m
            """);
        File.AppendAllText(folder.Tender, "\nquotes:\n  asked: asked.csv\n");
        File.WriteAllText(folder.PathOf("offer.txt"), Good);
        var (_, output, errors) = TenderFolder.Run("quote", "check", folder.Tender, folder.PathOf("offer.txt"), "--format", "json");
        Assert.Contains("TK837", errors, StringComparison.Ordinal);
        var root = JsonNode.Parse(output)!.AsObject();
        Assert.Superset(new HashSet<string> { "lines", "findings", "correctedTotal", "overall" }, root.Select(p => p.Key).ToHashSet());
        Assert.All(root["lines"]!.AsArray(), l => Assert.Superset(new HashSet<string> { "row", "family", "read", "verdict", "findings" }, l!.AsObject().Select(p => p.Key).ToHashSet()));
        Assert.All(root["findings"]!.AsArray(), f => Assert.Superset(new HashSet<string> { "code", "severity", "where", "message" }, f!.AsObject().Select(p => p.Key).ToHashSet()));
        Assert.Contains(root["findings"]!.AsArray(), f => f!["code"]!.GetValue<string>() == "TK809" && f["message"]!.GetValue<string>().Contains("IP", StringComparison.Ordinal));
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
        Assert.All(new[] { "changes.pdf", "changes.xlsx" }, f => Assert.True(File.Exists(Path.Combine(folder.Out, f)), f));
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
