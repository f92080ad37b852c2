using System.Collections.Immutable;
using TenderKit.Documents.Light;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Tests.Light;

/// <summary>Distributions and sheets of our own invention; what is calculated from them is calculated by the engineering itself.</summary>
internal static class InventedLight
{
    /// <summary>Two wings along the road, more light to the street side, none at 85 degrees and above.</summary>
    public static LightDistribution Road(double factor = 1) => Of((c, gamma) =>
    {
        if (gamma >= 85) return 0;
        var along = Math.Pow(Math.Cos(c * Math.PI / 180), 2);
        var street = 1 + (0.5 * Math.Sin(c * Math.PI / 180));
        return factor * street * (300 + (900 * along * Math.Exp(-Math.Pow((gamma - 60) / 15, 2)))) * Math.Min(1, (85 - gamma) / 20);
    });

    /// <summary>100 cd in every direction.</summary>
    public static LightDistribution Sphere() => Of((_, _) => 100, 180);

    public static LightSheetContent Sheet(RoadClass? roadClass, bool quality, RoadLayout? layout = null, int lanes = 2)
    {
        var (light, road) = (Road(), layout ?? new RoadLayout(7, 30, 8, 0.5, 5, Arrangement.SingleSided));
        var result = quality ? RoadEvaluation.Of(light, RoadSection.Of(road, lanes, roadClass), RoadSurface.R3, 0.8) : null;
        return new LightSheetContent(
            "Ridge road", "wings.ies", light, PhotometricAnalysis.Of(light), road, 0.8, Illuminance.OnRoad(light, road, 0.8), result, roadClass, "minimum illuminance",
            [Diagnostic.Warning("TK999", "an invented warning"), Diagnostic.Note("TK998", "an invented note")], ArmReachM: 1.2, Lanes: lanes, Surface: "R3");
    }

    private static LightDistribution Of(Func<double, double, double> cd, double lastGamma = 90)
    {
        ImmutableArray<double> planes = [.. Enumerable.Range(0, 25).Select(i => i * 15.0)];
        ImmutableArray<double> gammas = [.. Enumerable.Range(0, (int)(lastGamma / 5) + 1).Select(i => i * 5.0)];
        return new LightDistribution(planes, gammas, [.. planes.SelectMany(c => gammas.Select(g => cd(c % 360, g)))], null, 40);
    }
}
