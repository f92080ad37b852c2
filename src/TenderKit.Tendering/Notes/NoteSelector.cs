using System.Collections.Immutable;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Notes;

/// <summary>Chooses the notes a design calls for.</summary>
public static class NoteSelector
{
    /// <summary>Notes of which every fact holds, in the order of the library.</summary>
    /// <param name="design">The design.</param>
    /// <param name="library">The note texts.</param>
    public static ImmutableArray<Note> Select(TenderDesign design, NoteLibrary library)
    {
        var facts = NoteFacts.From(design);
        return [.. library.Rules.Where(r => r.When.All(facts.Has)).Select(r => NoteOf(r, facts, library.Deferral))];
    }

    private static Note NoteOf(NoteRule rule, NoteFacts facts, string deferral) => new(
        rule.Id, rule.Topic, $"{rule.Standard} ({deferral})", rule.Why, rule.Action, rule.Role, string.Join("; ", rule.When.Select(facts.Words)));
}
