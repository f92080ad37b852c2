using System.Collections.Immutable;
using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Forms;

[Collection("world")]
public class NotesAppendixTests
{
    private static readonly ImmutableArray<Note> _notes =
    [
        Note("battery.lithium.transport", "Batteries", "UN 38.3, UN 3480", "dangerous goods adviser"),
        Note("height.work", "Work at height", "ISO 45001", "site manager"),
        Note("battery.lithium.safety", "Batteries", "IEC 62619", "electrician"),
        Note("foundation.dig", "Excavation", "local excavation rules", "site manager"),
    ];

    [Fact]
    public void The_text_is_as_approved() => Approved.Same("notes", TextView.Of(NotesAppendix.Document(HandMadeDesign.Small(), _notes)));

    [SkippableFact]
    public void Each_note_says_standard_reason_action_and_who_signs_under_its_topic()
    {
        var pages = PdfReader.Pages(NotesAppendix.Make(HandMadeDesign.Small(), _notes));
        var text = string.Join('\n', pages);

        foreach (var note in _notes) Assert.All(new[] { note.Standard, note.Why, note.Action, note.Role, note.TriggeredBy }, t => Assert.Contains(t, text, StringComparison.Ordinal));
        Assert.Matches(@"(?s)1\s+Batteries.*UN 38\.3.*IEC 62619.*2\s+Work at height.*3\s+Excavation.*4\s+Signatures.*Site manager\s+3, 4\b", string.Join('\n', pages.Skip(1)));
        for (var i = 0; i < pages.Count; i++) Assert.Contains($"Page {i + 1} of {pages.Count}", pages[i], StringComparison.Ordinal);
        Assert.Empty(MoneyWords.In(text));
    }

    [Fact]
    public void A_remark_most_notes_share_is_said_once()
    {
        var remarked = _notes.Select((n, i) => i == 2 ? n : n with { Standard = n.Standard + "; local law (verify the edition)" }).ToImmutableArray();
        var view = TextView.Of(NotesAppendix.Document(HandMadeDesign.Small(), remarked));

        Assert.Equal(2, view.Split("verify the edition", StringSplitOptions.None).Length);
        Assert.Contains("For every standard named below: verify the edition.", view, StringComparison.Ordinal);
        Assert.Contains("1. UN 38.3, UN 3480; local law\n", view, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_bytes_come_out_under_every_culture_and_time_zone()
    {
        var first = NotesAppendix.Make(HandMadeDesign.Small(), _notes);

        Assert.All(SameEverywhere.Run(() => NotesAppendix.Make(HandMadeDesign.Small(), _notes)), bytes => Assert.Equal(first, bytes));
    }

    [Fact]
    public void No_notes_make_a_short_document_and_a_very_long_note_is_split()
    {
        Assert.NotEmpty(NotesAppendix.Make(HandMadeDesign.Small(), []));
        var action = string.Join(' ', Enumerable.Range(1, 3000).Select(n => $"step{n}"));
        var view = TextView.Of(NotesAppendix.Document(HandMadeDesign.Small(), [_notes[0] with { Action = action }]));
        Assert.Contains("step3000", view, StringComparison.Ordinal);
    }

    private static Note Note(string id, string topic, string standard, string role) =>
        new(id, topic, standard, $"why {id}", $"do {id}", role, $"because {id}");
}
