using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Tables;

namespace TenderKit.Intake.Maps;

/// <summary>KML (OGC 07-147r2 and 12-007r2): placemarks with points, lines, rings, polygons and tracks; one placemark in memory at a time.</summary>
internal static class KmlText
{
    private static readonly XmlReaderSettings Safe = new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, MaxCharactersInDocument = ReadingLimits.GreatestUnpackedBytes };

    public static ImmutableArray<MapFeature> Read(Stream stream, MapFindings found)
    {
        using var xml = XmlReader.Create(stream, Safe);
        var folders = new Stack<(int Depth, string Name)>();
        var hasLinks = false;
        xml.Read();
        while (!xml.EOF)
        {
            while (folders.Count > 0 && xml.NodeType == XmlNodeType.EndElement && xml.Depth <= folders.Peek().Depth) folders.Pop();
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "Placemark" })
            {
                Placemark((XElement)XNode.ReadFrom(xml), folders.Count == 0 ? "" : folders.Peek().Name, found);
                continue;
            }

            hasLinks |= xml is { NodeType: XmlNodeType.Element, LocalName: "NetworkLink" };
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "Folder", IsEmptyElement: false }) folders.Push((xml.Depth, ""));
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "name", IsEmptyElement: false } && folders.Count > 0 && folders.Peek() is { Name: "" } open && xml.Depth == open.Depth + 1)
            {
                folders.Pop();
                folders.Push((open.Depth, xml.ReadElementContentAsString().Trim()));
                continue;
            }

            xml.Read();
        }

        if (hasLinks) found.Note("the map points to other files, which are not read; save everything in one file");
        return found.Features;
    }

    private static void Placemark(XElement mark, string folder, MapFindings found)
    {
        var name = Child(mark, "name")?.Value.Trim() ?? "";
        var properties = PropertiesOf(mark, folder);
        var parts = new List<(MapShape Shape, ImmutableArray<GeoPoint> Points)>();
        var holes = mark.Descendants().Where(e => e.Name.LocalName == "innerBoundaryIs").SelectMany(e => e.Descendants().Where(r => r.Name.LocalName == "LinearRing")).Select(Coordinates).ToList();
        foreach (var element in mark.Descendants())
        {
            switch (element.Name.LocalName)
            {
                case "Point":
                    parts.Add((MapShape.Point, Coordinates(element)));
                    break;
                case "LineString":
                    parts.Add((MapShape.Line, Coordinates(element)));
                    break;
                case "Track":
                    parts.Add((MapShape.Line, Track(element)));
                    break;
                case "Polygon":
                    parts.Add((MapShape.Area, element.Descendants().FirstOrDefault(e => e.Name.LocalName == "outerBoundaryIs") is { } outer ? Coordinates(outer) : []));
                    break;
                case "LinearRing" when element.Ancestors().All(a => a.Name.LocalName != "Polygon"):
                    parts.Add((MapShape.Area, Coordinates(element)));
                    break;
            }
        }

        if (parts.Count == 0) found.Lost(name, "it holds no point, line or area");
        foreach (var group in parts.GroupBy(p => p.Shape)) found.Add(group.Key, group.Select(p => p.Points), name, properties, holes);
    }

    private static List<KeyValuePair<string, string>> PropertiesOf(XElement mark, string folder)
    {
        var properties = new List<KeyValuePair<string, string>>();
        foreach (var data in mark.Descendants().Where(e => e.Name.LocalName is "Data" or "SimpleData"))
        {
            var value = data.Name.LocalName == "Data" ? Child(data, "value")?.Value ?? "" : data.Value;
            if ((string?)data.Attribute("name") is { Length: > 0 } key) properties.Add(new(key, value.Trim()));
        }

        if (Child(mark, "description")?.Value.Trim() is { Length: > 0 and < 500 } words && !words.Contains('<', StringComparison.Ordinal)) properties.Add(new("description", words));
        if (folder.Length > 0) properties.Add(new("folder", folder));
        return properties;
    }

    private static ImmutableArray<GeoPoint> Coordinates(XElement element)
    {
        var text = element.Descendants().FirstOrDefault(e => e.Name.LocalName == "coordinates")?.Value ?? "";
        // some programs write a space after the comma
        var tuples = text.Replace(", ", ",", StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return [.. tuples.Select(t => Pair(t.Split(',')))];
    }

    private static ImmutableArray<GeoPoint> Track(XElement track) =>
        [.. track.Elements().Where(e => e.Name.LocalName == "coord").Select(e => Pair(e.Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];

    private static GeoPoint Pair(string[] parts)
    {
        if (parts.Length >= 2 && Number(parts[0]) is { } longitude && Number(parts[1]) is { } latitude) return new(latitude, longitude);
        return new(double.NaN, double.NaN);
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    private static XElement? Child(XElement element, string name) => element.Elements().FirstOrDefault(e => e.Name.LocalName == name);
}
