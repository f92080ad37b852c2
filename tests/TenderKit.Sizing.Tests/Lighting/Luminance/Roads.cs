using TenderKit.Sizing.Lighting;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

/// <summary>Luminaires and cross-sections of our own invention.</summary>
internal static class Roads
{
    /// <summary>Two beams along the road, 62 degrees up from straight down and turned 15 degrees into the street; nothing above 85 degrees.</summary>
    public static LightDistribution Beams(double fluxLm, double ahead = 0)
    {
        var shape = Distributions.Of(90, (c, g) => Beam(c, g, ahead));
        return shape.Scaled(fluxLm / shape.FluxLm);
    }

    /// <summary>The same seen in a mirror square to the road: what it throws ahead it now throws behind.</summary>
    public static LightDistribution Reversed(double fluxLm, double ahead) => Beams(fluxLm, -ahead);

    public static RoadSection Section(
        double spacingM, int lanes = 2, double heightM = 8, Arrangement arrangement = Arrangement.SingleSided, RoadClass? roadClass = null) =>
        RoadSection.Of(new RoadLayout(3.5 * lanes, spacingM, heightM, 0.5, 5, arrangement), lanes, roadClass);

    public static RoadQuality Quality(LightDistribution distribution, RoadSection section, double maintenanceFactor = 0.8) =>
        RoadEvaluation.Of(distribution, section, RoadSurface.R3, maintenanceFactor);

    private static double Beam(double c, double g, double ahead)
    {
        if (g > 85) return 0;
        var fromAxis = Math.Min(Math.Abs(c - 15), Math.Abs(c - 375));
        var fromOther = Math.Abs(c - 165);
        var round = (1 + ahead) * Bell(fromAxis, 28) + ((1 - ahead) * Bell(fromOther, 28));
        var street = 0.7 + (0.5 * Math.Sin(c * Math.PI / 180));
        return (100 * street * Math.Cos(g * Math.PI / 180)) + (300 * round * Bell(g - 62, 13) * Math.Clamp((85 - g) / 10, 0, 1));
    }

    private static double Bell(double x, double width) => Math.Exp(-(x * x) / (width * width));
}
