using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Dusk and dawn of every day of the year.</summary>
public static class NightCalendar
{
    /// <summary>
    /// 365 days in local solar time, each symmetrical about its noon, with Spencer's declination of the day;
    /// never NaN, polar day gives no darkness, polar night 24 h.
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
        var half = Angle.ToDegrees(SunGeometry.SunsetHourAngleRad(latitudeDegrees, SunGeometry.DeclinationRad(day), elevationDegrees)) / 15;
        return new NightOfYear(day, 12 + half, 12 - half);
    }
}
