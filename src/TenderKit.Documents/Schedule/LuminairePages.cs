using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Light;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The light of each different luminaire offered, out of its photometric file; no chapter when no file is known.</summary>
internal static class LuminairePages
{
    public static IEnumerable<Block> Of(TenderDesign design)
    {
        var luminaires = Known(design);
        if (luminaires.IsEmpty) yield break;
        yield return new Heading(1, "Luminaires");
        yield return new Paragraph(PhotometryBlocks.Recalled, TextStyle.Small);
        foreach (var (part, distribution) in luminaires)
        {
            yield return new Heading(2, $"Luminaire {part.Code}");
            yield return new Paragraph($"{part.Description}; file {part.PhotometricFile}; used in {Kits(design, part)}.", TextStyle.Small) { KeepWithNext = true };
            foreach (var block in PhotometryBlocks.Of(part.Code, distribution, PhotometricAnalysis.Of(distribution))) yield return block;
        }
    }

    /// <summary>The luminaires of the kits whose light is known, each once, in the order of the kits.</summary>
    internal static ImmutableArray<(Luminaire Part, LightDistribution Light)> Known(TenderDesign design) =>
    [
        .. from part in design.Kits.Select(k => k.Parts.Luminaire).DistinctBy(l => l.Code)
           where design.Light.TryGetValue(part.PhotometricFile, out var light) && light.FluxLm > 0
           select (part, design.Light[part.PhotometricFile]),
    ];

    private static string Kits(TenderDesign design, Luminaire part)
    {
        var kits = design.Kits.Where(k => k.Parts.Luminaire.Code == part.Code).Select(k => k.Id).ToImmutableArray();
        return (kits.Length == 1 ? "kit " : "kits ") + Words.List(kits, 14);
    }
}
