using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Hours that follow one another from 1 January, hour 1, as in files of typical years; hours 1 to 24 are ending.</summary>
internal sealed class HourRun(ClimateText text, ClimateLimits limits)
{
    private const int LeapYear = 2000;

    private readonly HourBuffer buffer = new(text, limits);
    private readonly HashSet<int> stated = [];
    private int yearIndex;
    private (int Month, int Day, int Hour) next = (1, 1, 1);

    /// <summary>No line was refused so far.</summary>
    public bool Sound => !text.Found.Any(d => d.Severity == Severity.Error);

    /// <summary>Takes the next hour, or refuses the line that is out of order.</summary>
    public void Add(int year, int month, int day, int hour, double globalWh, double airC, int line)
    {
        if (next is (2, 29, 1) && (month, day) == (3, 1)) next = (3, 1, 1);
        if ((month, day, hour) != next)
        {
            text.Data(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"hour {hour} of {day} {MonthOf(month)} stands where hour {next.Hour} of {next.Day} {MonthOf(next.Month)} should "
                    + $"(hours run from 1 to 24); an hour is missing, twice, or not one of 60 minutes. Get the file again from its "
                    + $"source"), line);
            return;
        }

        stated.Add(year);
        buffer.Add(yearIndex, month, day, hour - 1, globalWh, airC, line);
        Step();
    }

    /// <summary>The series of all hours taken; a single year counts as typical, since its months mostly come from several.</summary>
    public Outcome<HourlySeries> Series(StatedPlace place, string source)
    {
        if (!Sound || buffer.Whole(calendar: false) is not { } whole) return Outcome.None<HourlySeries>(text.Found);
        var measured = whole.Years.Count > 1 && whole.Years.Count == yearIndex && stated.Count == yearIndex && stated.Max() - stated.Min() == yearIndex - 1;
        return Outcome.Of(
            new HourlySeries(
                measured ? SeriesKind.MeasuredYears : SeriesKind.TypicalYear,
                measured ? [.. stated.Order()] : [],
                place.LatitudeDegrees,
                place.LongitudeDegrees,
                place.UtcOffsetH,
                [.. whole.Global],
                [.. whole.Air],
                source),
            text.Found);
    }

    private static string MonthOf(int month) => month is >= 1 and <= 12 ? MonthNames.Name(month) : FormattableString.Invariant($"month {month}");

    private void Step()
    {
        var (month, day, hour) = next;
        if (hour < 24) next = (month, day, hour + 1);
        else if (day < DateTime.DaysInMonth(LeapYear, month)) next = (month, day + 1, 1);
        else if (month < 12) next = (month + 1, 1, 1);
        else (next, yearIndex) = ((1, 1, 1), yearIndex + 1);
    }
}
