using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Quotes;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Reading;
using TenderKit.Tendering.Settings;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Tendering.Tests.Quotes.Checks;

/// <summary>The corpus by the whole path: starter tender, designed, with the kits of its author stated, and on its own design.</summary>
public class StatedKitsTests(ITestOutputHelper output)
{
    private const double MostFalseShare = 0.05;

    /// <summary>Prices and lives are held against those of our own parts; where our design has no part of the kind (it took integrated units), these faults are missed.</summary>
    private static readonly string[] NeedOwnParts = ["TK821", "TK822", "TK829"];

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
        Assert.DoesNotContain(report.Split('\n'), r => r.Contains(" MISSED ", StringComparison.Ordinal) && !NeedOwnParts.Any(c => r.Contains(c, StringComparison.Ordinal)));
        Assert.True(found >= planted - 2, report);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_blind_half_by_both_paths(bool isStated)
    {
        var (planted, found, clean, falseLines, report) = Measure("blind", QuoteCorpus.BlindFolder, QuoteCorpus.BlindFiles, isStated ? Stated : null);
        output.WriteLine(report);
        Assert.True(falseLines <= MostFalseShare * clean, report);
        Assert.True(found == planted, report);
    }

    /// <summary>The five kits of the corpus are other parts than our own; as many poles, other makes: no fault by that alone.</summary>
    [Fact]
    public void On_our_own_design_other_quantities_are_no_fault()
    {
        var (_, _, clean, falseLines, report) = Measure(true, null);
        output.WriteLine(report);
        Assert.DoesNotContain("FALSE TK830", report, StringComparison.Ordinal);
        Assert.True(clean > 0 && falseLines < clean, report);
    }

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
            if (OfferReader.Read(Path.Combine(folder, file)).Value is null) { report.Add(file + " MISSED not read at all"); falseLines += 20; clean += 20; var n = QuoteCorpus.Ledger("planted.csv", folder).Count(p => p["file"] == file); codes["unread"] = (n, 0); continue; }
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
