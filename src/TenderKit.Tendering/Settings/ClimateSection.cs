using System.Collections.Immutable;
using TenderKit.Intake.Yaml;

namespace TenderKit.Tendering.Settings;

/// <summary>
/// Reads the section <c>climate</c> of a tender file: <c>default</c> names a file, a named climate or "estimate"; <c>monthly</c> holds twelve typed values for
/// all sites; <c>named</c> holds several climates, each a <c>file</c> or typed values.
/// </summary>
public static class ClimateSection
{
    public static TenderClimates Read(YamlSection? section)
    {
        if (section is null) return TenderClimates.None;
        var standard = section.Scalar("default");
        var named = TenderClimates.None.Named.ToBuilder();
        if (section.Section(TenderClimates.Monthly) is { } monthly)
        {
            named[TenderClimates.Monthly] = TypedClimate.Read(monthly);
            monthly.ReportUnknownKeys();
            if (standard is not null && !standard.Text.Equals(TenderClimates.Monthly, StringComparison.OrdinalIgnoreCase))
                section.AddError("TK112", "both 'default' and 'monthly' are given, so it is not clear which holds; keep one, or move the values under 'named'", standard.Line);
        }

        var entries = section.Section("named");
        foreach (var name in entries?.Keys ?? []) Add(name, entries!, named);
        entries?.ReportUnknownKeys();
        section.ReportUnknownKeys();
        return new TenderClimates(standard?.Text ?? (named.ContainsKey(TenderClimates.Monthly) ? TenderClimates.Monthly : null), named.ToImmutable());
    }

    private static void Add(string name, YamlSection entries, ImmutableSortedDictionary<string, NamedClimate>.Builder named)
    {
        if (entries.Section(name) is not { } entry) return;
        if (name.Equals(TenderClimates.Estimate, StringComparison.OrdinalIgnoreCase) || named.ContainsKey(name))
            entry.AddError("TK112", $"'{entry.Path}' cannot be called '{name}': {(named.ContainsKey(name) ? "another climate has that name" : "the word stands for the built-in table")}", entry.Line);
        else named[name] = EntryOf(entry);
        entry.ReportUnknownKeys();
    }

    private static NamedClimate EntryOf(YamlSection entry)
    {
        if (entry.Text("file") is { } file) return new NamedClimate(file, null, entry.Line);
        if (entry.Section(TenderClimates.Monthly) is not { } values) return TypedClimate.Read(entry);
        var typed = TypedClimate.Read(values);
        values.ReportUnknownKeys();
        return typed;
    }
}
