using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Speed classes of passive safety, EN 12767 (50, 70 and 100 km/h; from memory).</summary>
public static class PassiveSafety
{
    private static readonly double[] ClassesKmPerH = [50, 70, 100];

    /// <summary>The class that covers a speed of traffic, km/h; above 100 km/h the highest.</summary>
    /// <param name="trafficKmPerH">0 to 200 km/h.</param>
    /// <returns>Check value: 80 km/h needs class 100.</returns>
    public static double ClassFor(double trafficKmPerH)
    {
        Require.InRange(trafficKmPerH, 0, 200, nameof(trafficKmPerH));
        return ClassesKmPerH.Where(c => c >= trafficKmPerH).DefaultIfEmpty(ClassesKmPerH[^1]).First();
    }

    /// <summary>Speed of a designation such as 100-NE-B or 70,HE,3: the number it begins with, km/h; 0 for a text that is none.</summary>
    public static double SpeedOf(string designation)
    {
        var digits = new string([.. (designation ?? "").Trim().TakeWhile(char.IsAsciiDigit)]);
        return double.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var speed) && ClassesKmPerH.Contains(speed) ? speed : 0;
    }
}
