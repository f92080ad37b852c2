using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>The different parts of one pole.</summary>
internal static class UsedParts
{
    public static IEnumerable<Part> Of(PoleParts p) =>
        p.Pieces.Select(piece => (Part?)piece.Part)
            .Concat(p.Circuits.Select(c => c.Cable))
            .Concat(p.Circuits.Select(c => c.Fuse))
            .Concat(p.OtherProtection)
            .OfType<Part>()
            .DistinctBy(part => part.Code);
}
