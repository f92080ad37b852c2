using TenderKit.Catalog.Families;
using TenderKit.Catalog.Store;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog.Import;

/// <summary>A part and the row it came from.</summary>
internal readonly record struct PlacedPart(Part Part, Place Place);

/// <summary>Takes parts into a store as they come, with the photometric files they name, and refuses a code that stands already.</summary>
internal sealed class PartsTaken(CatalogFill fill, string photometryFolder, List<Diagnostic> found)
{
    private readonly Dictionary<string, Place> places = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> files = new(StringComparer.Ordinal);

    public int Count => places.Count;

    public void Take(IEnumerable<PlacedPart> parts)
    {
        foreach (var (part, place) in parts)
        {
            if (!places.TryAdd(part.Code, place))
            {
                found.Add(Diagnostic.Error("TK607", $"code '{part.Code}' stands already in {places[part.Code]}; give each part its own code", place));
                continue;
            }

            fill.Add(part);
            if (part is Luminaire { PhotometricFile: var lamp }) Photometry(lamp, place);
            if (part is IntegratedUnit { PhotometricFile: var unit }) Photometry(unit, place);
        }
    }

    private void Photometry(string file, Place place)
    {
        if (files.Contains(file)) return;
        var path = Path.Combine(photometryFolder, Path.GetFileName(file));
        if (Path.GetFileName(file) == file && File.Exists(path))
        {
            files.Add(file);
            fill.Add(file, File.ReadAllBytes(path));
        }
        else
        {
            found.Add(Diagnostic.Error("TK608",
                $"photometric file '{file}' is not in the folder {CatalogImporter.PhotometryFolder}; put it there or correct the name",
                place with { Column = "photometric_file" }));
        }
    }
}
