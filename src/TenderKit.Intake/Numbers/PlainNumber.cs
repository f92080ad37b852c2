using System.Text.RegularExpressions;

namespace TenderKit.Intake.Numbers;

/// <summary>Digits with separators, turned into invariant text: <c>1.234,5</c> and <c>1 234.5</c> are <c>1234.5</c>.</summary>
internal static partial class PlainNumber
{
    /// <param name="Invariant">Digits with a point, or null.</param>
    /// <param name="Ambiguous">A single comma before three digits, read as thousands.</param>
    public readonly record struct Plain(string? Invariant, bool Ambiguous);

    public static Plain Read(string digits, DecimalMark mark, bool whole)
    {
        var sign = digits[0] is '-' or '+' ? digits[..1].Replace("+", "", StringComparison.Ordinal) : "";
        var body = digits.TrimStart('+', '-').Trim();
        var (decimals, ambiguous) = DecimalSign(body, mark, whole);
        var cut = decimals is { } d ? body.LastIndexOf(d) : body.Length;
        var fraction = cut < body.Length ? body[(cut + 1)..] : "";
        var integer = body[..cut];
        if (!Grouped().IsMatch(integer) || !OnlyDigits().IsMatch(fraction)) return new(null, false);
        var plain = NotDigit().Replace(integer, "");
        if (plain.Length + fraction.Length == 0) return new(null, false);
        return new(sign + (plain.Length == 0 ? "0" : plain) + (fraction.Length == 0 ? "" : "." + fraction), ambiguous);
    }

    private static (char? Sign, bool Ambiguous) DecimalSign(string body, DecimalMark mark, bool whole)
    {
        var (commas, points) = (body.Count(c => c == ','), body.Count(c => c == '.'));
        if (commas > 0 && points > 0) return (body.LastIndexOf(',') > body.LastIndexOf('.') ? ',' : '.', false);
        if (commas + points != 1) return (null, false);
        var sign = commas == 1 ? ',' : '.';
        if (!CouldBeThousands().IsMatch(body)) return (sign, false);
        if (whole) return (null, false);
        return (sign, mark) switch
        {
            (',', DecimalMark.Comma) => (',', false),
            (',', DecimalMark.Point) => (null, false),
            (',', _) => (null, true),
            ('.', DecimalMark.Comma) => (null, false),
            _ => ('.', false),
        };
    }

    // one to three digits not starting with zero, one mark, three digits
    [GeneratedRegex(@"^[1-9]\d{0,2}[.,]\d{3}$")]
    private static partial Regex CouldBeThousands();

    // nothing, digits, or groups of three (of two and three as written in South Asia) by one kind of mark
    [GeneratedRegex(@"^(?:\d*|\d{1,3}(?:,\d{3})+|\d{1,3}(?:\.\d{3})+|\d{1,3}(?: \d{3})+|\d{1,3}(?:'\d{3})+|\d{1,2}(?:,\d{2})*,\d{3})$")]
    private static partial Regex Grouped();

    [GeneratedRegex(@"^\d*$")]
    private static partial Regex OnlyDigits();

    [GeneratedRegex(@"\D")]
    private static partial Regex NotDigit();
}
