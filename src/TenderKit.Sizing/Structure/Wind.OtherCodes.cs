using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Exposure category of ASCE 7.</summary>
public enum Exposure
{
    B,
    C,
    D,
}

/// <content>Pressures of ASCE 7 and EN 40-3-1, for tenders that state the wind by those.</content>
public static partial class Wind
{
    /// <summary>Velocity pressure exposure coefficient Kz, ASCE 7-16 table 26.10-1: 2.01 (max(z, 4.57) / zg)^(2 / alpha).</summary>
    /// <param name="exposure">Exposure category.</param>
    /// <param name="heightM">Height above ground, m, 0 to 200.</param>
    /// <returns>Coefficient. Check value: C at 30 ft: 0.98.</returns>
    public static double Asce7ExposureCoefficient(Exposure exposure, double heightM)
    {
        var (alpha, gradientM) = exposure switch
        {
            Exposure.B => (7.0, 365.8),
            Exposure.C => (9.5, 274.3),
            Exposure.D => (11.5, 213.4),
            _ => throw new ArgumentOutOfRangeException(nameof(exposure), exposure, "is not an exposure category"),
        };
        return 2.01 * Math.Pow(Math.Max(Require.InRange(heightM, 0, 200, nameof(heightM)), 4.57) / gradientM, 2 / alpha);
    }

    /// <summary>Velocity pressure, N/m2: ASCE 7-16 (26.10-1.SI), 0.613 Kz Kzt Kd V^2.</summary>
    /// <param name="gustSpeedMPerS">Basic wind speed, 3-second gust at 10 m, exposure C, m/s, 10 to 100; it already holds the return period of its risk category.</param>
    /// <param name="exposure">Exposure category.</param>
    /// <param name="heightM">Height above ground, m.</param>
    /// <param name="directionalityFactor">Kd, 0.85 to 1; 0.95 for round poles (table 26.6-1).</param>
    /// <param name="topographicFactor">Kzt, 1 to 3.</param>
    /// <returns>N/m2. Check value: 45 m/s, C, 8 m, Kd 0.95: 1126 N/m2.</returns>
    public static double Asce7PressureNPerM2(
        double gustSpeedMPerS, Exposure exposure, double heightM, double directionalityFactor, double topographicFactor = 1)
    {
        Require.InRange(gustSpeedMPerS, 10, 100, nameof(gustSpeedMPerS));
        return 0.613 * Asce7ExposureCoefficient(exposure, heightM) * Require.InRange(topographicFactor, 1, 3, nameof(topographicFactor))
            * Require.InRange(directionalityFactor, 0.85, 1, nameof(directionalityFactor)) * gustSpeedMPerS * gustSpeedMPerS;
    }

    /// <summary>
    /// Characteristic pressure of a lighting column, N/m2: EN 40-3-1:2013, q(z) = delta beta f ce(z) q(10), with the size factor
    /// delta = 1 - 0.01 h and q(10) = 0.5 rho Cs^2 vref^2. EN 40 does not cover solar modules as attachments: a solar pole needs its own calculation.
    /// </summary>
    /// <param name="referenceSpeedMPerS">vref, 10-minute mean at 10 m, 50 years, m/s.</param>
    /// <param name="returnFactor">Factor on the pressure for another return period, 0.8 to 1; 0.92 for 25 years.</param>
    /// <param name="terrain">Terrain category.</param>
    /// <param name="heightM">Height above ground, m.</param>
    /// <param name="columnHeightM">Nominal height h of the column, m, 3 to 20.</param>
    /// <param name="dynamicFactor">beta, by the column's period, 1 to 2.</param>
    /// <param name="topographyFactor">f, 1 to 2.</param>
    /// <returns>N/m2. Check value: q(10) at 30 m/s and 0.92 is 517.5 N/m2.</returns>
    public static double En40PressureNPerM2(
        double referenceSpeedMPerS,
        double returnFactor,
        Terrain terrain,
        double heightM,
        double columnHeightM,
        double dynamicFactor,
        double topographyFactor = 1)
    {
        var size = En40SizeFactor(columnHeightM);
        var reference = VelocityPressureNPerM2(referenceSpeedMPerS, AirKgPerM3) * Require.InRange(returnFactor, 0.8, 1, nameof(returnFactor));
        return size * Require.InRange(dynamicFactor, 1, 2, nameof(dynamicFactor)) * Require.InRange(topographyFactor, 1, 2, nameof(topographyFactor))
            * ExposureFactor(terrain, heightM) * reference;
    }

    /// <summary>Size factor of EN 40-3-1:2013: 1 - 0.01 h.</summary>
    /// <param name="columnHeightM">Nominal height, m, 3 to 20.</param>
    /// <returns>Factor. Check value: 6 m gives 0.94.</returns>
    public static double En40SizeFactor(double columnHeightM) => 1 - 0.01 * Require.InRange(columnHeightM, 3, 20, nameof(columnHeightM));
}
