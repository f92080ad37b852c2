using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Hours gathered by year; what is missing or impossible is NaN until it is filled. 29 February is left out.</summary>
internal sealed class HourBuffer(ClimateText text, ClimateLimits limits)
{
    private const double LeastWhPerM2 = -10;
    private const double GreatestWhPerM2 = 1500;

    private readonly SortedDictionary<int, Hours> years = [];
    private int badAir;
    private int badGlobal;
    private int firstBadLine;

    private sealed record Hours(double[] Global, double[] Air, bool[] Given);

    /// <summary>Takes one hour (0 to 23, beginning); NaN where the file marks it missing. False where it was taken before.</summary>
    public bool Add(int year, int month, int day, int hour, double globalWh, double airC, int line)
    {
        if (month == 2 && day == 29) return true;
        if (!years.TryGetValue(year, out var hours)) years[year] = hours = New();
        var i = (MonthDays.FirstDayIndex(month) + day - 1) * 24 + hour;
        if (hours.Given[i]) return false;
        hours.Given[i] = true;
        if (globalWh is >= LeastWhPerM2 and <= GreatestWhPerM2) hours.Global[i] = Math.Max(0, globalWh);
        else Bad(ref badGlobal, line);
        if (SeriesMonths.IsCredible(airC)) hours.Air[i] = airC;
        else Bad(ref badAir, line);
        return true;
    }

    /// <summary>The whole years, gaps filled; null where none is left.</summary>
    /// <param name="calendar">Keys are calendar years, and messages may name them.</param>
    public (List<int> Years, double[] Global, double[] Air)? Whole(bool calendar)
    {
        var kept = YearChoice.Of(years.Select(y => (y.Key, MissingDays(y.Value))), calendar, limits, text);
        if (kept.Count == 0) return null;
        var global = kept.SelectMany(y => years[y].Global).ToArray();
        var air = kept.SelectMany(y => years[y].Air).ToArray();
        var (globalGaps, airGaps) = (Fill(global), Fill(air));
        if (globalGaps + airGaps > 0) Tell(globalGaps, airGaps);
        return (kept, global, air);
    }

    private static Hours New() => new(
        [.. Enumerable.Repeat(double.NaN, MonthDays.HoursCount)], [.. Enumerable.Repeat(double.NaN, MonthDays.HoursCount)], new bool[MonthDays.HoursCount]);

    private static int[] MissingDays(Hours hours)
    {
        var missing = new int[12];
        for (var d = 0; d < MonthDays.DaysCount; d++)
        {
            var lacks = Enumerable.Range(d * 24, 24).Any(i => double.IsNaN(hours.Global[i]) || double.IsNaN(hours.Air[i]));
            if (lacks) missing[MonthDays.MonthOf(d) - 1]++;
        }

        return missing;
    }

    /// <summary>Fills each gap with the same hour of the nearest day that has it, the earlier of two equally near; says how many.</summary>
    private static int Fill(double[] values)
    {
        var gaps = Enumerable.Range(0, values.Length).Where(i => double.IsNaN(values[i])).ToList();
        var filled = gaps.Select(i => Nearest(values, i)).ToList();
        for (var g = 0; g < gaps.Count; g++) values[gaps[g]] = filled[g];
        return gaps.Count;
    }

    private static double Nearest(double[] values, int index)
    {
        for (var step = 24; step < values.Length; step += 24)
        {
            var before = values[(index - step + values.Length) % values.Length];
            if (!double.IsNaN(before)) return before;
            var after = values[(index + step) % values.Length];
            if (!double.IsNaN(after)) return after;
        }

        throw new InvalidOperationException("an hour of the day has no value on any day of the series");
    }

    private void Bad(ref int count, int line)
    {
        count++;
        if (firstBadLine == 0) firstBadLine = line;
    }

    private void Tell(int globalGaps, int airGaps)
    {
        var where = firstBadLine > 0 ? FormattableString.Invariant($", the first in line {firstBadLine}") : "";
        text.Found.Add(Diagnostic.Warning(
            "TK146",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{globalGaps} hours of irradiation and {airGaps} of air temperature are missing or impossible (marked so, outside "
                + $"{SeriesMonths.LowestCredibleC:0} to {SeriesMonths.HighestCredibleC:0} degC or 0 to {GreatestWhPerM2:0} Wh/m2){where}; "
                + $"each was filled from the same hour of the nearest day. Check those days"),
            new Place(text.File, null, firstBadLine > 0 ? firstBadLine : null)));
    }
}
