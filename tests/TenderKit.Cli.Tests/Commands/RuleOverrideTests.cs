using System.IO.Compression;
using System.Text;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>A derating factor the tender changed stands in the technical schedule, the calculation workbook and bid.json, and so does the warning for one out of its range.</summary>
public sealed class RuleOverrideTests
{
    [Fact]
    public void A_changed_rule_is_marked_in_schedule_workbook_and_json()
    {
        var (schedule, workbook, json) = Documents("0.94");
        Assert.Matches(@"energy\.soiling.*0\.94.*changed", schedule);
        Assert.DoesNotContain("TK120", json, StringComparison.Ordinal);
        Assert.Contains("set by the tender", workbook, StringComparison.Ordinal);
        Assert.Matches("\"id\": \"energy.soiling\",\\s*\"value\": 0.94[^}]*\"changedByTender\": true", json);
    }

    [Fact]
    public void A_rule_outside_its_range_warns_in_each_of_them()
    {
        var (schedule, workbook, json) = Documents("0.6");
        Assert.Contains("OUT OF RANGE", schedule, StringComparison.Ordinal);
        Assert.Contains("outside its range", workbook, StringComparison.Ordinal);
        Assert.All(new[] { schedule, workbook, json }, text => Assert.Contains("design rule energy.soiling is 0.6", text, StringComparison.Ordinal));
        Assert.All(new[] { workbook, json }, text => Assert.Contains("TK120", text, StringComparison.Ordinal));
    }

    private static (string Schedule, string Workbook, string Json) Documents(string soiling)
    {
        using var folder = new TenderFolder().WithSites("S14").Change("tender.yaml", "kits:", "rules_changed: { energy.soiling: " + soiling + " }\n\nkits:");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        using var book = ZipFile.OpenRead(Path.Combine(folder.Out, "internal", "calculation-workbook.xlsx"));
        var cells = string.Concat(book.Entries.Where(e => e.FullName.EndsWith(".xml", StringComparison.Ordinal)).Select(Text));
        var loaded = TenderLoader.Load(folder.Tender);
        return (TextView.Of(TechnicalSchedule.Document(TenderDesigner.Run(loaded.Inputs!, loaded.Diagnostics))), cells, File.ReadAllText(Path.Combine(folder.Out, "internal", "bid.json")));
    }

    private static string Text(ZipArchiveEntry entry)
    {
        using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
