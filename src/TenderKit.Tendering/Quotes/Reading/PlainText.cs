using System.Globalization;
using System.Text;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Folds a text letter by letter, so that a place in the folded text is the same place in the text itself.</summary>
internal static class PlainText
{
    /// <summary>Lower case, no accents, plain spaces, signs and figures; as long as the text.</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var c in text) folded.Append(Fold(c));
        return folded.ToString();
    }

    private static char Fold(char c)
    {
        switch (c)
        {
            case '\u00A0' or '\u2007' or '\u2009' or '\u202F' or '\t' or '\n' or '\r': return ' ';
            case '\u00B2' or '\u2082': return '2';
            case '\u00B3' or '\u2083': return '3';
            case '\u2084' or '\u2074': return '4';
            case '\u00D7' or '\u2715' or '\u2A2F': return 'x';
            case '\u2013' or '\u2014' or '\u2212' or '\u2010' or '\u2011': return '-';
            case '\u2018' or '\u2019' or '\u02BC' or '\u00B4' or '`': return '\'';
            case '\u00BA' or '\u00AA' or '\u00B0': return '\u00B0';
            case '\u2265': return '>';
            case '\u2264': return '<';
            case '\u00D8' or '\u00F8' or '\u2300': return '\u00F8';
        }

        if (c < '\u0080') return char.ToLowerInvariant(c);
        foreach (var part in c.ToString().Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(part) != UnicodeCategory.NonSpacingMark) return char.ToLowerInvariant(part);
        }

        return c;
    }

    /// <summary>A number as written in running text; a mark before exactly three digits parts thousands where the unit is usually counted in them.</summary>
    /// <param name="digits">Digits with marks.</param>
    /// <param name="thousands">Whether values of a thousand and more are usual for the unit and decimals are not.</param>
    public static double? Number(string digits, bool thousands)
    {
        var body = digits.Trim().Trim('.', ',', '\'');
        body = body.Replace(" ", "", StringComparison.Ordinal).Replace("'", "", StringComparison.Ordinal);
        var (commas, points) = (body.Count(c => c == ','), body.Count(c => c == '.'));
        if (commas > 0 && points > 0)
        {
            var last = body.LastIndexOf(',') > body.LastIndexOf('.') ? ',' : '.';
            body = body.Replace(last == ',' ? "." : ",", "", StringComparison.Ordinal).Replace(',', '.');
        }
        else if (commas + points > 1)
        {
            body = body.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);
        }
        else if (commas + points == 1)
        {
            var at = body.IndexOfAny([',', '.']);
            var three = body.Length - at - 1 == 3 && at is >= 1 and <= 3 && body[0] != '0';
            body = thousands && three ? body.Remove(at, 1) : body.Replace(',', '.');
        }

        return double.TryParse(body, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }
}
