using System.Text.RegularExpressions;

namespace TenderKit.Words;

/// <summary>Tells sentences and names from codes, formats, keys and paths.</summary>
public static partial class TextShape
{
    private static readonly HashSet<string> _units = new(StringComparer.Ordinal)
    {
        "Ah", "degC", "kg", "km", "kPa", "kWh", "lm", "lx", "cd", "mm", "MPa", "kN", "kNm", "Nm", "Wh", "Wp", "kW", "kWp", "um", "mA", "mV", "ohm", "Hz", "yyyy", "MM", "dd", "sha", "xlsx", "pdf", "csv", "min", "DC", "AC",
    };

    private static readonly HashSet<string> _short = new(StringComparer.Ordinal) { "at", "by", "in", "no", "of", "on", "or", "to", "No", "NO" };

    /// <summary>A text as it is looked up: without the marks and spaces that only join it to its neighbours.</summary>
    public static string Key(string text) => text.Trim(' ', ',', ';', ':', '\n', '>', '\u00A0').Trim();

    /// <summary>Whether the text holds a word to be said.</summary>
    public static bool HasWords(string text)
    {
        if (text.StartsWith('#')) return false;
        var literal = Hole().Replace(text, " \u0001 ");
        if (!Word().Matches(literal).Any(m => IsWord(literal, m))) return false;
        if (text.Contains(' ', StringComparison.Ordinal)) return !IsFormat(text);
        return text.Contains('{', StringComparison.Ordinal) ? text.AsSpan().IndexOfAny("._/\\") < 0 && !IsFormat(text) : IsPlainWord(text);
    }

    private static bool IsWord(string text, Match match)
    {
        var word = match.Value;
        if (_units.Contains(word) || word.All(char.IsUpper)) return false;
        return (match.Index == 0 || !char.IsAsciiDigit(text[match.Index - 1])) && !word.StartsWith("TK", StringComparison.Ordinal);
    }

    /// <summary>A single word that is no key, code, path or format.</summary>
    private static bool IsPlainWord(string text) =>
        Plain().IsMatch(text) && !Camel().IsMatch(text) && (text.Length > 2 || _short.Contains(text)) && !(text[^1] == '.' && char.IsLower(text[0]));

    private static bool IsFormat(string text) => text.Contains("#,##0", StringComparison.Ordinal) || Font().IsMatch(text);

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Hole();

    [GeneratedRegex(@"\p{L}{2,}")]
    private static partial Regex Word();

    [GeneratedRegex(@"^\(?[\p{L}]+([-'’][\p{L}]+)*[.:)!?]?$")]
    private static partial Regex Plain();

    [GeneratedRegex(@"\p{Ll}\p{Lu}")]
    private static partial Regex Camel();

    [GeneratedRegex(@"^(rgb|&[LCR]|sha256)")]
    private static partial Regex Font();
}
