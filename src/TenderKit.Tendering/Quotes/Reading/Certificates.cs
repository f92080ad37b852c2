using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Standards named in a text, in one spelling: the French CEI is the IEC.</summary>
internal static partial class Certificates
{
    public static IEnumerable<string> In(string text)
    {
        foreach (Match match in Standard().Matches(text))
        {
            var body = match.Groups["b"].Value.ToUpperInvariant().Replace("CEI", "IEC", StringComparison.Ordinal);
            body = body.Contains("IEC", StringComparison.Ordinal) ? "IEC" : body.Contains("EN", StringComparison.Ordinal) ? "EN" : body.Contains("ISO", StringComparison.Ordinal) ? "ISO" : body.Trim();
            yield return body + " " + match.Groups["n"].Value.Replace(' ', '-').Replace('\u2013', '-').Replace('\u2011', '-');
        }
    }

    /// <summary>Whether a standard asked for is among those named: the same number, or the family it is a part of.</summary>
    public static bool Names(IEnumerable<string> named, string asked) =>
        named.Any(n => n == asked || asked.StartsWith(n + "-", StringComparison.Ordinal) && n.Length > 5 || n.StartsWith(asked + "-", StringComparison.Ordinal) || SameNumber(n, asked));

    /// <summary>EN 61215 is IEC 61215.</summary>
    private static bool SameNumber(string one, string other)
    {
        var (a, b) = (one[(one.IndexOf(' ') + 1)..], other[(other.IndexOf(' ') + 1)..]);
        return a == b && a.Length >= 5;
    }

    [GeneratedRegex(@"\b(?<b>(?:(?:NF|BS|DIN|UNE|ABNT|NBR)[ -]?)?(?:IEC|CEI|EN|ISO|UN|UL)(?:[ /](?:IEC|EN|ISO))?)[ -]?(?:/CEI )?(?<n>\d+(?:\.\d+)?(?:[-\u2011\u2013]\d+)*)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Standard();
}
