using System.Collections.Immutable;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Trace;

/// <summary>Explains the headline figures of a chosen design: each with its formula and inputs, down to parts, rules, tender, site list and climate.</summary>
public static class DesignTrace
{
    /// <summary>The figures of one site's design, inputs before what follows from them.</summary>
    public static ImmutableArray<TracedFigure> Of(TenderDesign design, SiteDesign site)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(site);
        return [.. LightTrace.Of(design, site), .. EnergyTrace.Of(design, site), .. WiringTrace.Of(design, site), .. StructureTrace.Of(design, site)];
    }
}
