using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>How slowly a pole sways, and what gusts make of it.</summary>
public static class Sway
{
    /// <summary>Share of a shaft's mass that moves with its head: a prismatic cantilever, 33 / 140 (Rayleigh's quotient); a taper has less.</summary>
    private const double MovingFraction = 33.0 / 140;

    private const int Steps = 40;

    /// <summary>Dynamic factor of steel columns by period, EN 40-3-1: three points of its curve, read within 2 %.</summary>
    private static readonly (double PeriodS, double Factor)[] Read = [(0.13, 1.086), (0.20, 1.14), (0.54, 1.307)];

    /// <summary>
    /// Period of the first sway, s: 2 pi sqrt(m / k) with k = 1 / integral of (H - z)^2 / (E I) by Simpson's rule and m the head and
    /// 33 / 140 of the shaft. Rigid ground.
    /// </summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="headKg">What sits on the head, kg.</param>
    /// <returns>s. Check value: 6 m, 120 x 4 mm straight, no head: 0.30 s, the closed form.</returns>
    public static double PeriodS(PoleShaft shaft, double headKg)
    {
        var softnessMPerN = 0.0;
        for (var i = 0; i <= Steps; i++)
        {
            var heightM = Math.Min(shaft.HeightM * i / Steps, shaft.HeightM);
            var stiffnessNm2 = Tube.SteelElasticityMPa * Tube.SecondMomentMm4(Tube.DiameterMm(shaft, heightM), shaft.WallMm) * 1e-6;
            var weight = i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2;
            softnessMPerN += weight * Math.Pow(shaft.HeightM - heightM, 2) / stiffnessNm2;
        }

        softnessMPerN *= shaft.HeightM / Steps / 3;
        return 2 * Math.PI * Math.Sqrt((Require.NotNegative(headKg, nameof(headKg)) + MovingFraction * Tube.ShaftKg(shaft)) * softnessMPerN);
    }

    /// <summary>
    /// Dynamic factor beta of EN 40-3-1 for steel: straight lines through three points read from its curve, 1.086 at 0.13 s, 1.14 at 0.20 s,
    /// 1.307 at 0.54 s; below and beyond them the outer lines go on (own choice), between 1 and 2.
    /// </summary>
    /// <param name="periodS">Period, 0 to 10 s.</param>
    /// <returns>Factor. Check value: 0.20 s gives 1.14.</returns>
    public static double DynamicFactor(double periodS)
    {
        var from = Require.InRange(periodS, 0, 10, nameof(periodS)) < Read[1].PeriodS ? 0 : 1;
        var (a, b) = (Read[from], Read[from + 1]);
        return Math.Clamp(a.Factor + (b.Factor - a.Factor) * (periodS - a.PeriodS) / (b.PeriodS - a.PeriodS), 1, 2);
    }
}
