using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Bids;

/// <summary>Data sheets of the parts offered: copied from the catalogue's folder into the bid and named by the compliance tables.</summary>
public static class Evidence
{
    /// <summary>Folder of the data sheets beside or below the catalogue.</summary>
    public const string CatalogFolder = "datasheets";

    /// <summary>Name of the copy in the bid.</summary>
    public static string NameOf(Part part) => $"{SafeName.Part(part.Code)}-{part.DataSheetFile}";

    /// <summary>The copies to be written, and a warning for each file that is not there.</summary>
    /// <param name="catalogPath">Folder or database of the catalogue.</param>
    public static (ImmutableArray<BidDocument> Copies, ImmutableArray<Diagnostic> Diagnostics) Of(TenderDesign design, string catalogPath)
    {
        var folder = Path.Combine(Directory.Exists(catalogPath) ? catalogPath : Path.GetDirectoryName(Path.GetFullPath(catalogPath))!, CatalogFolder);
        var copies = ImmutableArray.CreateBuilder<BidDocument>();
        var missing = new List<Diagnostic>();
        foreach (var part in design.Kits.SelectMany(k => UsedParts.Of(k.Parts)).Where(p => p.DataSheetFile.Length > 0).DistinctBy(NameOf).OrderBy(p => p.Code, StringComparer.Ordinal))
        {
            var path = Path.Combine(folder, part.DataSheetFile);
            if (IsPlain(part.DataSheetFile) && File.Exists(path)) copies.Add(new BidDocument("technical/evidence/" + NameOf(part), File.ReadAllBytes(path)));
            else missing.Add(Diagnostic.Warning("TK651", $"{part.Code}: its data sheet {part.DataSheetFile} is not in the folder {CatalogFolder} of the catalogue; put it there, or the bid goes without this evidence"));
        }

        return (copies.ToImmutable(), [.. missing]);
    }

    /// <summary>A name alone: nothing outside the folder is read or written.</summary>
    private static bool IsPlain(string name) => name.IndexOfAny(['/', '\\', ':']) < 0 && name is not ("." or "..");
}
