namespace TenderKit.Sizing.Lighting;

/// <summary>Maintained horizontal illuminance, point by point.</summary>
public static class Illuminance
{
    public static LightResult OnRoad(LightDistribution distribution, RoadLayout layout, double maintenanceFactor) => throw new NotImplementedException();

    public static LightResult OnYard(LightDistribution distribution, YardLayout layout, double maintenanceFactor) => throw new NotImplementedException();
}
