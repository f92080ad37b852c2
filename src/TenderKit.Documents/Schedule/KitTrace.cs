using System.Collections.Immutable;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Trace;

namespace TenderKit.Documents.Schedule;

/// <summary>The figures of a kit that are explained: those of light, energy and structure each at the site that governs it.</summary>
internal static class KitTrace
{
    public static ImmutableArray<(SiteDesign Site, TracedFigure Figure)> Of(TenderDesign design, Kit kit) =>
    [
        .. At(design, Governing.OfLight(design, kit), TraceGroup.Light), .. At(design, Governing.OfEnergy(design, kit), TraceGroup.Energy, TraceGroup.Wiring),
        .. At(design, Governing.OfStructure(design, kit), TraceGroup.Structure),
    ];

    private static IEnumerable<(SiteDesign Site, TracedFigure Figure)> At(TenderDesign design, SiteDesign site, params TraceGroup[] groups) =>
        DesignTrace.Of(design, site).Where(f => groups.Contains(f.Group)).Select(f => (site, f));
}
