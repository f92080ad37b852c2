using System.Collections.Immutable;

namespace TenderKit.Sizing.Lighting;

/// <summary>Where the poles of a road stand.</summary>
public enum Arrangement
{
    SingleSided,
    Staggered,
    Opposite,
}

/// <summary>One luminaire in space. x runs along the road, y across it away from the pole side, z up; metres and degrees.</summary>
/// <param name="XM">Photometric centre along the road, m.</param>
/// <param name="YM">Photometric centre across the road, m.</param>
/// <param name="HeightM">Mounting height of the photometric centre above the lit plane, m.</param>
/// <param name="FacingDegrees">Direction of the street side (C 90), degrees from +x towards +y; 90 looks across the road.</param>
/// <param name="TiltDegrees">Tilt of the street side upwards, degrees; applied by turning the luminaire's frame.</param>
public readonly record struct LuminairePosition(double XM, double YM, double HeightM, double FacingDegrees, double TiltDegrees);

/// <summary>A straight road or path, lit by equal luminaires at equal spacing.</summary>
/// <param name="WidthM">Width of the lit strip, m, 0.5 to 40.</param>
/// <param name="SpacingM">Spacing along one side, m, 2 to 120.</param>
/// <param name="MountingHeightM">Mounting height, m, 2 to 20.</param>
/// <param name="OverhangM">Photometric centre beyond the near edge, m; negative when set back, -5 to 5.</param>
/// <param name="TiltDegrees">Tilt, degrees, 0 to 45.</param>
/// <param name="Arrangement">Where the poles stand.</param>
public sealed record RoadLayout(
    double WidthM, double SpacingM, double MountingHeightM, double OverhangM, double TiltDegrees, Arrangement Arrangement);

/// <summary>A rectangular yard lit from poles along one long side or both.</summary>
/// <param name="LengthM">Long side, m.</param>
/// <param name="WidthM">Short side, m.</param>
/// <param name="PolesPerSide">Poles on each lit side, evenly spread from half a bay.</param>
/// <param name="BothSides">Poles on both long sides (facing each other) or on one.</param>
public sealed record YardLayout(
    double LengthM, double WidthM, int PolesPerSide, bool BothSides, double MountingHeightM, double OverhangM, double TiltDegrees);

/// <summary>What a class asks of the maintained illuminance.</summary>
/// <param name="Name">Name as printed, e.g. "P4".</param>
/// <param name="AverageLx">Least maintained average, lx.</param>
/// <param name="MinimumLx">Least maintained minimum, lx, or null.</param>
/// <param name="OverallUniformity">Least Uo = Emin / Eav, fraction, or null.</param>
/// <param name="AverageCeilingLx">Greatest maintained average, lx, or null.</param>
/// <param name="Source">Standard and table.</param>
public sealed record LightTarget(
    string Name, double AverageLx, double? MinimumLx, double? OverallUniformity, double? AverageCeilingLx, string Source);

/// <summary>Illuminance at one grid point.</summary>
public readonly record struct LightPoint(double XM, double YM, double IlluminanceLx);

/// <summary>Maintained illuminance over a grid: points row by row (y outer, x inner).</summary>
public sealed record LightResult(
    double AverageLx, double MinimumLx, double MaximumLx, int PointsAlong, int PointsAcross, ImmutableArray<LightPoint> Points)
{
    /// <summary>Uo = Emin / Eav, fraction.</summary>
    public double OverallUniformity => AverageLx > 0 ? MinimumLx / AverageLx : 0;
}

/// <summary>A layout that meets a target (or the nearest miss when <see cref="Met"/> is false).</summary>
/// <param name="SpacingM">Spacing along one side, m (for a yard: length / poles per side).</param>
/// <param name="Layout">The road layout, or null for a yard.</param>
/// <param name="Yard">The yard layout, or null for a road.</param>
/// <param name="LevelFraction">Level the luminaire is run at so as not to over-light, fraction of full output, above 0 to 1.</param>
/// <param name="Result">Maintained illuminance at that level.</param>
/// <param name="Met">Whether every limit of the target is met.</param>
/// <param name="GoverningLimit">Which limit stops a wider spacing, in words, e.g. "minimum illuminance".</param>
public sealed record LightSolution(
    double SpacingM, RoadLayout? Layout, YardLayout? Yard, double LevelFraction, LightResult Result, bool Met, string GoverningLimit)
{
    /// <summary>
    /// The area as drawn and where its poles stand, or null; with it, <see cref="Yard"/> holds the heights, the upright rectangle round the area and
    /// all poles as one side, and the spacing is the mean distance from a pole to the nearest other.
    /// </summary>
    public AreaLayout? Area { get; init; }
}

/// <summary>Poles of a drawn area.</summary>
/// <param name="Luminaires">Photometric centres, each facing its part of the area.</param>
/// <param name="ReachM">From the pole to the photometric centre, m.</param>
public sealed record AreaLayout(Area Area, ImmutableArray<LuminairePosition> Luminaires, double ReachM)
{
    /// <summary>Foot of the pole of a luminaire.</summary>
    public PlanPoint FootOf(LuminairePosition luminaire) => AreaPlacement.Foot(luminaire, ReachM);
}
