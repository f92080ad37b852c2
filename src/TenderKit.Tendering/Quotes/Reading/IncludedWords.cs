using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Words that put a price into another item.</summary>
internal static partial class IncludedWords
{
    public static bool In(string text) => Pattern().IsMatch(PlainText.Fold(text));

    [GeneratedRegex(@"\b(?:incl\b|included|inclus\w*|compris|incluid\w+|incl\.|en otros|in other|gratis|free of charge|sans frais|sin cargo|sem custo)", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
