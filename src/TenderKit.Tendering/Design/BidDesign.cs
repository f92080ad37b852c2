using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.PartsStated;
using TenderKit.Tendering.Regions;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>The design a bid is made of: the sites, or the region that stands for them, with what the tender states beside them.</summary>
public static class BidDesign
{
    /// <inheritdoc cref="TenderDesigner.Run" path="/param"/>
    public static TenderDesign Run(DesignInputs inputs, ImmutableArray<Diagnostic> noticed, Action<int>? done = null, Action<string>? doing = null)
    {
        var design = inputs.Tender.Region is null ? TenderDesigner.Run(inputs, noticed, done, doing) : RegionDesigner.Run(inputs, noticed, doing);
        if (inputs.Tender.Stated is { } stated) design = With(design, stated.OfDesign(inputs.Sites, design.PoleCount));
        return PartsStudy.Of(inputs) is { } parts ? With(design with { PartsStated = parts }, Clarifications.Findings(parts)) : design;
    }

    private static TenderDesign With(TenderDesign design, IEnumerable<Diagnostic> found) => design with { Diagnostics = [.. design.Diagnostics, .. found] };
}
