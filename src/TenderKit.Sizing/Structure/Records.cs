using System.Collections.Immutable;

namespace TenderKit.Sizing.Structure;

/// <summary>Terrain category of EN 1991-1-4.</summary>
public enum Terrain
{
    Zero,
    I,
    II,
    III,
    IV,
}

/// <summary>A tapered round steel tube.</summary>
/// <param name="HeightM">Above ground, m.</param>
/// <param name="BaseDiameterMm">Outer diameter at the base, mm.</param>
/// <param name="TopDiameterMm">Outer diameter at the top, mm.</param>
/// <param name="WallMm">Wall thickness, mm.</param>
/// <param name="YieldMPa">Yield strength, MPa.</param>
public sealed record PoleShaft(double HeightM, double BaseDiameterMm, double TopDiameterMm, double WallMm, double YieldMPa);

/// <summary>Something on the pole that catches wind.</summary>
/// <param name="Name">As printed.</param>
/// <param name="AreaM2">Area seen by the wind, m2.</param>
/// <param name="ForceCoefficient">Force coefficient, 0.3 to 2.</param>
/// <param name="HeightM">Centre above ground, m.</param>
public sealed record WindItem(string Name, double AreaM2, double ForceCoefficient, double HeightM);

/// <summary>Force of one item, N, and its height, m.</summary>
public sealed record WindForce(string Name, double ForceN, double HeightM)
{
    public double MomentNm => ForceN * HeightM;
}

/// <summary>Characteristic loads at the pole base and the checks of the shaft.</summary>
/// <param name="Forces">The shaft first, then the items in the order given.</param>
/// <param name="BaseShearN">Sum of the forces, N.</param>
/// <param name="BaseMomentNm">Sum of the forces times their heights, Nm.</param>
/// <param name="BaseStressMPa">Bending stress at the base, MPa.</param>
/// <param name="HeadDeflectionM">Horizontal deflection of the shaft's top, m.</param>
public sealed record PoleLoad(
    ImmutableArray<WindForce> Forces, double BaseShearN, double BaseMomentNm, double BaseStressMPa, double HeadDeflectionM)
{
    /// <summary>Greatest bending stress anywhere along the shaft, MPa; above the base's where a slender top governs.</summary>
    public double GreatestStressMPa { get; init; }

    /// <summary>Height of <see cref="GreatestStressMPa"/> above ground, m.</summary>
    public double GreatestStressHeightM { get; init; }

    /// <summary>Bending moment and stress from the base to the shaft's top at equal steps.</summary>
    public ImmutableArray<ShaftStation> Stations { get; init; } = [];
}

/// <summary>What the shaft carries at one height.</summary>
/// <param name="HeightM">Above ground, m.</param>
/// <param name="MomentNm">Bending moment, Nm.</param>
/// <param name="StressMPa">Bending stress of the whole tube there, MPa.</param>
public readonly record struct ShaftStation(double HeightM, double MomentNm, double StressMPa);

/// <summary>Soil for the foundation: allowable lateral bearing per metre of depth and allowable bearing pressure.</summary>
public sealed record SoilClass(string Name, double LateralBearingKPaPerM, double BearingKPa);

/// <summary>A concrete block with cast-in anchor bolts.</summary>
public sealed record BlockFoundation(double LengthM, double WidthM, double DepthM);

/// <summary>Overturning check of a block: resisting over overturning moment, and the ground pressure.</summary>
public sealed record BlockResult(double OverturningSafetyFactor, double GroundPressureKPa, double ConcreteM3, double ExcavationM3)
{
    /// <summary>Soil filled back beside the block, m3.</summary>
    public double BackfillM3 { get; init; }
}
