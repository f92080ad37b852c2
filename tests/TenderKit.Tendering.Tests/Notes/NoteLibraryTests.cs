using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Notes;
using Xunit;

namespace TenderKit.Tendering.Tests.Notes;

public class NoteLibraryTests
{
    private const string Whole = """
        deferral: local codes come first
        notes:
          - id: a.b
            when: [LithiumBattery, AnyPole]
            topic: Batteries
            standard: IEC 62619
            why: Because.
            action: Do it.
            role: Somebody

        """;

    // Standards behind the notes (number and occasion from memory of the lists of the trade; the reader checks the edition in force).
    [Theory]
    [InlineData("IEC 60364-7-712")]
    [InlineData("IEC 60364-7-714")]
    [InlineData("IEC 60364-4-41")]
    [InlineData("IEC 62305")]
    [InlineData("IEC 62561")]
    [InlineData("IEC 62548-1")]
    [InlineData("IEC 61215")]
    [InlineData("IEC 61730")]
    [InlineData("IEC 62852")]
    [InlineData("EN 50618")]
    [InlineData("IEC 62930")]
    [InlineData("NFPA 70 articles 690, 410, 480, 706 and 250")]
    [InlineData("IEC 60598-1")]
    [InlineData("IEC 60598-2-3")]
    [InlineData("IEC 60529")]
    [InlineData("IEC 62262")]
    [InlineData("IEC 62722-2-1")]
    [InlineData("IEC 62124")]
    [InlineData("IEC 62509")]
    [InlineData("IEC TS 62257")]
    [InlineData("IEC 62619")]
    [InlineData("IEC 62620")]
    [InlineData("IEC 63056")]
    [InlineData("38.3")]
    [InlineData("UN 3480")]
    [InlineData("UN 3481")]
    [InlineData("IMDG")]
    [InlineData("ADR")]
    [InlineData("IATA")]
    [InlineData("IEC 62485-2")]
    [InlineData("IEC 60896-21")]
    [InlineData("IEC 60896-22")]
    [InlineData("IEC 61427-1")]
    [InlineData("2023/1542")]
    [InlineData("2012/19/EU")]
    [InlineData("Basel")]
    [InlineData("ILO C167")]
    [InlineData("ISO 45001")]
    [InlineData("ISO 12480-1")]
    [InlineData("EN 280")]
    [InlineData("rules on excavation and buried services")]
    [InlineData("road works and traffic control")]
    [InlineData("EN 12767")]
    [InlineData("EN 40 parts 1 to 7")]
    [InlineData("ISO 1461")]
    [InlineData("ISO 14713")]
    [InlineData("EN 1090")]
    [InlineData("CIE 150")]
    [InlineData("CIE 126")]
    [InlineData("IES TM-15")]
    [InlineData("CISPR 15")]
    [InlineData("IEC 61547")]
    [InlineData("IEC 61000-4-5")]
    [InlineData("IEC 62471")]
    [InlineData("IEC TR 62778")]
    public void Every_standard_of_the_list_has_a_note(string standard) =>
        Assert.Contains(NoteLibrary.Load().Rules, r => r.Standard.Contains(standard, StringComparison.Ordinal));

    [Fact]
    public void Every_note_is_complete_and_short_enough_to_be_read()
    {
        var rules = NoteLibrary.Load().Rules;
        Assert.All(rules, r =>
        {
            Assert.NotEmpty(r.When);
            Assert.Matches("^[a-z]+(\\.[a-z_]+)+$", r.Id);
            Assert.All(new[] { r.Topic, r.Standard, r.Why, r.Action, r.Role }, text => Assert.InRange(text.Length, 5, 480));
            Assert.EndsWith(".", r.Why, StringComparison.Ordinal);
            Assert.EndsWith(".", r.Action, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Notes_of_one_topic_stand_together()
    {
        var topics = NoteLibrary.Load().Rules.Select(r => r.Topic).ToList();
        var runs = topics.Where((t, i) => i == 0 || topics[i - 1] != t).ToList();
        Assert.Equal(runs.Distinct().Count(), runs.Count);
    }

    [Fact]
    public void Every_fact_calls_up_some_note() =>
        Assert.Empty(Enum.GetValues<NoteFact>().Except(NoteLibrary.Load().Rules.SelectMany(r => r.When)));

    [Fact]
    public void A_whole_text_is_read()
    {
        var outcome = NoteLibrary.Read(Whole, "notes.yaml");
        Assert.Empty(outcome.Diagnostics);
        var rule = Assert.Single(outcome.Value!.Rules);
        Assert.Equal([NoteFact.LithiumBattery, NoteFact.AnyPole], rule.When.ToArray());
        Assert.Equal("local codes come first", outcome.Value.Deferral);
    }

    [Fact]
    public void An_unknown_fact_is_an_error_with_its_line() =>
        AssertError(Whole.Replace("LithiumBattery", "LithiumBatery", StringComparison.Ordinal), "TK740", 4, "LithiumBattery");

    [Fact]
    public void A_number_is_no_fact() => AssertError(Whole.Replace("LithiumBattery", "1", StringComparison.Ordinal), "TK740", 4, "unknown fact '1'");

    [Fact]
    public void An_unknown_key_is_an_error_with_its_line() =>
        AssertError(Whole.Replace("    role:", "    rolle:", StringComparison.Ordinal), "TK111", 9, "role");

    [Fact]
    public void A_missing_text_is_an_error() =>
        AssertError(Whole.Replace("    why: Because.\n", "", StringComparison.Ordinal), "TK113", 3, "why");

    [Fact]
    public void A_note_without_facts_is_an_error() =>
        AssertError(Whole.Replace("[LithiumBattery, AnyPole]", "[]", StringComparison.Ordinal), "TK742", 3, "AnyPole");

    [Fact]
    public void A_library_without_notes_is_an_error() => AssertError("deferral: local codes come first\nnotes: []\n", "TK742", 1, "no note");

    [Fact]
    public void A_repeated_id_is_an_error() =>
        AssertError(Whole + Whole[Whole.IndexOf("  - id", StringComparison.Ordinal)..], "TK741", 10, "a.b");

    [Fact]
    public void Text_that_is_no_yaml_is_an_error() => AssertError("notes: [", "TK110", null, "");

    private static void AssertError(string yaml, string code, int? line, string words)
    {
        var outcome = NoteLibrary.Read(yaml, "notes.yaml");
        Assert.Null(outcome.Value);
        var error = outcome.Diagnostics.First(d => d.Code == code);
        Assert.Equal(Severity.Error, error.Severity);
        Assert.Equal("notes.yaml", error.Place.File);
        if (line is not null) Assert.Equal(line, error.Place.Row);
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }
}
