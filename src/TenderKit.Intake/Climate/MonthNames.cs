using System.Globalization;
using System.Text;

namespace TenderKit.Intake.Climate;

/// <summary>Months as users write them: 1 to 12, or a name or its first letters in English, French, Spanish or Portuguese.</summary>
public static class MonthNames
{
    private static readonly string[][] Starts =
    [
        ["jan", "ene"], ["feb", "fev"], ["mar"], ["apr", "abr", "avr"], ["may", "mai"], ["jun", "juin"],
        ["jul", "juil"], ["aug", "ago", "aou"], ["sep", "set"], ["oct", "out"], ["nov"], ["dec", "dic", "dez"],
    ];

    /// <summary>1 to 12, or null.</summary>
    public static int? Of(string text)
    {
        var plain = Plain(text).TrimEnd('.');
        if (int.TryParse(plain, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return number is >= 1 and <= 12 ? number : null;
        if (plain.Length is < 3 or > 10 || !plain.All(char.IsAsciiLetter)) return null;
        for (var m = 0; m < Starts.Length; m++)
        {
            if (Starts[m].Any(s => plain.StartsWith(s, StringComparison.Ordinal))) return m + 1;
        }

        return null;
    }

    /// <summary>English name of a month.</summary>
    public static string Name(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);

    /// <summary>Lower case without accents.</summary>
    public static string Plain(string text)
    {
        var letters = text.Trim().ToLowerInvariant().Normalize(NormalizationForm.FormD)
            .Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark);
        return string.Concat(letters);
    }
}
