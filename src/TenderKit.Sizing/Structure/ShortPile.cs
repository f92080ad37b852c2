using MathNet.Numerics.RootFinding;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Ultimate lateral resistance of a short pile.</summary>
/// <param name="UltimateForceN">Ultimate horizontal force at its height, N; divide by 2 to 3.</param>
/// <param name="ZeroShearDepthM">f, depth of zero shear below 1.5 D, m.</param>
/// <param name="GreatestMomentNm">Greatest moment in the pile at that force, Nm.</param>
public sealed record ShortPileResult(double UltimateForceN, double ZeroShearDepthM, double GreatestMomentNm);

/// <summary>Short free-headed piles after Broms (1964); ultimate values, to be divided by 2 to 3. Screening only.</summary>
public static class ShortPile
{
    /// <summary>
    /// In cohesive soil, Broms (1964), Journal of the Soil Mechanics and Foundations Division 90 SM2: f = H / (9 cu D), L = 1.5 D + f + g,
    /// H (e + 1.5 D + 0.5 f) = 2.25 cu D g^2.
    /// </summary>
    /// <param name="undrainedKPa">cu, kPa.</param>
    /// <param name="diameterM">D, m.</param>
    /// <param name="lengthM">L, embedded length, m, above 1.5 D.</param>
    /// <param name="forceHeightM">e, height of the force above ground, m.</param>
    /// <returns>Check value: 50 kPa, 0.5 m, 2.0 m, 6 m: 11.90 kN, 0.053 m, 80.6 kNm.</returns>
    public static ShortPileResult InClay(double undrainedKPa, double diameterM, double lengthM, double forceHeightM)
    {
        Require.Positive(undrainedKPa, nameof(undrainedKPa));
        Require.Positive(diameterM, nameof(diameterM));
        Require.InRange(lengthM, 1.5 * diameterM, 100, nameof(lengthM));
        Require.NotNegative(forceHeightM, nameof(forceHeightM));
        var perMetreN = 9 * undrainedKPa * 1000 * diameterM;
        var free = lengthM - 1.5 * diameterM;
        var f = Brent.FindRoot(Imbalance, 0, free, 1e-12, 200);
        return new(perMetreN * f, f, perMetreN * f * Arm(f));

        double Arm(double x) => forceHeightM + 1.5 * diameterM + 0.5 * x;
        double Imbalance(double x) => x * Arm(x) - 0.25 * (free - x) * (free - x);
    }

    /// <summary>
    /// In cohesionless soil, Broms (1964), Journal of the Soil Mechanics and Foundations Division 90 SM3: H = 0.5 gamma D L^3 Kp / (e +
    /// L), Kp = (1 + sin phi) / (1 - sin phi).
    /// </summary>
    /// <param name="soilKNPerM3">gamma, kN/m3; the submerged weight below water.</param>
    /// <param name="frictionDegrees">phi, degrees, 0 to 45.</param>
    /// <param name="diameterM">D, m.</param>
    /// <param name="lengthM">L, embedded length, m.</param>
    /// <param name="forceHeightM">e, height of the force above ground, m.</param>
    /// <returns>N. Check value: 18 kN/m3, 30 degrees, 0.5 m, 2 m, 6 m: 13.50 kN.</returns>
    public static double InSandN(double soilKNPerM3, double frictionDegrees, double diameterM, double lengthM, double forceHeightM)
    {
        var sin = Angle.SinDegrees(Require.InRange(frictionDegrees, 0, 45, nameof(frictionDegrees)));
        return 0.5 * Require.Positive(soilKNPerM3, nameof(soilKNPerM3)) * 1000 * Require.Positive(diameterM, nameof(diameterM))
            * Math.Pow(Require.Positive(lengthM, nameof(lengthM)), 3) * (1 + sin) / (1 - sin)
            / (Require.NotNegative(forceHeightM, nameof(forceHeightM)) + lengthM);
    }
}
