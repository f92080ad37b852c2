using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>What stands on the pages of the technical schedule, read back by another program, is what stands in bid.json.</summary>
public class AgreementTests
{
    [SkippableFact]
    public void Every_number_of_the_compliance_and_site_tables_is_that_of_the_machine_file()
    {
        using var folder = new TenderFolder().WithSites("S05", "S07", "S09");
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        var words = PdfWords.Of(Path.Combine(folder.Out, "technical", "technical-schedule.pdf"));
        var bid = TenderFolder.BidJson(folder.Out);

        Compliance(ComplianceRows.Of(words), bid);
        Sites(words, bid);
    }

    private static void Compliance(IReadOnlyList<ComplianceRow> rows, JsonObject bid)
    {
        foreach (var kit in bid["kits"]!.AsArray())
        {
            var (id, open) = (kit!["id"]!.GetValue<string>(), kit["checks"]!.AsArray().Select(c => c!.AsObject()).ToList());
            var printed = rows.Where(r => r.Kit == id).ToList();
            Assert.Equal(open.Count, printed.Count);
            foreach (var row in printed)
            {
                var check = open.FirstOrDefault(c => Plain(Text(c, "item")) == Plain(row.Item) && Plain(Text(c, "property")) == Plain(row.Property));
                Assert.True(check is not null, $"{row} is no check of {id}");
                open.Remove(check!);
                Same(row, check!);
            }
        }
    }

    private static void Same(ComplianceRow row, JsonObject check)
    {
        var (required, offered, unit) = (check["required"]!.GetValue<double>(), check["offered"]!.GetValue<double>(), Text(check, "unit"));
        Assert.Equal(check["complies"]!.GetValue<bool>() ? "yes" : "NO", row.Met);
        if (check["requiredText"] is not null || row.Required is "yes" or "not needed")
        {
            var words = check["requiredText"] is null ? (required > 0 ? "yes" : "not needed", offered > 0 ? "yes" : "no") : (Text(check, "requiredText"), Text(check, "offeredText"));
            Assert.Equal((words.Item1, words.Item2, "–"), (row.Required, row.Offered, row.Margin));
            return;
        }

        Assert.StartsWith(Text(check, "comparison") == "at least" ? "≥" : "≤", row.Required, StringComparison.Ordinal);
        Near(required, row.Required, row);
        Near(offered, row.Offered, row);
        var spare = Text(check, "comparison") == "at least" ? offered - required : required - offered;
        if (row.Margin == "–") Assert.True(required == 0 || unit is "IP" or "IK" or "", $"{row} has no margin");
        else Near(unit is "degC" or "degrees" ? spare : 100 * spare / Math.Abs(required), row.Margin, row, 2e-3);
    }

    /// <summary>The number printed is the number held, to the decimals printed; bid.json holds six digits.</summary>
    private static void Near(double held, string printed, ComplianceRow row, double slack = 1e-5)
    {
        var number = ComplianceRows.Number(printed);
        Assert.True(number is not null, $"{row}: '{printed}' holds no number");
        Assert.True(Math.Abs(number!.Value - held) <= (0.5 * Math.Pow(10, -ComplianceRows.Decimals(printed))) + (slack * Math.Max(1, Math.Abs(held))), $"{row}: {printed} on the page, {held} in the file");
    }

    private static void Sites(IReadOnlyList<PdfWord> words, JsonObject bid)
    {
        var lines = words.GroupBy(w => (w.Page, Top: Math.Round(w.Top))).Select(g => string.Join(' ', g.OrderBy(w => w.Left).Select(w => w.Text))).ToList();
        foreach (var site in bid["sites"]!.AsArray())
        {
            var (light, energy) = (site!["light"]!, site["energy"]!);
            var start = $"{Text(site, "siteId")} {Text(site, "name")} ";
            string F(JsonNode node, string key, int decimals, double times = 1) => (node[key]!.GetValue<double>() * times).ToString("N" + decimals, CultureInfo.InvariantCulture);
            var lit = $"{site["poles"]!.GetValue<int>()}* {F(light, "spacingM", 1)} {F(light, "mountingHeightM", 1)} {F(light, "averageLx", 2)} {F(light, "minimumLx", 2)} {F(light, "overallUniformity", 2)} {F(light, "levelFraction", 0, 100)} {Text(site, "kit")}";
            var fed = $"{Text(site, "kit")} {F(energy, "nightlyWh", 0)} {F(energy, "autonomyNights", 1)} {F(energy, "darkNightsPerYear", 2)} {F(energy, "darkNightsPerYearUpper90", 2)} ";
            Assert.Contains(lines, l => l.StartsWith(start, StringComparison.Ordinal) && l.EndsWith(lit, StringComparison.Ordinal));
            Assert.Contains(lines, l => l.StartsWith(start + fed, StringComparison.Ordinal));
        }
    }

    private static string Text(JsonNode node, string key) => node[key]!.GetValue<string>();

    private static string Plain(string text) => Regex.Replace(text, @"\s+", "");
}
