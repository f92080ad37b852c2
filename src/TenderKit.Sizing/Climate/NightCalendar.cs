using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Dusk and dawn of every day of the year.</summary>
public static class NightCalendar
{
    private const int CycleStartYear = 2025;
    private const int CycleYears = 4;

    private static readonly double[] NoonDeclinationRad = [.. Enumerable.Range(0, MonthDays.DaysCount).Select(MeanDeclinationRad)];

    /// <summary>
    /// 365 days in local solar time, each symmetrical about its noon, with the declination at noon of <see cref="SunPosition"/>,
    /// mean of a leap-year cycle; never NaN, polar day gives no darkness, polar night 24 h.
    /// </summary>
    /// <param name="latitudeDegrees">Latitude, degrees, -90 to 90.</param>
    /// <param name="switchingElevationDegrees">Sun elevation at which the lamp switches, degrees, -6 to 3.</param>
    public static ImmutableArray<NightOfYear> ForLatitude(double latitudeDegrees, double switchingElevationDegrees)
    {
        Require.InRange(latitudeDegrees, -90, 90, nameof(latitudeDegrees));
        Require.InRange(switchingElevationDegrees, -6, 3, nameof(switchingElevationDegrees));
        return [.. Enumerable.Range(1, MonthDays.DaysCount).Select(day => Night(day, latitudeDegrees, switchingElevationDegrees))];
    }

    /// <summary>Mean hours of darkness a day for each month, h.</summary>
    public static ImmutableArray<double> MonthlyMeanDarkH(ImmutableArray<NightOfYear> nights)
    {
        var sums = new double[12];
        foreach (var night in nights)
        {
            var month = MonthDays.MonthOf(night.DayOfYear - 1);
            sums[month - 1] += night.DarkH / MonthDays.Count(month);
        }

        return [.. sums];
    }

    private static NightOfYear Night(int day, double latitudeDegrees, double elevationDegrees)
    {
        var half = Angle.ToDegrees(SunGeometry.SunsetHourAngleRad(latitudeDegrees, NoonDeclinationRad[day - 1], elevationDegrees)) / 15;
        return new NightOfYear(day, 12 + half, 12 - half);
    }

    private static double MeanDeclinationRad(int dayIndex)
    {
        var month = MonthDays.MonthOf(dayIndex);
        var day = dayIndex - MonthDays.FirstDayIndex(month) + 1;
        return Enumerable.Range(CycleStartYear, CycleYears)
            .Average(year => Angle.ToRad(SunPosition.At(SunPosition.JulianDay(new DateTime(year, month, day, 12, 0, 0, DateTimeKind.Utc))).DeclinationDegrees));
    }
}
