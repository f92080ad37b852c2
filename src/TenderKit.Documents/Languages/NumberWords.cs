using System.Collections.Frozen;
using System.Text;

namespace TenderKit.Documents.Languages;

/// <summary>
/// Numbers as French, Spanish and Portuguese write them: decimal comma, and between thousands a space, which none of them can take
/// for a decimal mark (ISO 80000-1, 7.3, from memory).
/// </summary>
internal static class NumberWords
{
    private const char ThousandsSpace = '\u00A0';

    private static readonly FrozenSet<string> _units = FrozenSet.Create(
        StringComparer.Ordinal,
        "%", "°", "°C", "degC", "A", "Ah", "d", "h", "K", "kg", "km", "kPa", "kWh", "kWh/m²", "kWh/m2", "L", "lm", "lx", "cd", "cd/m2", "cd/m²", "m", "m/s", "m²", "m2", "m³", "m3",
        "mm", "mm²", "mm2", "MPa", "N", "kN", "kNm", "N/m²", "N/m2", "Nm", "V", "W", "Wh", "Wp", "kW", "kWp", "µm", "um", "min", "s", "lm/W", "Wh/kg", "W/m2", "W/m²", "l", "t", "mA", "mV", "ohm", "Hz");

    private static readonly FrozenSet<string> _signs = FrozenSet.Create(StringComparer.Ordinal, "×", "x", "≥", "≤", ">", "<", "=", "/", "+", "-", "−", "–", "±");

    /// <summary>The text with a decimal comma when it holds numbers, units and signs only; null when it holds anything else.</summary>
    public static string? Say(string text)
    {
        if (text.Length == 0 || text.Length > 64 || !text.Any(char.IsAsciiDigit)) return null;
        var said = new StringBuilder();
        foreach (var token in text.Split(' '))
        {
            if (said.Length > 0) said.Append(' ');
            if (Token(token) is not { } one) return null;
            said.Append(one);
        }

        return said.ToString();
    }

    /// <summary>A number at the start of a text and the rest after the space, or null.</summary>
    public static (string Number, string After)? Lead(string text)
    {
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 && IsNumber(text.AsSpan(0, space)) ? (Written(text[..space]), text[(space + 1)..]) : null;
    }

    public static bool IsUnit(string text) => _units.Contains(text);

    private static string? Token(string token)
    {
        if (_units.Contains(token) || _signs.Contains(token) || token.Length == 0) return token;
        if (IsNumber(token)) return Written(token);
        var tail = token.AsSpan().TrimStart("0123456789.,+-−").Length;
        var number = token[..^tail];
        return tail > 0 && IsNumber(number) && _units.Contains(token[^tail..]) ? Written(number) + token[^tail..] : null;
    }

    private static bool IsNumber(ReadOnlySpan<char> token)
    {
        if (token.Length > 0 && token[0] is '+' or '-' or '−') token = token[1..];
        var point = token.IndexOf('.');
        var whole = point < 0 ? token : token[..point];
        if (point >= 0 && (point == token.Length - 1 || token[(point + 1)..].ContainsAnyExceptInRange('0', '9'))) return false;
        if (whole.IndexOf(',') < 0) return whole.Length > 0 && !whole.ContainsAnyExceptInRange('0', '9');
        return AreGroups(whole);
    }

    private static bool AreGroups(ReadOnlySpan<char> whole)
    {
        var first = whole.IndexOf(',');
        if (first is < 1 or > 3 || (whole.Length - first) % 4 != 0) return false;
        for (var i = 0; i < whole.Length; i++)
        {
            if ((whole[i] == ',') != (i >= first && (i - first) % 4 == 0) || (whole[i] != ',' && !char.IsAsciiDigit(whole[i]))) return false;
        }

        return true;
    }

    private static string Written(string number) => number.Replace(',', ThousandsSpace).Replace('.', ',');
}
