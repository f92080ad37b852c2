using System.Collections.Immutable;

namespace TenderKit.Sizing.Basics;

/// <summary>How much a diagnostic matters: a note informs, a warning asks for judgement, an error means something asked for could not be met.</summary>
public enum Severity
{
    Note,
    Warning,
    Error,
}

/// <summary>Where a fact came from: any of file, sheet, row (1-based, as the user's program counts it), column and site.</summary>
public sealed record Place(string? File = null, string? Sheet = null, int? Row = null, string? Column = null, string? Site = null)
{
    public static readonly Place Nowhere = new();

    /// <summary>Address such as B7 of the cell, where a cell is meant.</summary>
    public string? Cell { get; init; }

    public override string ToString()
    {
        var parts = new List<string>(5);
        if (File is not null) parts.Add(File);
        if (Sheet is not null) parts.Add("sheet " + Sheet);
        if (Row is { } row) parts.Add(FormattableString.Invariant($"row {row}"));
        if (Column is not null) parts.Add("column " + Column);
        if (Cell is not null) parts.Add("cell " + Cell);
        if (Site is not null) parts.Add("site " + Site);
        return string.Join(", ", parts);
    }
}

/// <summary>One fact about the data or the engineering, collected so that one bad row never stops the good ones.</summary>
/// <param name="Code">Stable code, <c>TKnnn</c>, listed in DEVELOPERS.md.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">What, the value with its unit, the limit with its unit, and what to do.</param>
/// <param name="Place">Where.</param>
public sealed record Diagnostic(string Code, Severity Severity, string Message, Place Place)
{
    public static Diagnostic Note(string code, string message, Place? place = null) => new(code, Severity.Note, message, place ?? Place.Nowhere);

    public static Diagnostic Warning(string code, string message, Place? place = null) => new(code, Severity.Warning, message, place ?? Place.Nowhere);

    public static Diagnostic Error(string code, string message, Place? place = null) => new(code, Severity.Error, message, place ?? Place.Nowhere);

    /// <summary>One line for people: severity, code, place, message.</summary>
    public override string ToString()
    {
        var where = Place.ToString();
        var word = Severity switch { Severity.Note => "note", Severity.Warning => "warning", _ => "error" };
        return where.Length == 0 ? $"{word} {Code}: {Message}" : $"{word} {Code}: {where}: {Message}";
    }
}

/// <summary>A value that may be missing, with everything that was noticed on the way.</summary>
public sealed record Outcome<T>(T? Value, ImmutableArray<Diagnostic> Diagnostics)
    where T : class
{
    public bool HasErrors => Diagnostics.Any(d => d.Severity == Severity.Error);
}

/// <summary>Makes outcomes.</summary>
public static class Outcome
{
    public static Outcome<T> Of<T>(T value, IEnumerable<Diagnostic>? diagnostics = null)
        where T : class => new(value, diagnostics is null ? [] : [.. diagnostics]);

    public static Outcome<T> None<T>(params IEnumerable<Diagnostic> diagnostics)
        where T : class => new(null, [.. diagnostics]);
}
