using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Diffuse share of global horizontal irradiation from clearness: Erbs, Klein and Duffie, Solar Energy 28 (1982) 293,
/// as in D&amp;B (Solar Engineering of Thermal Processes, 5th ed.).
/// </summary>
public static class DiffuseFraction
{
    private const double SeasonLimitDegrees = 81.4;

    /// <summary>Hourly diffuse fraction. D&amp;B eq. 2.10.1. Check value: kt 0.5 gives 0.6591.</summary>
    /// <param name="clearness">Hourly clearness, fraction, 0 and up.</param>
    public static double Hourly(double clearness)
    {
        var k = Require.NotNegative(clearness, nameof(clearness));
        if (k <= 0.22) return 1 - 0.09 * k;
        if (k > 0.80) return 0.165;
        return 0.9511 - 0.1604 * k + 4.388 * k * k - 16.638 * k * k * k + 12.336 * k * k * k * k;
    }

    /// <summary>Daily diffuse fraction. D&amp;B eq. 2.11.1. Check value: K 0.6916 with a sunset hour angle above 81.4 degrees gives 0.253.</summary>
    public static double Daily(double clearness, double sunsetHourAngleRad)
    {
        var k = Require.NotNegative(clearness, nameof(clearness));
        if (Angle.ToDegrees(sunsetHourAngleRad) <= SeasonLimitDegrees)
        {
            return k >= 0.715 ? 0.143 : 1 - 0.2727 * k + 2.4495 * k * k - 11.9514 * k * k * k + 9.3879 * k * k * k * k;
        }

        return k >= 0.722 ? 0.175 : 1 + 0.2832 * k - 2.5557 * k * k + 0.8448 * k * k * k;
    }

    /// <summary>Monthly mean diffuse fraction. D&amp;B eq. 2.12.1, fitted for clearness 0.3 to 0.8: outside it the nearest end is used. Check value: K 0.5, 80 degrees gives 0.3911.</summary>
    public static double Monthly(double clearness, double sunsetHourAngleRad)
    {
        var k = Math.Clamp(clearness, 0.3, 0.8);
        return Angle.ToDegrees(sunsetHourAngleRad) <= SeasonLimitDegrees
            ? 1.391 - 3.560 * k + 4.189 * k * k - 2.137 * k * k * k
            : 1.311 - 3.022 * k + 3.427 * k * k - 1.821 * k * k * k;
    }
}
