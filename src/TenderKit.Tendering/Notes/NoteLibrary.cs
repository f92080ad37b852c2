using System.Collections.Immutable;
using TenderKit.Intake.Words;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Notes;

/// <summary>A note and the facts that call it up: all of them must hold.</summary>
public sealed record NoteRule(
    string Id, ImmutableArray<NoteFact> When, string Topic, string Standard, string Why, string Action, string Role);

/// <summary>The note texts, in the order they are printed.</summary>
/// <param name="Deferral">What is said beside every standard: local codes and licensed practice come first.</param>
/// <param name="Rules">Notes with their facts.</param>
public sealed record NoteLibrary(string Deferral, ImmutableArray<NoteRule> Rules)
{
    /// <summary>The library that comes with the program.</summary>
    /// <exception cref="InvalidOperationException">The program was built with a broken library.</exception>
    public static NoteLibrary Load() => LoadIn(TenderLanguages.English) ?? throw new InvalidOperationException("the program lacks its note texts");

    /// <summary>The library in a language; in English, with a warning, where the program has none in that language.</summary>
    /// <param name="language">ISO 639-1 code.</param>
    /// <exception cref="InvalidOperationException">The program was built with a broken library.</exception>
    public static Outcome<NoteLibrary> Load(string language) =>
        LoadIn(language) is { } library ? Outcome.Of(library, [])
            : Outcome.Of(Load(), [Diagnostic.Warning("TK743", $"there are no note texts in the language '{language}'; the notes appendix stays in English")]);

    private static NoteLibrary? LoadIn(string language)
    {
        var file = $"notes.{language}.yaml";
        using var stream = typeof(NoteLibrary).Assembly.GetManifestResourceStream("TenderKit.Tendering.Notes." + file);
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        var outcome = Read(reader.ReadToEnd(), file);
        return outcome.HasErrors || outcome.Value is null
            ? throw new InvalidOperationException("the program's note texts are broken: " + string.Join("; ", outcome.Diagnostics))
            : outcome.Value;
    }

    /// <summary>Reads note texts; every unknown key or fact, missing text and repeated id is an error with its line.</summary>
    /// <param name="yaml">Text of the file.</param>
    /// <param name="fileName">File name for messages.</param>
    public static Outcome<NoteLibrary> Read(string yaml, string fileName)
    {
        var problems = new List<Diagnostic>();
        if (YamlFile.Read(yaml, fileName, problems) is not { } top) return Outcome.None<NoteLibrary>(problems);
        var deferral = top.RequiredText("deferral");
        var rows = top.Sections("notes");
        ImmutableArray<NoteRule> rules = [.. rows.Select(RuleOf)];
        top.ReportUnknownKeys();
        if (rules.IsEmpty) top.AddError("TK742", "'notes' holds no note; add at least one", top.Line);
        ReportRepeated(rows, rules);
        return problems.Exists(p => p.Severity == Severity.Error)
            ? Outcome.None<NoteLibrary>(problems)
            : Outcome.Of(new NoteLibrary(deferral, rules), problems);
    }

    private static NoteRule RuleOf(YamlSection row)
    {
        var rule = new NoteRule(
            row.RequiredText("id"), FactsOf(row), row.RequiredText("topic"), row.RequiredText("standard"), row.RequiredText("why"),
            row.RequiredText("action"), row.RequiredText("role"));
        row.ReportUnknownKeys();
        return rule;
    }

    private static ImmutableArray<NoteFact> FactsOf(YamlSection row)
    {
        var facts = ImmutableArray.CreateBuilder<NoteFact>();
        foreach (var scalar in row.Scalars("when"))
        {
            if (Enum.GetNames<NoteFact>().Contains(scalar.Text)) facts.Add(Enum.Parse<NoteFact>(scalar.Text));
            else row.AddError("TK740", UnknownFact(scalar.Text), scalar.Line);
        }

        if (row.Scalars("when").Count == 0) row.AddError("TK742", "'when' names no fact; name at least one, AnyPole for a note that always applies", row.Line);
        return facts.ToImmutable();
    }

    private static string UnknownFact(string written)
    {
        var nearest = Nearest.Of(written, Enum.GetNames<NoteFact>());
        return $"unknown fact '{written}'" + (nearest is null ? $"; known are {string.Join(", ", Enum.GetNames<NoteFact>())}" : $"; did you mean '{nearest}'?");
    }

    private static void ReportRepeated(IReadOnlyList<YamlSection> rows, ImmutableArray<NoteRule> rules)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < rules.Length; i++)
        {
            if (rules[i].Id.Length > 0 && !seen.Add(rules[i].Id))
                rows[i].AddError("TK741", $"the note '{rules[i].Id}' stands already above; give it another id", rows[i].Line);
        }
    }
}
