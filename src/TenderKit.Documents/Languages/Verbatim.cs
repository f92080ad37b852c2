namespace TenderKit.Documents.Languages;

/// <summary>A text that is printed as it stands in every language.</summary>
public static class Verbatim
{
    /// <summary>Marks a text that a door prints as it is in every language; the doors take it off.</summary>
    private const char Echo = '\u2060';

    /// <summary>The text, marked to be printed as it stands: a name or sentence of the user's.</summary>
    public static string Of(string text) => Echo + text;

    internal static bool IsMarked(string text) => text.Length > 0 && text[0] == Echo;

    internal static string Unmarked(string text) => IsMarked(text) ? text[1..] : text;
}
