using MathNet.Numerics.RootFinding;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Foundations of poles. Screening only: to be checked and signed by a licensed structural engineer under the local code.</summary>
public static class Foundation
{
    /// <summary>Unit weight of water, kN/m3: EN 1991-1-1 practice.</summary>
    public const double WaterKNPerM3 = 9.81;

    /// <summary>Depth beyond which IBC 1807.3.2 lets lateral bearing grow no more, m: 12 ft.</summary>
    public const double DeepestBearingM = 3.6576;

    /// <summary>
    /// Overturning of a block by own weight (concrete and pole), soil at the sides ignored: resisting N B / 2 over M + V D about the
    /// toe of the shorter side; ground pressure N / A (1 + 6 e / B) while e is at most B / 6, else 2 N / (3 L (B / 2 - e)). Statics of a rigid block.
    /// </summary>
    /// <param name="block">The block, its top at ground level.</param>
    /// <param name="baseShearN">Shear at the pole base, N.</param>
    /// <param name="baseMomentNm">Moment at the pole base, Nm.</param>
    /// <param name="poleWeightN">Weight of pole and everything on it, N.</param>
    /// <param name="concreteKNPerM3">Unit weight of the concrete, 18 to 26 kN/m3.</param>
    /// <returns>
    /// Safety factor (infinite without load), greatest ground pressure (infinite when it overturns), concrete and net excavation. Check
    /// value: 1.2 x 1.2 x 1.2 m, 2 kN, 10 kNm, 1.5 kN, 24 kN/m3: 2.08.
    /// </returns>
    public static BlockResult Block(BlockFoundation block, double baseShearN, double baseMomentNm, double poleWeightN, double concreteKNPerM3) =>
        Block(block, baseShearN, baseMomentNm, poleWeightN, concreteKNPerM3, submerged: false);

    /// <summary>As the other overload; a submerged block (flood, high ground water) weighs 9.81 kN/m3 less.</summary>
    public static BlockResult Block(
        BlockFoundation block, double baseShearN, double baseMomentNm, double poleWeightN, double concreteKNPerM3, bool submerged)
    {
        var volume = Require.Positive(block.LengthM, nameof(block.LengthM)) * Require.Positive(block.WidthM, nameof(block.WidthM))
            * Require.Positive(block.DepthM, nameof(block.DepthM));
        var unitKN = Require.InRange(concreteKNPerM3, 18, 26, nameof(concreteKNPerM3)) - (submerged ? WaterKNPerM3 : 0);
        var weightN = volume * unitKN * 1000 + Require.NotNegative(poleWeightN, nameof(poleWeightN));
        var shorterM = Math.Min(block.LengthM, block.WidthM);
        var overturningNm = Require.NotNegative(baseMomentNm, nameof(baseMomentNm))
            + Require.NotNegative(baseShearN, nameof(baseShearN)) * block.DepthM;
        var pressurePa = GroundPressurePa(weightN, overturningNm, Math.Max(block.LengthM, block.WidthM), shorterM);
        return new(weightN * shorterM / 2 / overturningNm, pressurePa / 1000, volume, volume);
    }

    /// <summary>
    /// Depth of a nonconstrained embedded pole, m, IBC 1807.3.2.1: d = A / 2 (1 + sqrt(1 + 4.36 h / A)), A = 2.34 P / (S1 b), S1 the
    /// lateral bearing at d / 3 (growing no further than at 12 ft).
    /// </summary>
    /// <param name="lateralForceN">P, N.</param>
    /// <param name="heightM">h, m above ground.</param>
    /// <param name="diameterM">b, m.</param>
    /// <param name="bearingKPaPerM">Allowable lateral soil bearing per metre of depth, kPa/m.</param>
    /// <returns>m. Check value: 510 lb, 4 ft, 1 ft, 266 psf/ft: 5.02 ft.</returns>
    public static double EmbeddedDepthM(double lateralForceN, double heightM, double diameterM, double bearingKPaPerM)
    {
        RequireEmbedded(lateralForceN, heightM, diameterM, bearingKPaPerM);
        return Brent.FindRoot(d => d - NeededM(d), 1e-3, 1000, 1e-9, 200);

        double NeededM(double d)
        {
            var bearingPa = bearingKPaPerM * 1000 * Math.Min(d, DeepestBearingM) / 3;
            var a = 2.34 * lateralForceN / (bearingPa * diameterM);
            return a / 2 * (1 + Math.Sqrt(1 + 4.36 * heightM / a));
        }
    }

    /// <summary>
    /// Depth of an embedded pole held at the surface by rigid paving, m, IBC 1807.3.2.2: d = sqrt(4.25 P h / (S3 b)), S3 the lateral
    /// bearing at d (growing no further than at 12 ft).
    /// </summary>
    /// <param name="lateralForceN">P, N.</param>
    /// <param name="heightM">h, m above ground.</param>
    /// <param name="diameterM">b, m.</param>
    /// <param name="bearingKPaPerM">Allowable lateral soil bearing per metre of depth, kPa/m.</param>
    /// <returns>m. Check value: 510 lb, 4 ft, 1 ft, 266 psf/ft: 3.19 ft.</returns>
    public static double ConstrainedDepthM(double lateralForceN, double heightM, double diameterM, double bearingKPaPerM)
    {
        RequireEmbedded(lateralForceN, heightM, diameterM, bearingKPaPerM);
        var demand = 4.25 * lateralForceN * heightM / (bearingKPaPerM * 1000 * diameterM);
        var depthM = Math.Cbrt(demand);
        return depthM <= DeepestBearingM ? depthM : Math.Sqrt(demand / DeepestBearingM);
    }

    /// <summary>
    /// Planting depth of a column by its nominal height, m: EN 40-2 (from memory, to be confirmed); heights between take the next one
    /// up.
    /// </summary>
    /// <param name="nominalHeightM">Nominal height, m, above 0 to 12.</param>
    /// <returns>m. Check value: 6 m gives 1.0 m.</returns>
    public static double PlantingDepthM(double nominalHeightM) => Require.Positive(nominalHeightM, nameof(nominalHeightM)) switch
    {
        <= 3 => 0.6,
        <= 5 => 0.8,
        <= 6 => 1.0,
        <= 8 => 1.2,
        <= 10 => 1.5,
        <= 12 => 1.7,
        _ => throw new ArgumentOutOfRangeException(nameof(nominalHeightM), nominalHeightM, "must be 12 m or less"),
    };

    private static double GroundPressurePa(double weightN, double momentNm, double lengthM, double shorterM)
    {
        var eccentricityM = momentNm / weightN;
        if (eccentricityM >= shorterM / 2) return double.PositiveInfinity;
        return eccentricityM <= shorterM / 6
            ? weightN / (lengthM * shorterM) * (1 + 6 * eccentricityM / shorterM)
            : 2 * weightN / (3 * lengthM * (shorterM / 2 - eccentricityM));
    }

    private static void RequireEmbedded(double lateralForceN, double heightM, double diameterM, double bearingKPaPerM)
    {
        Require.Positive(lateralForceN, nameof(lateralForceN));
        Require.NotNegative(heightM, nameof(heightM));
        Require.Positive(diameterM, nameof(diameterM));
        Require.Positive(bearingKPaPerM, nameof(bearingKPaPerM));
    }
}
