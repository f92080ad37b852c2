using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Roads whose class asks for luminance, on the surface R3.</summary>
internal static class LuminanceLighting
{
    /// <summary>Lanes are taken as about this wide, m (common practice, no source).</summary>
    private const double UsualLaneM = 3.25;

    public static int LanesOf(double widthM) => Math.Max(1, (int)Math.Round(widthM / UsualLaneM));

    /// <summary>The layout with the fewest poles that meets the class, its bays made equal, or the nearest miss.</summary>
    public static LightSolution Of(
        LightDistribution distribution, Site site, RoadLayout layout, RoadClass roadClass, double maintenance, SpacingBounds bounds, SharedWork shared)
    {
        var shape = RoadSection.Of(layout, LanesOf(site.WidthM), roadClass);
        if (site.FixedPoles is { } poles) return AtSpacing(distribution, shape, layout, SiteLighting.SpacingFor(site, poles), maintenance, bounds);
        var widest = shared.Widest(
            distribution, layout, site.Target, maintenance, bounds, () => SolutionOf(LuminanceSearch.Road(distribution, shape, RoadSurface.R3, maintenance, bounds), layout));
        if (!widest.Met) return widest;
        var evenM = site.LengthM / SiteLighting.PolesPerSide(site, widest.SpacingM);
        return AtSpacing(distribution, shape, layout, evenM, maintenance, bounds) with { GoverningLimit = widest.GoverningLimit };
    }

    private static LightSolution AtSpacing(
        LightDistribution distribution, RoadSection shape, RoadLayout layout, double spacingM, double maintenance, SpacingBounds bounds) =>
        SolutionOf(LuminanceSearch.AtSpacing(distribution, shape with { SpacingM = spacingM }, RoadSurface.R3, maintenance, bounds), layout);

    private static LightSolution SolutionOf(RoadSolution found, RoadLayout layout) => new(
        found.SpacingM, layout with { SpacingM = found.SpacingM }, null, found.LevelFraction, found.Quality.Carriageway.Illuminance, found.Met, found.GoverningLimit);
}
