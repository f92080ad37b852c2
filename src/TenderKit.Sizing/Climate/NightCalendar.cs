using System.Collections.Immutable;

namespace TenderKit.Sizing.Climate;

/// <summary>Dusk and dawn of every day of the year.</summary>
public static class NightCalendar
{
    /// <summary>365 days; never NaN, polar day gives no darkness, polar night 24 h.</summary>
    /// <param name="latitudeDegrees">Latitude, degrees, -90 to 90.</param>
    /// <param name="switchingElevationDegrees">Sun elevation at which the lamp switches, degrees, -6 to 3.</param>
    public static ImmutableArray<NightOfYear> ForLatitude(double latitudeDegrees, double switchingElevationDegrees) => throw new NotImplementedException();

    /// <summary>Mean hours of darkness a day for each month, h.</summary>
    public static ImmutableArray<double> MonthlyMeanDarkH(ImmutableArray<NightOfYear> nights) => throw new NotImplementedException();
}
