using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>The 365-day year every sequence of this project uses; 29 February is left out.</summary>
public static class MonthDays
{
    /// <summary>Days of the year.</summary>
    public const int DaysCount = 365;

    /// <summary>Hours of the year.</summary>
    public const int HoursCount = 8760;

    private static readonly int[] Starts = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];
    private static readonly int[] Months = [.. Enumerable.Range(1, 12).SelectMany(m => Enumerable.Repeat(m, Starts[m] - Starts[m - 1]))];

    /// <summary>Days before the first of a month (1 to 12): 0 for January.</summary>
    public static int FirstDayIndex(int month) => Starts[Require.Month(month) - 1];

    /// <summary>Days of a month (1 to 12).</summary>
    public static int Count(int month) => Starts[Require.Month(month)] - Starts[month - 1];

    /// <summary>Month (1 to 12) of a day index, 0 to 364.</summary>
    public static int MonthOf(int dayIndex) => Months[dayIndex];
}
