using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Intake.Climate;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.Settings;

/// <summary>
/// A day and month as users write them: <c>1 Nov</c>, <c>Nov 1</c>, <c>1 novembre</c>, or two numbers that can be read in one way only
/// (<c>31-03</c>, <c>03/31</c>). Two numbers of 12 or less, as in <c>11-01</c>, are refused unless they are equal: they mean one day here and another there.
/// </summary>
/// <param name="DayOfYear">1 to 365, or null when unreadable.</param>
/// <param name="Problem">What is wrong, or null.</param>
public sealed partial record DayMonth(int? DayOfYear, string? Problem)
{
    private const string Cure = "write a day and the name of a month, such as 1 Nov";

    public static DayMonth Read(string text)
    {
        var match = Form().Match(text.Trim());
        if (!match.Success) return No($"is no day of the year; {Cure}");
        var (first, second) = (match.Groups["a"].Value, match.Groups["b"].Value);
        if (int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var a) && int.TryParse(second, NumberStyles.None, CultureInfo.InvariantCulture, out var b))
            return OfNumbers(a, b);
        if (MonthOf(second) is { } month) return OfDay(Whole(first), month);
        return MonthOf(first) is { } before ? OfDay(Whole(second), before) : No($"names no month known here; {Cure}");
    }

    private static DayMonth OfNumbers(int a, int b) => (a, b) switch
    {
        ( <= 12, <= 12) when a != b && a > 0 && b > 0 => No($"may be {YearDay.Text(YearDay.Of(a, b))} or {YearDay.Text(YearDay.Of(b, a))}; {Cure}"),
        (_, >= 1 and <= 12) => OfDay(a, b),
        _ => OfDay(b, a),
    };

    private static DayMonth OfDay(int? day, int month)
    {
        if (month is < 1 or > 12 || day is not { } d || d < 1 || d > MonthDays.Count(month) + (month == 2 ? 1 : 0)) return No($"is no day of the year; {Cure}");
        return new DayMonth(YearDay.Of(d, month), null);
    }

    private static int? MonthOf(string word) => char.IsLetter(word[0]) ? MonthNames.Of(word) : null;

    private static int? Whole(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : null;

    private static DayMonth No(string problem) => new(null, problem);

    [GeneratedRegex(@"^(?<a>\d{1,2}|\p{L}+)(?:\.?\s*[-/ ]\s*|\.\s*|\s+(?:de\s+)?)(?<b>\d{1,2}|\p{L}+)\.?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Form();
}
