using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Ratio of monthly mean daily irradiation on a tilted plane of any azimuth to that on the horizontal:
/// Klein and Theilacker, J. Solar Energy Engineering 103 (1981) 29; D&amp;B eq. 2.20.4 and 2.20.5 (isotropic sky).
/// </summary>
/// <remarks>
/// As printed the formula takes the hourly ratio rt of Collares-Pereira and Rabl, whose day adds up to 0.991 to 1.003 and not to 1: a level plane then gets
/// that much of the horizontal (0.995 at 43 N in January). <see cref="WholeBeamRatio"/> scales rt to a whole day, so that a level plane gets the horizontal exactly.
/// </remarks>
public static class KleinTheilacker
{
    private const double PoleGuardDegrees = 89.5;

    /// <summary>R, tilted over horizontal, fraction. Check value: Madison 43 N, tilt 60 south, January, ground 0.7: 2.037 (D&amp;B example 2.20.1, recomputed).</summary>
    /// <param name="diffuseFraction">Monthly diffuse over global, fraction.</param>
    /// <param name="albedo">Ground reflectance, fraction.</param>
    public static double Ratio(double latitudeDegrees, double declinationRad, PlaneOrientation plane, double diffuseFraction, double albedo)
    {
        var cosTilt = Angle.CosDegrees(plane.TiltDegrees);
        return BeamRatio(latitudeDegrees, declinationRad, plane, diffuseFraction)
            + diffuseFraction * (1 + cosTilt) / 2 + albedo * (1 - cosTilt) / 2;
    }

    /// <summary>D, beam on the plane over global on the horizontal, fraction, as printed.</summary>
    public static double BeamRatio(double latitudeDegrees, double declinationRad, PlaneOrientation plane, double diffuseFraction) =>
        BeamRatio(latitudeDegrees, declinationRad, plane, diffuseFraction, false);

    /// <summary>Beam on the plane over global on the horizontal, fraction, with rt scaled to a whole day. Check value: 1 less the diffuse fraction at zero tilt.</summary>
    public static double WholeBeamRatio(double latitudeDegrees, double declinationRad, PlaneOrientation plane, double diffuseFraction) =>
        BeamRatio(latitudeDegrees, declinationRad, plane, diffuseFraction, true);

    private static double BeamRatio(double latitudeDegrees, double declinationRad, PlaneOrientation plane, double diffuseFraction, bool isWhole)
    {
        // Written for the northern hemisphere, azimuth 0 to the equator and west positive; the south is its mirror.
        var south = latitudeDegrees < 0;
        var lat = Angle.ToRad(Math.Min(Math.Abs(latitudeDegrees), PoleGuardDegrees));
        var delta = south ? -declinationRad : declinationRad;
        var azimuth = Angle.ToRad(south ? -plane.AzimuthDegrees : plane.AzimuthDegrees - 180);
        var ws = SunGeometry.SunsetHourAngleRad(Angle.ToDegrees(lat), delta);
        if (ws < 1e-6) return 0;
        var day = isWhole ? HourlyRatios.GlobalIntegral(ws) : 1;
        return BeamRatio(lat, delta, Angle.ToRad(plane.TiltDegrees), azimuth, ws, diffuseFraction, day);
    }

    private static double BeamRatio(double lat, double delta, double tilt, double azimuth, double ws, double diffuseFraction, double day)
    {
        var a = Math.Cos(tilt) + Math.Tan(lat) * Math.Cos(azimuth) * Math.Sin(tilt);
        var b = Math.Cos(ws) * Math.Cos(tilt) + Math.Tan(delta) * Math.Sin(tilt) * Math.Cos(azimuth);
        if (ws >= Math.PI) b = -Math.Tan(lat) * Math.Tan(delta) * Math.Cos(tilt) + Math.Tan(delta) * Math.Sin(tilt) * Math.Cos(azimuth);
        var c = Math.Sin(tilt) * Math.Sin(azimuth) / Math.Cos(lat);
        return LitSum(new DayIntegral(a, b, c, ws, diffuseFraction, day), Math.Atan2(c, a), Math.Sqrt(a * a + c * c), b, ws);
    }

    /// <summary>
    /// The plane sees the sun while A cos w + C sin w &gt; B, that is within arccos(B / R) of the hour angle atan2(C, A); up to two such spells
    /// lie in one day. This form of the limits holds for every azimuth; the sign rule printed with the formula misses some planes facing away from the equator.
    /// </summary>
    private static double LitSum(DayIntegral day, double middle, double amplitude, double b, double ws)
    {
        if (b >= amplitude) return 0;
        if (b <= -amplitude) return Math.Max(0, day.Between(ws, -ws));
        var half = Math.Acos(b / amplitude);
        var sum = 0.0;
        for (var turn = -1; turn <= 1; turn++)
        {
            var from = Math.Max(-ws, middle - half + 2 * Math.PI * turn);
            var to = Math.Min(ws, middle + half + 2 * Math.PI * turn);
            if (to > from) sum += day.Between(to, from);
        }

        return Math.Max(0, sum);
    }

    private readonly struct DayIntegral(double a, double b, double c, double ws, double diffuseFraction, double day)
    {
        /// <summary>G(w1, w2) of D&amp;B eq. 2.20.5d.</summary>
        public double Between(double w1, double w2)
        {
            var (ca, cb) = HourlyRatios.GlobalCoefficients(ws);
            (ca, cb) = (ca / day, cb / day);
            var prime = ca - diffuseFraction;
            var d = Math.Sin(ws) - ws * Math.Cos(ws);
            var (s1, s2, c1, c2) = (Math.Sin(w1), Math.Sin(w2), Math.Cos(w1), Math.Cos(w2));
            return 1 / (2 * d) * (
                (cb * a / 2 - prime * b) * (w1 - w2)
                + (prime * a - cb * b) * (s1 - s2)
                - prime * c * (c1 - c2)
                + cb * a / 2 * (s1 * c1 - s2 * c2)
                + cb * c / 2 * (s1 * s1 - s2 * s2));
        }
    }
}
