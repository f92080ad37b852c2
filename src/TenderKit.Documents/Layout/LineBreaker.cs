using System.Collections.Frozen;
using System.Collections.Immutable;
using TenderKit.Documents.Languages;

namespace TenderKit.Documents.Layout;

/// <summary>Breaks text into lines no wider than a measure; a word wider than the measure is cut, a number is not parted from its unit.</summary>
internal static class LineBreaker
{
    private static readonly FrozenSet<string> _units = FrozenSet.Create(
        StringComparer.Ordinal,
        "%", "°", "°C", "A", "Ah", "d", "h", "K", "kg", "km", "kPa", "kWh/m²", "L", "lm", "lx", "m", "m/s", "m²", "m³", "mm", "mm²", "MPa", "N", "N/m²", "Nm",
            "V", "W", "Wh", "Wp", "µm");

    /// <summary>Lines of a text said in the language of the document.</summary>
    public static ImmutableArray<string> Break(string text, TextStyle style, double measure) => BreakSaid(Wording.Current.Say(text), style, measure);

    /// <summary>Lines of a text as it stands.</summary>
    public static ImmutableArray<string> BreakSaid(string text, TextStyle style, double measure)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var part in text.Replace("\r", "", StringComparison.Ordinal).Split('\n')) BreakOne(Fonts.Drawable(part), style, measure, lines);
        return lines.ToImmutable();
    }

    private static void BreakOne(string text, TextStyle style, double measure, ImmutableArray<string>.Builder lines)
    {
        var space = style.Width(" ");
        var line = "";
        double used = 0;
        foreach (var word in WordsOf(text).SelectMany(w => Cut(w, style, measure)))
        {
            var width = style.Width(word);
            if (line.Length > 0 && used + space + width > measure)
            {
                lines.Add(line);
                line = "";
            }

            used = line.Length == 0 ? width : used + space + width;
            line = line.Length == 0 ? word : line + " " + word;
        }

        lines.Add(line);
    }

    private static List<string> WordsOf(string text)
    {
        var words = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && char.IsAsciiDigit(words[^1][^1]) && _units.Contains(word.TrimEnd(',', '.', ';', ':', ')'))) words[^1] += " " + word;
            else words.Add(word);
        }

        return words;
    }

    private static IEnumerable<string> Cut(string word, TextStyle style, double measure)
    {
        while (word.Length > 1 && style.Width(word) > measure)
        {
            var length = word.Length - 1;
            while (length > 1 && style.Width(word[..length]) > measure) length--;
            var afterJoint = word.LastIndexOfAny(['-', '/', '_', ';', ',', '.'], length - 1) + 1;
            if (afterJoint > length / 2) length = afterJoint;
            if (char.IsHighSurrogate(word[length - 1]) && length > 1) length--;
            yield return word[..length];
            word = word[length..];
        }

        if (word.Length > 0) yield return word;
    }
}
