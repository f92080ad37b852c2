using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Days of a year of 365 days, 1 to 365.</summary>
public static class YearDay
{
    /// <summary>Day of the year of a day and month; 29 February, which this year has not, counts as the 28th.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such day.</exception>
    public static int Of(int day, int month)
    {
        var most = MonthDays.Count(month) + (month == 2 ? 1 : 0);
        if (day < 1 || day > most) throw new ArgumentOutOfRangeException(nameof(day), day, $"must be 1 to {most}");
        return MonthDays.FirstDayIndex(month) + Math.Min(day, MonthDays.Count(month));
    }

    /// <summary>Day and month in words, such as 1 Nov.</summary>
    public static string Text(int dayOfYear)
    {
        var index = (int)Require.InRange(dayOfYear, 1, MonthDays.DaysCount, nameof(dayOfYear)) - 1;
        var month = MonthDays.MonthOf(index);
        return FormattableString.Invariant($"{index - MonthDays.FirstDayIndex(month) + 1} {CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedMonthName(month)}");
    }
}
