using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Estimates a climate from the stations around a place.</summary>
public static class ReferenceClimate
{
    /// <summary>Inverse-distance clearness index from the four nearest stations, weights 1 / (d + 20 km)^2; graded by distance.</summary>
    public static MonthlyClimate Estimate(double latitudeDegrees, double longitudeDegrees, IReadOnlyList<ReferenceStation> stations) => throw new NotImplementedException();

    /// <summary>TK3xx findings about a monthly climate: clearness outside 0.15 to 0.82, mean outside max/min, likely unit or hemisphere slips.</summary>
    public static IReadOnlyList<Diagnostic> Examine(MonthlyClimate climate, Place place) => throw new NotImplementedException();
}
