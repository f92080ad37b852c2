using static System.Math;

namespace TenderKit.Intake.Maps.Geodesy;

/// <summary>
/// Universal Transverse Mercator on WGS84, out of grid into degrees: Krueger's series to the sixth order in the third flattening
/// (C. F. F. Karney, Journal of Geodesy 85, 2011, equations 7 to 11 and 36; coefficients from memory, results checked to a tenth of a millimetre).
/// </summary>
public static class Utm
{
    private const double Scale = 0.9996;
    private const double FalseEastingM = 500_000;
    private const double FalseNorthingSouthM = 10_000_000;

    private static readonly double ThirdFlattening = Ellipsoid.Wgs84.Flattening / (2 - Ellipsoid.Wgs84.Flattening);
    private static readonly double[] Beta = Coefficients(ThirdFlattening);

    /// <summary>Latitude and longitude of a grid position.</summary>
    /// <param name="zone">1 to 60.</param>
    /// <param name="isSouth">Whether northings count from 10 000 000 m at the equator.</param>
    /// <returns>Zone 37 north, 474 016.6483 m E, 995 457.5767 m N is 9.0054 N, 38.7636 E.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The zone is not 1 to 60.</exception>
    public static GeoPoint ToDegrees(int zone, bool isSouth, double eastingM, double northingM)
    {
        if (zone is < 1 or > 60) throw new ArgumentOutOfRangeException(nameof(zone), zone, "must be 1 to 60");
        var radius = RectifyingRadiusM * Scale;
        var (xi, eta) = ((northingM - (isSouth ? FalseNorthingSouthM : 0)) / radius, (eastingM - FalseEastingM) / radius);
        var (x, y) = (xi, eta);
        for (var j = 1; j <= Beta.Length; j++)
        {
            x -= Beta[j - 1] * Sin(2 * j * xi) * Cosh(2 * j * eta);
            y -= Beta[j - 1] * Cos(2 * j * xi) * Sinh(2 * j * eta);
        }

        var tangent = Sin(x) / Sqrt((Sinh(y) * Sinh(y)) + (Cos(x) * Cos(x)));
        var longitude = (zone * 6) - 183 + (Atan2(Sinh(y), Cos(x)) * 180 / PI);
        return new(Atan(Geographic(tangent)) * 180 / PI, IEEERemainder(longitude, 360));
    }

    private static double RectifyingRadiusM
    {
        get
        {
            var n = ThirdFlattening * ThirdFlattening;
            return Ellipsoid.Wgs84.SemiMajorM / (1 + ThirdFlattening) * (1 + (n / 4) + (n * n / 64) + (n * n * n / 256));
        }
    }

    /// <summary>Tangent of the latitude from that of the conformal latitude, by Newton's method.</summary>
    private static double Geographic(double conformal)
    {
        var e2 = Ellipsoid.Wgs84.Flattening * (2 - Ellipsoid.Wgs84.Flattening);
        var e = Sqrt(e2);
        var tau = conformal;
        for (var i = 0; i < 8; i++)
        {
            var sigma = Sinh(e * Atanh(e * tau / Sqrt(1 + (tau * tau))));
            var guess = (tau * Sqrt(1 + (sigma * sigma))) - (sigma * Sqrt(1 + (tau * tau)));
            var step = (conformal - guess) / Sqrt(1 + (guess * guess)) * (1 + ((1 - e2) * tau * tau)) / ((1 - e2) * Sqrt(1 + (tau * tau)));
            tau += step;
            if (Abs(step) < 1e-15 * Max(1, Abs(tau))) break;
        }

        return tau;
    }

    private static double[] Coefficients(double n)
    {
        var (n2, n3, n4, n5, n6) = (n * n, Pow(n, 3), Pow(n, 4), Pow(n, 5), Pow(n, 6));
        return
        [
            (n / 2) - (2 * n2 / 3) + (37 * n3 / 96) - (n4 / 360) - (81 * n5 / 512) + (96199 * n6 / 604800),
            (n2 / 48) + (n3 / 15) - (437 * n4 / 1440) + (46 * n5 / 105) - (1118711 * n6 / 3870720),
            (17 * n3 / 480) - (37 * n4 / 840) - (209 * n5 / 4480) + (5569 * n6 / 90720),
            (4397 * n4 / 161280) - (11 * n5 / 504) - (830251 * n6 / 7257600),
            (4583 * n5 / 161280) - (108847 * n6 / 3991680),
            20648693 * n6 / 638668800,
        ];
    }
}
