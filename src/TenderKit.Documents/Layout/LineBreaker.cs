using System.Collections.Immutable;

namespace TenderKit.Documents.Layout;

/// <summary>Breaks text into lines no wider than a measure; a word wider than the measure is cut.</summary>
internal static class LineBreaker
{
    public static ImmutableArray<string> Break(string text, TextStyle style, double measure)
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
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Cut(w, style, measure)))
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
