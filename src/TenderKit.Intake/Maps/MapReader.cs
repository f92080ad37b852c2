using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Xml;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Maps;

/// <summary>Reads map files: KML, KMZ and GeoJSON. Nothing a file points to is opened or fetched.</summary>
public static class MapReader
{
    private static readonly string[] Extensions = [".KML", ".KMZ", ".GEOJSON", ".JSON"];

    /// <summary>Whether a file is read as a map, by its name.</summary>
    public static bool IsMap(string fileName) => Extensions.Contains(Path.GetExtension(fileName).ToUpperInvariant());

    /// <summary>Reads a .kml, .kmz, .geojson or .json file.</summary>
    public static Outcome<MapFile> Read(string path)
    {
        var place = new Place(Path.GetFileName(path));
        try
        {
            var info = new FileInfo(path);
            if (!info.Exists) return Outcome.None<MapFile>(Diagnostic.Error("TK101", "the file does not exist; check the name and the folder", place));
            return info.Length > ReadingLimits.GreatestFileBytes
                ? Outcome.None<MapFile>(Diagnostic.Error("TK107", ReadingLimits.FileMessage(info.Length), place))
                : Read(File.ReadAllBytes(path), Path.GetFileName(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Outcome.None<MapFile>(Diagnostic.Error("TK102",
                "the file cannot be opened: it may be open in another program, or you may lack the right to read it; close it and try again", place));
        }
    }

    /// <summary>Reads the bytes of a map file; the extension of <paramref name="fileName"/> says of which kind.</summary>
    public static Outcome<MapFile> Read(byte[] bytes, string fileName)
    {
        var place = new Place(fileName);
        if (bytes.Length == 0) return Outcome.None<MapFile>(Diagnostic.Error("TK105", "the file is empty; save it again from the program that made it", place));
        try
        {
            var found = new MapFindings(place);
            var features = Path.GetExtension(fileName).ToUpperInvariant() switch
            {
                ".KML" => KmlText.Read(new MemoryStream(bytes, writable: false), found),
                ".KMZ" => Packed(bytes, found),
                _ => GeoJsonText.Read(bytes, found),
            };
            if (features.IsEmpty)
                return Outcome.None<MapFile>([Diagnostic.Error("TK105", "nothing is drawn on the map that can be read; save points, lines or areas", place), .. found.All]);
            return Outcome.Of(new MapFile(fileName, features, Convert.ToHexStringLower(SHA256.HashData(bytes))), found.All);
        }
        catch (TooLargeException e)
        {
            return Outcome.None<MapFile>(Diagnostic.Error("TK107", e.Message, place));
        }
        catch (UnsafeArchiveException e)
        {
            return Outcome.None<MapFile>(Diagnostic.Error("TK108", e.Message, place));
        }
        catch (Exception e) when (e is XmlException or JsonException or InvalidDataException or DecoderFallbackException or DamagedTableException or NotSupportedException or InvalidOperationException or ArgumentException)
        {
            return Outcome.None<MapFile>(Diagnostic.Error("TK103", $"the map is damaged or of another kind than its name says ({e.Message.ReplaceLineEndings(" ").TrimEnd('.')}); save it again from the program that made it", place));
        }
    }

    /// <summary>The KML inside a KMZ. Nothing is unpacked to disk; a name that would leave the folder marks a file made to harm.</summary>
    private static System.Collections.Immutable.ImmutableArray<MapFeature> Packed(byte[] bytes, MapFindings found)
    {
        using var zip = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
        if (zip.Entries.FirstOrDefault(e => LeavesFolder(e.FullName)) is { } harmful)
            throw new UnsafeArchiveException($"the packed file holds '{harmful.FullName}', a name that leads out of its folder; do not use it, and ask for a new one");
        ReadingLimits.AssertUnpackable(zip, e => e.FullName.EndsWith(".kml", StringComparison.OrdinalIgnoreCase));
        var maps = zip.Entries.Where(e => e.FullName.EndsWith(".kml", StringComparison.OrdinalIgnoreCase)).ToList();
        var map = maps.Find(e => e.FullName.Equals("doc.kml", StringComparison.OrdinalIgnoreCase)) ?? maps.OrderBy(e => e.FullName.Count(c => c == '/')).FirstOrDefault()
            ?? throw new DamagedTableException("it holds no .kml");
        if (maps.Count > 1) found.Note(FormattableString.Invariant($"the file packs {maps.Count} maps; '{map.FullName}' is read"));
        using var stream = map.Open();
        return KmlText.Read(stream, found);
    }

    private static bool LeavesFolder(string name) =>
        name.StartsWith('/') || name.StartsWith('\\') || name.Contains(':', StringComparison.Ordinal) || name.Split('/', '\\').Contains("..");
}

/// <summary>A packed file holds names made to harm.</summary>
internal sealed class UnsafeArchiveException(string message) : Exception(message);
