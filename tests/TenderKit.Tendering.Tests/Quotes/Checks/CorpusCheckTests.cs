using System.Globalization;
using System.Text;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Checks;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Tendering.Tests.Quotes.Checks;

/// <summary>Planted faults found and false findings over clean lines. Developed on the odd files; the even ones measure.</summary>
public class CorpusCheckTests(ITestOutputHelper output)
{
    private const double MostFalseShare = 0.05;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Planted_faults_are_found_and_clean_lines_left_alone(bool odd)
    {
        var report = new StringBuilder();
        var table = new SortedDictionary<string, (int Planted, int Found)>(StringComparer.Ordinal);
        var (clean, falseLines, falseElsewhere) = (0, 0, 0);
        foreach (var file in QuoteCorpus.Files.Where(f => QuoteCorpus.IsOdd(f) == odd))
        {
            var result = OfferChecker.Check(QuoteCorpus.Read(file), CorpusAsked.Value);
            var planted = QuoteCorpus.Ledger("planted.csv").Where(p => p["file"] == file).ToList();
            foreach (var fault in planted)
            {
                var found = result.Findings.Any(f => f.Code == fault["code"] && IsAt(f.Where, fault));
                var count = table.GetValueOrDefault(fault["code"]);
                table[fault["code"]] = (count.Planted + 1, count.Found + (found ? 1 : 0));
                if (!found) report.AppendLine(CultureInfo.InvariantCulture, $"{file} {fault["row"]} MISSED {fault["code"]} {fault["what"]}: {fault["value"]}");
            }

            foreach (var finding in result.Findings.Where(f => f.Severity != Severity.Note && !planted.Exists(p => IsAt(f.Where, p) && (p["code"] == f.Code || p["also"].Split(';').Contains(f.Code)))))
            {
                var onItem = result.Lines.Any(l => l.Line.Place.Row == finding.Where.Row && l.Line.Place.Sheet == finding.Where.Sheet);
                if (!onItem) falseElsewhere++;
                report.AppendLine(CultureInfo.InvariantCulture, $"{file} {finding.Where.Sheet} {finding.Where.Row} FALSE {finding.Code} {finding.Message}");
            }

            foreach (var line in result.Lines.Where(l => !planted.Exists(p => IsAt(l.Line.Place, p))))
            {
                clean++;
                if (line.Findings.Any(f => f.Severity != Severity.Note)) falseLines++;
            }
        }

        foreach (var (code, (planted, found)) in table) output.WriteLine($"{code}: {found} of {planted}");
        var (all, got) = (table.Values.Sum(v => v.Planted), table.Values.Sum(v => v.Found));
        output.WriteLine(FormattableString.Invariant($"{(odd ? "odd" : "even")} files: planted found {got}/{all}; false findings on {falseLines} of {clean} clean lines = {(double)falseLines / clean:0.000}; false findings elsewhere {falseElsewhere}"));
        if (odd) output.WriteLine(report.ToString());
        Assert.True(falseLines <= MostFalseShare * clean, report.ToString());
        Assert.True(got == all, report.ToString());
    }

    /// <summary>The corpus plants each of these, and each is found at least once.</summary>
    [Fact]
    public void Every_kind_of_fault_is_found()
    {
        string[] codes =
        [
            "TK802", "TK803", "TK804", "TK805", "TK806", "TK807", "TK808", "TK809", "TK810", "TK811", "TK812", "TK813", "TK814", "TK815",
            "TK816", "TK817", "TK818", "TK821", "TK822", "TK823", "TK824", "TK825", "TK826", "TK827", "TK829", "TK830", "TK831", "TK832",
        ];
        var found = QuoteCorpus.Files.SelectMany(f => OfferChecker.Check(QuoteCorpus.Read(f), CorpusAsked.Value).Findings).Select(f => f.Code).ToHashSet();
        Assert.Equal(codes, QuoteCorpus.Ledger("planted.csv").Select(p => p["code"]).Distinct().Order(StringComparer.Ordinal));
        Assert.Empty(codes.Except(found));
    }

    private static bool IsAt(Place place, Dictionary<string, string> fault) =>
        (place.Row ?? 0) == int.Parse(fault["row"], CultureInfo.InvariantCulture) && (fault["sheet"].Length == 0 || place.Sheet is null || place.Sheet == fault["sheet"]);
}
