using System.Collections.Immutable;
using TenderKit.Intake.Numbers;

namespace TenderKit.Tendering.Columns;

/// <summary>Something a column can mean, and the headings people give it.</summary>
/// <param name="Id">Stable id, lower case with underscores.</param>
/// <param name="Synonyms">Headings in any language; case, accents and punctuation do not matter.</param>
/// <param name="Kind">What its numbers measure, so that a unit in the heading can be read; null for text.</param>
public sealed record ColumnMeaning(string Id, ImmutableArray<string> Synonyms, QuantityKind? Kind = null)
{
    /// <summary>The synonyms as <see cref="HeadingMatch.Words"/> sees them.</summary>
    internal ImmutableArray<string> Words { get; } = [.. Synonyms.Select(HeadingMatch.Words)];

    /// <summary>A meaning whose synonyms are given in one text, separated by <c>|</c>.</summary>
    public static ColumnMeaning Of(string id, QuantityKind? kind, string synonyms) =>
        new(id, [.. synonyms.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)], kind);
}
