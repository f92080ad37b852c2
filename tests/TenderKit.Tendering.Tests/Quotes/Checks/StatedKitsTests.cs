using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Quotes;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Settings;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Tendering.Tests.Quotes.Checks;

/// <summary>The corpus by the whole path: starter tender, designed, with the kits of its author stated, and on its own design.</summary>
public class StatedKitsTests(ITestOutputHelper output)
{
    private const double MostFalseShare = 0.05;

    private static readonly Lazy<(DesignInputs Inputs, TenderDesign Design, BillOfQuantities? Bill)> Starter = new(() =>
    {
        var loaded = TenderLoader.Load(Path.Combine(QuoteCorpus.Folder, "..", "..", "..", "..", "templates", "starter", "tender.yaml"));
        var design = TenderDesigner.Run(loaded.Inputs!, loaded.Diagnostics);
        return (loaded.Inputs!, design, BillBuilder.Build(design).Value);
    });

    private static StatedAsk Stated => StatedKits.Read(Path.Combine(QuoteCorpus.Folder, "..", "asked-kits.csv")).Value!;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void With_stated_kits_the_planted_faults_are_found_and_clean_lines_left_alone(bool odd)
    {
        var (planted, found, clean, falseLines, report) = Measure(odd, Stated);
        output.WriteLine(report);
        Assert.True(falseLines <= MostFalseShare * clean, report);
        Assert.True(found == planted, report);
    }

    /// <summary>
    /// Ten offers written with their faults before the checker met them. First sight: one of ten not read at all; of the rest 20 of 23 faults with
    /// stated kits, false findings on 1 of 148 clean lines; without, 17 of 23 and 20 of 148. What is still missed stands here by file and code:
    /// b01 is told as a missing item (TK805) and not as a quantity; b05 falls short of the statement but serves; b08 sums lots on a sheet of its own;
    /// b10 promises 8 years on gel, within 1.5 times the life expected.
    /// </summary>
    [Theory]
    [InlineData(true, "b01.xlsx TK830|b08.xlsx TK832|b10.csv TK821")]
    [InlineData(false, "b01.xlsx TK830|b05.xlsx TK809|b08.xlsx TK832|b10.csv TK821")]
    public void The_blind_half_by_both_paths(bool isStated, string missed)
    {
        var (_, _, clean, falseLines, report) = Measure("blind", QuoteCorpus.BlindFolder, QuoteCorpus.BlindFiles, isStated ? Stated : null);
        output.WriteLine(report);
        Assert.True(falseLines <= MostFalseShare * clean, report);
        Assert.Equal(missed, MissedIn(report));
    }

    /// <summary>
    /// Without stated kits every offer is judged by what its own light points do at the sites. The poles of q17 are a metre too low, so its light
    /// points are set at other sites and its small module is enough there.
    /// </summary>
    [Theory]
    [InlineData(true, "q17.csv TK816")]
    [InlineData(false, "")]
    public void On_our_own_design_offers_are_judged_by_what_they_do(bool odd, string missed)
    {
        var (_, _, clean, falseLines, report) = Measure(odd, null);
        output.WriteLine(report);
        Assert.True(falseLines <= MostFalseShare * clean, report);
        Assert.Equal(missed, MissedIn(report));
    }

    private static string MissedIn(string report) => string.Join('|', report.Split('\n').Where(r => r.Contains(" MISSED ", StringComparison.Ordinal)).Select(r => r.Split(' ')).Select(w => $"{w[0]} {w[3]}").Order(StringComparer.Ordinal));

    [Fact]
    public void A_file_without_a_column_or_with_a_bad_number_is_told()
    {
        var path = Path.GetTempFileName() + ".csv";
        File.WriteAllText(path, "kit,family,property,value\nK1,kit,lot A,many\n");
        var read = StatedKits.Read(path);
        File.Delete(path);
        Assert.Null(read.Value);
        Assert.Contains(read.Diagnostics, d => d.Code == "TK839" && d.Message.Contains("many", StringComparison.Ordinal));
    }

    private static (int Planted, int Found, int Clean, int FalseLines, string Report) Measure(bool odd, StatedAsk? stated) =>
        Measure(odd ? "odd" : "even", QuoteCorpus.Folder, QuoteCorpus.Files.Where(f => QuoteCorpus.IsOdd(f) == odd), stated);

    private static (int Planted, int Found, int Clean, int FalseLines, string Report) Measure(string name, string folder, IEnumerable<string> files, StatedAsk? stated)
    {
        var (inputs, design, bill) = Starter.Value;
        var asked = AskedBuilder.Of(design, bill, stated, inputs);
        asked = asked with { Settings = CorpusAsked.Value.Settings, Exchange = CorpusAsked.Value.Exchange };
        var report = new List<string>();
        var codes = new SortedDictionary<string, (int Planted, int Found)>(StringComparer.Ordinal);
        var (clean, falseLines, falseElsewhere) = (0, 0, 0);
        foreach (var file in files)
        {
            var result = OfferChecker.Check(QuoteCorpus.Read(file, folder), asked, kits => WholeRun.Findings(WholeRun.Of(design, inputs, kits, stated), kits, asked, inputs.Tender.Reliability.DarkNightsPerYear));
            var planted = QuoteCorpus.Ledger("planted.csv", folder).Where(p => p["file"] == file).ToList();
            foreach (var fault in planted)
            {
                var found = result.Findings.Any(f => f.Code == fault["code"] && IsAt(f.Where, fault));
                var count = codes.GetValueOrDefault(fault["code"]);
                codes[fault["code"]] = (count.Planted + 1, count.Found + (found ? 1 : 0));
                if (!found) report.Add($"{file} {fault["row"]} MISSED {fault["code"]} {fault["what"]}");
            }

            foreach (var f in result.Findings.Where(f => f.Severity != Severity.Note && !planted.Exists(p => IsAt(f.Where, p))))
            {
                if (f.Where.Row is 0) falseElsewhere++;
                report.Add($"{file} {f.Where.Row} FALSE {f.Code} {f.Message}");
            }

            foreach (var line in result.Lines.Where(l => !planted.Exists(p => IsAt(l.Line.Place, p))))
            {
                clean++;
                if (line.Findings.Any(f => f.Severity != Severity.Note)) falseLines++;
            }
        }

        var (all, got) = (codes.Values.Sum(c => c.Planted), codes.Values.Sum(c => c.Found));
        var head = FormattableString.Invariant($"{name} files, {(stated is null ? "own design" : "stated kits")}: planted found {got}/{all}; false on {falseLines} of {clean} clean lines; elsewhere {falseElsewhere}");
        return (all, got, clean, falseLines, string.Join('\n', [head, string.Join(' ', codes.Select(c => $"{c.Key} {c.Value.Found}/{c.Value.Planted}")), .. report]));
    }

    private static bool IsAt(Place place, Dictionary<string, string> fault) =>
        (place.Row ?? 0) == int.Parse(fault["row"], CultureInfo.InvariantCulture) && (fault["sheet"].Length == 0 || place.Sheet is null || place.Sheet == fault["sheet"]);
}
