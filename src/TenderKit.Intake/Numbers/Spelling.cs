using System.Globalization;
using System.Text;

namespace TenderKit.Intake.Numbers;

/// <summary>Evens out the characters people and programs use for the same thing.</summary>
public static class Spelling
{
    /// <summary>Lower case without accents: <c>École</c> is <c>ecole</c>.</summary>
    public static string Folded(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var c in text.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark) folded.Append(char.ToLowerInvariant(c));
        }

        return folded.ToString().Normalize(NormalizationForm.FormC);
    }

    /// <summary>Spaces, signs, quotes, degree signs, raised figures and digits of other scripts in their plain form.</summary>
    internal static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text) plain.Append(Plain(c));
        return plain.ToString().Trim();
    }

    private static string Plain(char c) => c switch
    {
        '\u00A0' or '\u2007' or '\u2009' or '\u202F' or '\t' or '\n' or '\r' => " ",
        '\u2212' or '\u2013' or '\u2014' or '\u2010' or '\u2011' or '\uFE63' => "-",
        '\u2018' or '\u2019' or '\u201B' or '\u2032' or '\u00B4' or '`' or '\u02B9' or '\u02BC' => "'",
        '\u201C' or '\u201D' or '\u201F' or '\u2033' or '\u02BA' or '\u3003' => "\"",
        '\u00BA' or '\u02DA' or '\u00B0' => "\u00B0",
        '\u00B2' => "2",
        '\u00B3' => "3",
        '\u066B' => ",",
        '\u066C' => "'",
        '\u200B' or '\u200E' or '\u200F' or '\uFEFF' => "",
        _ when c > '\u007F' && char.IsDigit(c) => ((int)char.GetNumericValue(c)).ToString(CultureInfo.InvariantCulture),
        _ => c.ToString(),
    };
}
