using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Turns hours of the clock into hours of the sun: shifted by 4 min per degree of longitude from the clock's meridian and by the equation
/// of time (Duffie, Beckman and Blair, Solar Engineering of Thermal Processes, 5th ed., eq. 1.5.2 and 1.5.3).
/// </summary>
/// <remarks>
/// The energy of a clock hour is taken as even over its sunlit part and goes to the two solar hours it falls in: in proportion to time by day,
/// and none into the dark at sunrise and sunset. Nothing is lost: what passes an end of the series comes in at the other.
/// Temperatures are averaged with the same shares of time. Rounded to 0.001, as the synthetic years are.
/// </remarks>
internal static class SolarTime
{
    public static HourlyYears Of(HourlySeries series)
    {
        var count = series.GlobalWhPerM2.Length;
        var (global, air, weight) = (new double[count], new double[count], new double[count]);
        var halfDayH = HalfDays(series.LatitudeDegrees);
        for (var i = 0; i < count; i++)
        {
            var start = i + ShiftH(series, i);
            var floor = Math.Floor(start);
            var late = start - floor;
            var first = Turned((int)floor, count);
            var second = Turned((int)floor + 1, count);
            var share = Share(halfDayH, first, second, late);
            global[first] += series.GlobalWhPerM2[i] * (1 - share);
            global[second] += series.GlobalWhPerM2[i] * share;
            air[first] += series.AirC[i] * (1 - late);
            air[second] += series.AirC[i] * late;
            weight[first] += 1 - late;
            weight[second] += late;
        }

        for (var i = 0; i < count; i++)
        {
            global[i] = Math.Round(global[i], 3);
            air[i] = Math.Round(air[i] / weight[i], 3);
        }

        return new HourlyYears(series.LatitudeDegrees, series.YearCount, Immutable(global), Immutable(air));
    }

    /// <summary>Solar less clock time at the middle of an hour, h.</summary>
    private static double ShiftH(HourlySeries series, int index)
    {
        var dayOfYear = (index % MonthDays.HoursCount + 0.5) / 24 + 0.5;
        return SunGeometry.SolarLessClockMinutes(series.LongitudeDegrees, series.UtcOffsetH, SunGeometry.EquationOfTimeMinutes(dayOfYear)) / 60;
    }

    /// <summary>Share of the energy that belongs to the second solar hour.</summary>
    private static double Share(double[] halfDayH, int first, int second, double late)
    {
        var inFirst = SunlitH(halfDayH, first, late, 1);
        var inSecond = SunlitH(halfDayH, second, 0, late);
        return inFirst + inSecond > 0 ? inSecond / (inFirst + inSecond) : late;
    }

    private static double SunlitH(double[] halfDayH, int index, double from, double to)
    {
        var half = halfDayH[index / 24 % MonthDays.DaysCount];
        var hour = index % 24;
        return Math.Max(0, Math.Min(hour + to, 12 + half) - Math.Max(hour + from, 12 - half));
    }

    private static double[] HalfDays(double latitudeDegrees) =>
        [.. Enumerable.Range(1, MonthDays.DaysCount).Select(n => SunGeometry.DayLengthH(latitudeDegrees, n) / 2)];

    private static int Turned(int index, int count) => (index % count + count) % count;

    private static ImmutableArray<double> Immutable(double[] values) => ImmutableCollectionsMarshal.AsImmutableArray(values);
}
