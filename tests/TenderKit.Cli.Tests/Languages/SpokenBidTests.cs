using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using DocumentFormat.OpenXml.Packaging;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Cli.Tests.Languages;

/// <summary>The demonstration bid in each language: nothing left in English but what the user wrote, and the same numbers.</summary>
public partial class SpokenBidTests
{
    private static readonly Lazy<TenderDesign> _demo = new(Design);
    private static readonly ConcurrentDictionary<string, (TenderDesign Design, IReadOnlyList<BidDocument> Documents)> _bids = new(StringComparer.Ordinal);

    /// <summary>
    /// Known to be left, never to grow: names of rules and files, descriptions out of the catalogue, names of sites, which are inputs; and
    /// about eighty pieces of long sentences of the trace and the captions which are joined of parts, where the rest of the sentence is said.
    /// </summary>
    private const int StillEnglish = 157;

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void The_doors_know_every_text(string language)
    {
        var bid = Bid(language);
        var left = Echoes.WordingOf(bid.Design).Missing.Where(m => EnglishWord().Count(m) > 1 && !Citation().IsMatch(m)).ToList();
        Assert.True(left.Count <= StillEnglish, $"{left.Count} texts of the bid stay English in {language}:\n" + string.Join('\n', left));
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void No_cell_of_a_workbook_reads_like_English(string language)
    {
        var bid = Bid(language);
        var echoed = Echoes.Of(bid.Design).ToHashSet(StringComparer.Ordinal);
        var left = bid.Documents.Where(d => d.RelativePath.EndsWith(".xlsx", StringComparison.Ordinal) && !d.RelativePath.Contains("survey-answers", StringComparison.Ordinal))
            .SelectMany(d => Texts(d.Bytes).Select(t => (d.RelativePath, Text: t)))
            .Where(t => !echoed.Contains(t.Text) && !echoed.Any(e => e.Length > 12 && t.Text.Contains(e, StringComparison.Ordinal)) && EnglishOnly().Count(t.Text) > 1
                && !t.Text.Contains("CC BY-SA", StringComparison.Ordinal)) // stations and their licence, a source
            .Distinct()
            .Select(t => t.RelativePath + ": " + t.Text)
            .ToList();
        Assert.True(left.Count == 0, $"{left.Count} cells read like English in {language}:\n" + string.Join('\n', left));
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void Every_number_of_the_compliance_tables_stands_in_the_schedule_with_a_decimal_comma(string language)
    {
        var design = Bid(language).Design;
        var text = Squeezed(TextView.Of(TechnicalSchedule.Document(design)));
        var numbers = design.Kits.SelectMany(k => k.Checks).Where(CheckText.IsMeasured).SelectMany(c => new[] { CheckText.Required(c), CheckText.Offered(c) })
            .SelectMany(t => Number().Matches(t).Select(m => m.Value)).Distinct().ToList();
        Assert.NotEmpty(numbers);
        Assert.All(numbers, n => Assert.Contains(n.Replace(',', '\u00A0').Replace('.', ','), text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_machine_file_stays_English_and_names_the_language()
    {
        var json = System.Text.Json.Nodes.JsonNode.Parse(Bid("fr").Documents.Single(d => d.RelativePath.EndsWith("bid.json", StringComparison.Ordinal)).Bytes)!.AsObject();
        var english = System.Text.Json.Nodes.JsonNode.Parse(Bid("en").Documents.Single(d => d.RelativePath.EndsWith("bid.json", StringComparison.Ordinal)).Bytes)!.AsObject();
        Assert.Equal("fr", json["tender"]!["language"]!.GetValue<string>());
        json["tender"]!["language"] = "en";
        Assert.Equal(english.ToJsonString(), json.ToJsonString());
    }

    [Fact]
    public void An_unknown_language_stops_the_run_and_names_the_four()
    {
        using var tender = new TenderFolder().WithSites("S03").Change("tender.yaml", "  currency: USD", "  language: de\n  currency: USD");
        var (code, _, errors) = tender.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, code);
        Assert.Contains("en (English), fr (French), es (Spanish) or pt (Portuguese)", errors.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void The_notes_of_a_language_without_a_file_stay_English_with_a_warning()
    {
        var outcome = NoteLibrary.Load("xx");
        Assert.Equal("TK743", Assert.Single(outcome.Diagnostics).Code);
        Assert.Equal(NoteLibrary.Load().Rules.Select(r => r.Id), outcome.Value!.Rules.Select(r => r.Id));
    }

    private static string Squeezed(string text) => text.Replace(" | ", " ", StringComparison.Ordinal);

    private static (TenderDesign Design, IReadOnlyList<BidDocument> Documents) Bid(string language) => _bids.GetOrAdd(language, l =>
    {
        var demo = _demo.Value;
        var design = demo with { Tender = demo.Tender with { Head = demo.Tender.Head with { Language = l } } };
        return (design, BidDocuments.Make(design, BillBuilder.Build(design).Value, NoteSelector.Select(design, NoteLibrary.Load(l).Value!)));
    });

    private static TenderDesign Design()
    {
        using var folder = new TenderFolder();
        var loaded = TenderLoader.Load(folder.Tender);
        return TenderDesigner.Run(loaded.Inputs! with { Explain = true }, loaded.Diagnostics);
    }

    private static IEnumerable<string> Texts(byte[] workbook)
    {
        using var document = SpreadsheetDocument.Open(new MemoryStream(workbook), isEditable: false);
        return [.. document.WorkbookPart!.WorksheetParts.SelectMany(p => p.Worksheet!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Text>()).Select(t => t.Text).Distinct()];
    }

    [GeneratedRegex(@"\b[a-z]{3,}\b")]
    private static partial Regex EnglishWord();

    /// <summary>Small words that none of the three other languages has.</summary>
    [GeneratedRegex(@"\b(the|of|and|with|which|is|are|at|from|than|that|its|this|be|to|by|not|each|for)\b")]
    private static partial Regex EnglishOnly();

    [GeneratedRegex(@"\b(EN|IEC|ISO|CIE|IES|IS|RP|NFPA|ASCE|UL|UN)[ -]?\d")]
    private static partial Regex Citation();

    [GeneratedRegex(@"\d[\d,]*\.\d+|\d{1,3}(,\d{3})+")]
    private static partial Regex Number();
}
