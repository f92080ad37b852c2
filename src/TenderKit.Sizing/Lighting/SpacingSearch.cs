namespace TenderKit.Sizing.Lighting;

/// <summary>Bounds of the search for the widest spacing.</summary>
/// <param name="StepM">Step of the search, m.</param>
/// <param name="MinSpacingToHeight">Least spacing as a multiple of mounting height.</param>
/// <param name="MaxSpacingToHeight">Greatest spacing as a multiple of mounting height.</param>
/// <param name="LeastLevelFraction">Lowest level the driver can be dimmed to, fraction; 1 when it cannot.</param>
public sealed record SpacingBounds(double StepM, double MinSpacingToHeight, double MaxSpacingToHeight, double LeastLevelFraction);

/// <summary>Finds the layout with the fewest poles that meets a target.</summary>
public static class SpacingSearch
{
    /// <summary>Widest spacing of a road or path that meets every limit of the target.</summary>
    /// <param name="shape">Layout whose spacing is ignored.</param>
    public static LightSolution Road(LightDistribution distribution, RoadLayout shape, LightTarget target, double maintenanceFactor, SpacingBounds bounds) => throw new NotImplementedException();

    /// <summary>Fewest poles of a yard that meet every limit of the target, trying one side and both.</summary>
    /// <param name="shape">Layout whose pole counts are ignored.</param>
    public static LightSolution Yard(LightDistribution distribution, YardLayout shape, LightTarget target, double maintenanceFactor, SpacingBounds bounds) => throw new NotImplementedException();

    /// <summary>Level of a given road layout that meets the target without passing its ceiling, for a line with a fixed number of poles.</summary>
    public static LightSolution AtSpacing(LightDistribution distribution, RoadLayout layout, LightTarget target, double maintenanceFactor, SpacingBounds bounds) => throw new NotImplementedException();
}
