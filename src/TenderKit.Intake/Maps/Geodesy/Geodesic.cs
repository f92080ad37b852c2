using static System.Math;

namespace TenderKit.Intake.Maps.Geodesy;

/// <summary>Shortest line between two points.</summary>
/// <param name="AzimuthDegrees">Direction at the first point, clockwise from north, in [0, 360).</param>
public readonly record struct GeodesicLine(double LengthM, double AzimuthDegrees);

/// <summary>Shortest lines on an ellipsoid (T. Vincenty, Survey Review 23 (176), 1975, equations 1 to 15; the formulas are from memory, the results checked).</summary>
public static class Geodesic
{
    private const double Converged = 1e-12;
    private const int MostSteps = 200;

    /// <summary>
    /// Length and direction between two points. Nearly opposite points of the earth, where the iteration does not converge, get
    /// the great circle of the mean radius, right to 0.6 %.
    /// </summary>
    /// <returns>Length in m: (0, 0) to (0, 1 degree) on WGS84 is 111 319.491 m.</returns>
    public static GeodesicLine Between(GeoPoint from, GeoPoint to, Ellipsoid? ellipsoid = null)
    {
        var e = ellipsoid ?? Ellipsoid.Wgs84;
        if (from == to) return new(0, 0);
        var (u1, u2) = (Reduced(from, e), Reduced(to, e));
        var difference = Radians(IEEERemainder(to.LongitudeDegrees - from.LongitudeDegrees, 360));
        var lambda = difference;
        for (var step = 0; step < MostSteps; step++)
        {
            var arc = Arc.Of(u1, u2, lambda);
            if (arc.SinSigma == 0) return new(0, 0);
            var next = difference + arc.Excess(e.Flattening);
            if (Abs(next) > PI) break;
            if (Abs(next - lambda) < Converged) return new(Length(arc, e), Azimuth(u1, u2, next));
            lambda = next;
        }

        return GreatCircle(from, to, e);
    }

    /// <summary>The point at a distance in a direction (direct problem).</summary>
    /// <param name="azimuthDegrees">Clockwise from north.</param>
    public static GeoPoint Along(GeoPoint from, double azimuthDegrees, double lengthM, Ellipsoid? ellipsoid = null)
    {
        var e = ellipsoid ?? Ellipsoid.Wgs84;
        var u1 = Reduced(from, e);
        var (sinA, cosA) = SinCos(Radians(azimuthDegrees));
        var sigma1 = Atan2(Tan(u1), cosA);
        var sinAlpha = Cos(u1) * sinA;
        var squared = (1 - (sinAlpha * sinAlpha)) * SecondEccentricity(e);
        var (a, b) = Series(squared);
        var sigma = lengthM / (e.SemiMinorM * a);
        for (var step = 0; step < MostSteps; step++)
        {
            var cosMean = Cos((2 * sigma1) + sigma);
            var next = (lengthM / (e.SemiMinorM * a)) + DeltaSigma(b, Sin(sigma), Cos(sigma), cosMean);
            if (Abs(next - sigma) < Converged) break;
            sigma = next;
        }

        return End(from, u1, sinA, cosA, sinAlpha, sigma1, sigma, e);
    }

    private static GeoPoint End(GeoPoint from, double u1, double sinA, double cosA, double sinAlpha, double sigma1, double sigma, Ellipsoid e)
    {
        var (sinS, cosS, sinU, cosU) = (Sin(sigma), Cos(sigma), Sin(u1), Cos(u1));
        var across = (sinU * sinS) - (cosU * cosS * cosA);
        var latitude = Atan2((sinU * cosS) + (cosU * sinS * cosA), (1 - e.Flattening) * Sqrt((sinAlpha * sinAlpha) + (across * across)));
        var lambda = Atan2(sinS * sinA, (cosU * cosS) - (sinU * sinS * cosA));
        var cosSquared = 1 - (sinAlpha * sinAlpha);
        var c = e.Flattening / 16 * cosSquared * (4 + (e.Flattening * (4 - (3 * cosSquared))));
        var cosMean = Cos((2 * sigma1) + sigma);
        var longitude = lambda - ((1 - c) * e.Flattening * sinAlpha
            * (sigma + (c * sinS * (cosMean + (c * cosS * (-1 + (2 * cosMean * cosMean)))))));
        return new(Degrees(latitude), IEEERemainder(from.LongitudeDegrees + Degrees(longitude), 360));
    }

    private static double Length(Arc arc, Ellipsoid e)
    {
        var (a, b) = Series(arc.CosSquaredAlpha * SecondEccentricity(e));
        return e.SemiMinorM * a * (arc.Sigma - DeltaSigma(b, arc.SinSigma, arc.CosSigma, arc.CosMean));
    }

    private static double SecondEccentricity(Ellipsoid e) =>
        ((e.SemiMajorM * e.SemiMajorM) - (e.SemiMinorM * e.SemiMinorM)) / (e.SemiMinorM * e.SemiMinorM);

    private static (double A, double B) Series(double u) => (
        1 + (u / 16384 * (4096 + (u * (-768 + (u * (320 - (175 * u))))))),
        u / 1024 * (256 + (u * (-128 + (u * (74 - (47 * u)))))));

    private static double DeltaSigma(double b, double sinS, double cosS, double cosMean) =>
        b * sinS * (cosMean + (b / 4 * ((cosS * (-1 + (2 * cosMean * cosMean)))
            - (b / 6 * cosMean * (-3 + (4 * sinS * sinS)) * (-3 + (4 * cosMean * cosMean))))));

    private static double Azimuth(double u1, double u2, double lambda)
    {
        var azimuth = Degrees(Atan2(Cos(u2) * Sin(lambda), (Cos(u1) * Sin(u2)) - (Sin(u1) * Cos(u2) * Cos(lambda))));
        return azimuth < 0 ? azimuth + 360 : azimuth;
    }

    private static GeodesicLine GreatCircle(GeoPoint from, GeoPoint to, Ellipsoid e)
    {
        var (p1, p2) = (Radians(from.LatitudeDegrees), Radians(to.LatitudeDegrees));
        var (s, t) = (Sin((p2 - p1) / 2), Sin(Radians(to.LongitudeDegrees - from.LongitudeDegrees) / 2));
        var angle = 2 * Asin(Min(1, Sqrt((s * s) + (Cos(p1) * Cos(p2) * t * t))));
        return new(angle * ((2 * e.SemiMajorM) + e.SemiMinorM) / 3, Azimuth(p1, p2, Radians(to.LongitudeDegrees - from.LongitudeDegrees)));
    }

    private static double Reduced(GeoPoint point, Ellipsoid e) => Atan((1 - e.Flattening) * Tan(Radians(point.LatitudeDegrees)));

    private static double Radians(double degrees) => degrees * PI / 180;

    private static double Degrees(double radians) => radians * 180 / PI;

    /// <summary>Quantities of the arc on the auxiliary sphere.</summary>
    private readonly record struct Arc(double SinSigma, double CosSigma, double Sigma, double SinAlpha, double CosSquaredAlpha, double CosMean)
    {
        public static Arc Of(double u1, double u2, double lambda)
        {
            var (across, along) = (Cos(u2) * Sin(lambda), (Cos(u1) * Sin(u2)) - (Sin(u1) * Cos(u2) * Cos(lambda)));
            var sinS = Sqrt((across * across) + (along * along));
            var cosS = (Sin(u1) * Sin(u2)) + (Cos(u1) * Cos(u2) * Cos(lambda));
            var sinAlpha = sinS == 0 ? 0 : Cos(u1) * Cos(u2) * Sin(lambda) / sinS;
            var cosSquared = 1 - (sinAlpha * sinAlpha);
            var cosMean = cosSquared < 1e-16 ? 0 : cosS - (2 * Sin(u1) * Sin(u2) / cosSquared);
            return new(sinS, cosS, Atan2(sinS, cosS), sinAlpha, cosSquared, cosMean);
        }

        public double Excess(double f)
        {
            var c = f / 16 * CosSquaredAlpha * (4 + (f * (4 - (3 * CosSquaredAlpha))));
            return (1 - c) * f * SinAlpha * (Sigma + (c * SinSigma * (CosMean + (c * CosSigma * (-1 + (2 * CosMean * CosMean))))));
        }
    }
}
