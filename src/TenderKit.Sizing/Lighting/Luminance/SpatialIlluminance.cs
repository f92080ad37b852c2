using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Illuminance on surfaces other than the ground, from one luminaire. epsilon is the angle of incidence from the vertical, alpha the angle in
/// plan between the normal of the (flat or semicylindrical) surface and the direction to the luminaire, the height that of the luminaire above
/// the point. Unit: lx. Source: EN 13201-3:2015, 7.2 to 7.4 (formulas from memory; each agrees with the definition of illuminance).
/// </summary>
public static class SpatialIlluminance
{
    /// <summary>Height of faces, m, for vertical and semicylindrical illuminance (EN 13201-3:2015, clause 7; from memory).</summary>
    public const double FaceHeightM = 1.5;

    /// <summary>Ev = I sin(e) cos^2(e) cos(alpha) / h^2, nothing from behind. Check: 1000 cd, h 3 m, e 45 degrees, alpha 0: 39.28 lx.</summary>
    public static double VerticalLx(double intensityCd, double heightM, double epsilonDegrees, double alphaDegrees)
    {
        CheckDirection(heightM, epsilonDegrees);
        var facing = Math.Max(0, Angle.CosDegrees(alphaDegrees));
        return intensityCd * Angle.SinDegrees(epsilonDegrees) * Squared(Angle.CosDegrees(epsilonDegrees)) * facing / Squared(heightM);
    }

    /// <summary>Esc = I (1 + cos(alpha)) cos^2(e) sin(e) / (pi h^2). Check: 1000 cd, h 3 m, e 45 degrees, alpha 0: 25.01 lx.</summary>
    public static double SemicylindricalLx(double intensityCd, double heightM, double epsilonDegrees, double alphaDegrees)
    {
        CheckDirection(heightM, epsilonDegrees);
        var facing = 1 + Angle.CosDegrees(alphaDegrees);
        return intensityCd * facing * Squared(Angle.CosDegrees(epsilonDegrees)) * Angle.SinDegrees(epsilonDegrees) / (Math.PI * Squared(heightM));
    }

    /// <summary>Ehs = I cos^2(e) (1 + cos(e)) / (4 h^2), on the ground. Check: 1000 cd, h 3 m, e 0: 55.56 lx, half the horizontal 111.1 lx.</summary>
    public static double HemisphericalLx(double intensityCd, double heightM, double epsilonDegrees)
    {
        CheckDirection(heightM, epsilonDegrees);
        var cos = Angle.CosDegrees(epsilonDegrees);
        return intensityCd * Squared(cos) * (1 + cos) / (4 * Squared(heightM));
    }

    private static void CheckDirection(double heightM, double epsilonDegrees)
    {
        Require.Positive(heightM, nameof(heightM));
        Require.InRange(epsilonDegrees, 0, 90, nameof(epsilonDegrees));
    }

    private static double Squared(double value) => value * value;
}
