namespace TenderKit.Sizing.Structure;

/// <summary>Foundations of poles. Screening only: to be checked and signed by a licensed structural engineer under the local code.</summary>
public static class Foundation
{
    /// <summary>Overturning of a block by own weight (concrete and pole), soil at the sides ignored.</summary>
    public static BlockResult Block(BlockFoundation block, double baseShearN, double baseMomentNm, double poleWeightN, double concreteKNPerM3) => throw new NotImplementedException();

    /// <summary>Depth of a nonconstrained embedded pole, m, IBC 1807.3.2.1.</summary>
    /// <param name="lateralForceN">P, N.</param>
    /// <param name="heightM">h, m above ground.</param>
    /// <param name="diameterM">b, m.</param>
    /// <param name="bearingKPaPerM">Allowable lateral soil bearing per metre of depth, kPa/m.</param>
    public static double EmbeddedDepthM(double lateralForceN, double heightM, double diameterM, double bearingKPaPerM) => throw new NotImplementedException();
}
