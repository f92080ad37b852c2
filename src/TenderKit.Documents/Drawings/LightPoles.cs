using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>A pole in plan: luminaire and foot, m, in the axes of the light grid; no foot when the arm is not known.</summary>
internal readonly record struct PlanPole(double XM, double LuminaireYM, double? FootYM);

/// <summary>Where the poles of a layout stand in plan.</summary>
internal static class LightPoles
{
    /// <summary>Poles of one bay of a road, or of a whole yard.</summary>
    public static IEnumerable<PlanPole> Of(LightSolution light, double? armReachM) =>
        light.Layout is { } road ? OfRoad(road, armReachM) : light.Yard is { } yard ? OfYard(yard, armReachM) : [];

    private static IEnumerable<PlanPole> OfRoad(RoadLayout road, double? reachM)
    {
        yield return Near(0, road.OverhangM, reachM);
        yield return Near(road.SpacingM, road.OverhangM, reachM);
        if (road.Arrangement == Arrangement.Staggered) yield return Far(road.SpacingM / 2, road.WidthM, road.OverhangM, reachM);
        if (road.Arrangement != Arrangement.Opposite) yield break;
        yield return Far(0, road.WidthM, road.OverhangM, reachM);
        yield return Far(road.SpacingM, road.WidthM, road.OverhangM, reachM);
    }

    private static IEnumerable<PlanPole> OfYard(YardLayout yard, double? reachM)
    {
        for (var i = 0; i < yard.PolesPerSide; i++)
        {
            var x = yard.LengthM * (i + 0.5) / yard.PolesPerSide;
            yield return Near(x, yard.OverhangM, reachM);
            if (yard.BothSides) yield return Far(x, yard.WidthM, yard.OverhangM, reachM);
        }
    }

    private static PlanPole Near(double xM, double overhangM, double? reachM) => new(xM, overhangM, overhangM - reachM);

    private static PlanPole Far(double xM, double widthM, double overhangM, double? reachM) => new(xM, widthM - overhangM, widthM - overhangM + reachM);
}
