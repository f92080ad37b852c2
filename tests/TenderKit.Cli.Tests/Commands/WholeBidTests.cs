using System.Globalization;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>The main job, end to end, on the starter tender.</summary>
public class WholeBidTests
{
    private static readonly string[] Documents =
    [
        "documents.sha256", "financial/price-workbook.xlsx", "internal/bid.json", "internal/calculation-workbook.xlsx", "internal/data-request.pdf",
        "technical/community-page.pdf", "technical/evidence/INT-10B-ten-watt-unit.txt", "technical/evidence/POL-5-steel-columns.txt", "technical/notes-appendix.pdf", "technical/settings-and-tests.pdf", "technical/survey-answers.xlsx", "technical/survey-forms.pdf", "technical/technical-schedule.pdf",
        "technical/unpriced-bill.xlsx",
    ];

    [Fact]
    public void The_starter_tender_becomes_a_bid_and_workbook_and_csv_agree()
    {
        using var folder = new TenderFolder();
        var fromWorkbook = folder.Bid(folder.PathOf("a"));
        Assert.True(fromWorkbook.Code == ExitCodes.Good, fromWorkbook.Errors);
        folder.UseCsv();
        var fromCsv = folder.Bid(folder.PathOf("b"));
        Assert.True(fromCsv.Code == ExitCodes.Good, fromCsv.Errors);

        var files = Directory.EnumerateFiles(folder.PathOf("a"), "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(folder.PathOf("a"), f).Replace('\\', '/')).Order(StringComparer.Ordinal);
        Assert.Equal(Documents, files);

        var (a, b) = (TenderFolder.BidJson(folder.PathOf("a")), TenderFolder.BidJson(folder.PathOf("b")));
        Assert.Equal(14, a["sites"]!.AsArray().Count);
        a.Remove("inputs");
        b.Remove("inputs");
        Assert.Equal(b.ToJsonString(), a.ToJsonString());
    }

    [Fact]
    public void Lots_add_up_to_the_grand_total_and_every_check_complies()
    {
        using var folder = new TenderFolder().WithSites("S01", "S05", "S09");
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        var bid = TenderFolder.BidJson(folder.Out);
        var lots = bid["lots"]!.AsArray().Select(l => l!["total"]!.GetValue<decimal>()).ToList();
        Assert.Equal(2, lots.Count);
        Assert.Equal(bid["grandTotal"]!.GetValue<decimal>(), lots.Sum());
        var lines = bid["billParts"]!.AsArray().SelectMany(p => p!["lines"]!.AsArray());
        Assert.All(lines, l => Assert.Equal(
            decimal.Round(l!["quantity"]!.GetValue<decimal>() * l["rate"]!.GetValue<decimal>(), 2, MidpointRounding.AwayFromZero),
            l["amount"]!.GetValue<decimal>()));
        Assert.All(bid["sites"]!.AsArray().SelectMany(s => s!["checks"]!.AsArray()), c => Assert.True(c!["complies"]!.GetValue<bool>(), c.ToJsonString()));
    }

    [Fact]
    public void Energy_is_conserved_at_every_site()
    {
        using var folder = new TenderFolder().WithSites("S02", "S06");
        folder.Bid();
        foreach (var site in TenderFolder.BidJson(folder.Out)["sites"]!.AsArray())
        {
            var ledger = site!["energy"]!["ledgerWh"]!.AsObject();
            double Wh(string key) => ledger[key]!.GetValue<double>();
            Assert.Equal(Wh("in"), Wh("lamp") + Wh("ownUse") + Wh("losses") + Wh("dumped") + Wh("storeChange"), Wh("in") * 1e-5);
        }
    }

    [Fact]
    public void Culture_and_time_zone_change_no_byte()
    {
        using var folder = new TenderFolder().WithSites("S09", "S01", "S11");
        var first = BytesUnder(folder, "plain", CultureInfo.InvariantCulture);
        foreach (var name in new[] { "fr-FR", "ar-SA", "tr-TR" })
        {
            var other = BytesUnder(folder, name, new CultureInfo(name));
            Assert.All(Documents, d => Assert.True(first[d].AsSpan().SequenceEqual(other[d]), $"{d} differs under {name}"));
        }
    }

    [Fact]
    public void A_tighter_reliability_never_costs_less()
    {
        using var folder = new TenderFolder().WithSites("S10");
        folder.Bid(folder.PathOf("loose"));
        folder.Change("tender.yaml", "autonomy_nights: 3", "autonomy_nights: 5");
        folder.Bid(folder.PathOf("tight"));
        decimal Total(string name) => TenderFolder.BidJson(folder.PathOf(name))["grandTotal"]!.GetValue<decimal>();
        Assert.True(Total("tight") > Total("loose"));
    }

    private static Dictionary<string, byte[]> BytesUnder(TenderFolder folder, string name, CultureInfo culture)
    {
        var (before, beforeUi) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = culture;
            CultureInfo.CurrentUICulture = culture;
            var run = folder.Bid(folder.PathOf(name));
            Assert.True(run.Code == ExitCodes.Good, run.Errors);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, beforeUi);
        }

        return Documents.ToDictionary(d => d, d => File.ReadAllBytes(Path.Combine(folder.PathOf(name), d)));
    }
}
