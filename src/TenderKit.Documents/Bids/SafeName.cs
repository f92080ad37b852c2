namespace TenderKit.Documents.Bids;

/// <summary>Names of files and folders that every common system accepts.</summary>
public static class SafeName
{
    /// <summary>Longest name given, leaving room for endings and the folders above.</summary>
    public const int MostCharacters = 80;

    private const string Refused = "<>:\"/\\|?*";

    /// <summary>Device names one common system keeps for itself, with or without an ending.</summary>
    private static readonly HashSet<string> _reserved = new(
        ["CON", "PRN", "AUX", "NUL", .. Enumerable.Range(0, 10).SelectMany(i => new[] { FormattableString.Invariant($"COM{i}"), FormattableString.Invariant($"LPT{i}") })],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>A reference as a folder name: letters of the Latin alphabet, digits, '-' and '_' stay, anything else becomes '-'.</summary>
    /// <param name="fallback">Name when nothing is left.</param>
    public static string OfReference(string reference, string fallback)
    {
        var name = string.Concat(reference.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-')).Trim('-');
        if (name.Length > MostCharacters) name = name[..MostCharacters].TrimEnd('-');
        return name.Length == 0 ? fallback : _reserved.Contains(name) ? $"{fallback}-{name}" : name;
    }

    /// <summary>A text as part of a file name: what some system refuses becomes '-', the rest stays.</summary>
    public static string Part(string text) => string.Concat(text.Select(c => char.IsControl(c) || Refused.Contains(c, StringComparison.Ordinal) ? '-' : c)).TrimStart('.', ' ', '-');
}
