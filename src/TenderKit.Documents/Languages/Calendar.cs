using System.Collections.Immutable;
using System.Globalization;

namespace TenderKit.Documents.Languages;

/// <summary>Months and dates in words, for the doors to say.</summary>
internal static class Calendar
{
    public static readonly ImmutableArray<string> Months =
        ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

    public static readonly ImmutableArray<string> ShortMonths = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

    /// <summary>The key under which a language says how day, month and year follow each other.</summary>
    public static string DateKey { get; } = Keyed("{0}", "{1}", "{2}");

    /// <summary>A date of the form "5 March 2027" in its parts, or null.</summary>
    public static (string Day, string Month, string Year)? Cut(string text) =>
        text.Length <= 20 && text.Split(' ') is [var day, var month, { Length: 4 } year] && Months.Contains(month)
            && int.TryParse(day, NumberStyles.None, CultureInfo.InvariantCulture, out _) && int.TryParse(year, NumberStyles.None, CultureInfo.InvariantCulture, out _)
            ? (day, month, year)
            : null;

    public static string Keyed(string day, string month, string year) => $"the day {day} of {month} in {year}";
}
