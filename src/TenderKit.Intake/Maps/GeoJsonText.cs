using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO.Converters;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Intake.Maps;

/// <summary>GeoJSON (RFC 7946): feature collections, single features and bare geometries; the older member <c>crs</c> is heeded for UTM on WGS84.</summary>
internal static partial class GeoJsonText
{
    private static readonly JsonSerializerOptions Options = new() { Converters = { new GeoJsonConverterFactory() }, AllowTrailingCommas = true, ReadCommentHandling = JsonCommentHandling.Skip };

    public static ImmutableArray<MapFeature> Read(byte[] bytes, MapFindings found)
    {
        var text = bytes.AsSpan(bytes is [0xEF, 0xBB, 0xBF, ..] ? 3 : 0);
        // bytes of an old code page become marks of replacement, so that one bad name does not cost the map
        using var document = JsonDocument.Parse(Encoding.UTF8.GetString(text), new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 64 });
        if (document.RootElement.ValueKind != JsonValueKind.Object) throw new JsonException("it is no GeoJSON object");
        var toDegrees = FrameOf(document.RootElement);
        foreach (var feature in FeaturesOf(document.RootElement, found)) Add(feature, toDegrees, found);
        return found.Features;
    }

    private static IEnumerable<(string Name, Geometry? Geometry, List<KeyValuePair<string, string>> Properties)> FeaturesOf(JsonElement root, MapFindings found)
    {
        var type = root.TryGetProperty("type", out var t) && t.ValueKind == JsonValueKind.String ? t.GetString() : null;
        if (type != "FeatureCollection") return One(root, found);
        if (!root.TryGetProperty("features", out var features) || features.ValueKind != JsonValueKind.Array) throw new JsonException("the collection has no features");
        return features.EnumerateArray().SelectMany(f => One(f, found));
    }

    /// <summary>One feature or bare geometry; a broken one is left out and the others are still read.</summary>
    private static IEnumerable<(string Name, Geometry? Geometry, List<KeyValuePair<string, string>> Properties)> One(JsonElement element, MapFindings found)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            found.Lost("a feature", "it is no object");
            yield break;
        }

        var isFeature = element.TryGetProperty("type", out var type) && type.ValueEquals("Feature");
        var properties = isFeature ? PropertiesOf(element) : [];
        var name = properties.FirstOrDefault(p => p.Key.ToUpperInvariant() is "NAME" or "NOM" or "NOMBRE" or "NOME" or "TITLE").Value ?? "";
        if (GeometryOf(isFeature ? element.TryGetProperty("geometry", out var g) ? g : default : element) is { IsEmpty: false } geometry) yield return (name, geometry, properties);
        else found.Lost(name.Length > 0 ? name : properties.Find(p => p.Key.Equals("id", StringComparison.OrdinalIgnoreCase)).Value ?? "", "its geometry cannot be read");
    }

    private static Geometry? GeometryOf(JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.Object) return null;
        try
        {
            return element.Deserialize<Geometry>(Options);
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException or FormatException or NotSupportedException or IndexOutOfRangeException or NullReferenceException or InvalidCastException)
        {
            // the library meets geometries it does not know, and rings that are not closed, with exceptions of many kinds
            return Closed(element);
        }
    }

    /// <summary>A polygon whose rings are not closed, with their first points added; null for anything else.</summary>
    private static Polygon? Closed(JsonElement element)
    {
        if (!element.TryGetProperty("type", out var type) || type.ValueKind != JsonValueKind.String || !type.ValueEquals("Polygon")) return null;
        if (!element.TryGetProperty("coordinates", out var rings) || rings.ValueKind != JsonValueKind.Array) return null;
        var closed = rings.EnumerateArray().Select(RingOf).ToList();
        return closed.Count == 0 || closed.Exists(r => r is null) ? null : new Polygon(closed[0], [.. closed.Skip(1).Select(r => r!)]);
    }

    private static LinearRing? RingOf(JsonElement ring)
    {
        if (ring.ValueKind != JsonValueKind.Array) return null;
        var points = new List<Coordinate>();
        foreach (var point in ring.EnumerateArray())
        {
            if (point.ValueKind != JsonValueKind.Array || point.GetArrayLength() < 2 || !point[0].TryNumber(out var x) || !point[1].TryNumber(out var y)) return null;
            points.Add(new Coordinate(x, y));
        }

        if (points.Count < 3) return null;
        if (!points[0].Equals2D(points[^1])) points.Add(points[0].Copy());
        return points.Count < 4 ? null : new LinearRing([.. points]);
    }

    private static bool TryNumber(this JsonElement element, out double value)
    {
        value = 0;
        return element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out value) && double.IsFinite(value);
    }

    private static List<KeyValuePair<string, string>> PropertiesOf(JsonElement feature)
    {
        var list = new List<KeyValuePair<string, string>>();
        if (feature.TryGetProperty("id", out var id) && id.ValueKind is JsonValueKind.String or JsonValueKind.Number) list.Add(new("id", id.ToString()));
        if (!feature.TryGetProperty("properties", out var properties) || properties.ValueKind != JsonValueKind.Object) return list;
        foreach (var property in properties.EnumerateObject().Where(p => p.Value.ValueKind is JsonValueKind.String or JsonValueKind.Number or JsonValueKind.True or JsonValueKind.False))
        {
            if (property.NameEquals("id")) list.RemoveAll(p => p.Key == "id");
            list.Add(new(property.Name, property.Value.ToString()));
        }

        return list;
    }

    private static void Add((string Name, Geometry? Geometry, List<KeyValuePair<string, string>> Properties) feature, Func<Coordinate, GeoPoint> toDegrees, MapFindings found)
    {
        ImmutableArray<GeoPoint> Points(Coordinate[] coordinates) => [.. coordinates.Select(toDegrees)];
        var parts = Flat(feature.Geometry!).Select(g => g switch
        {
            Point p => new Part(MapShape.Point, Points(p.Coordinates)),
            LineString l => new Part(MapShape.Line, Points(l.Coordinates)),
            Polygon p => new Part(MapShape.Area, Points(p.ExteriorRing.Coordinates)),
            _ => new Part(MapShape.Point, []),
        });
        var properties = feature.Properties.Where(p => p.Value != feature.Name || p.Key.ToUpperInvariant() is not ("NAME" or "NOM" or "NOMBRE" or "NOME" or "TITLE"));
        var holes = Flat(feature.Geometry!).OfType<Polygon>().SelectMany(p => p.InteriorRings).Select(r => Points(r.Coordinates)).ToList();
        foreach (var group in parts.GroupBy(p => p.Shape)) found.Add(group.Key, group.Select(p => p.Points), feature.Name, properties, holes);
    }

    private static IEnumerable<Geometry> Flat(Geometry geometry) => geometry is GeometryCollection many
        ? many.Geometries.SelectMany(Flat)
        : [geometry];

    /// <summary>Degrees as they stand, or out of a UTM zone named in the older member <c>crs</c> (EPSG 32601 to 32660 and 32701 to 32760).</summary>
    private static Func<Coordinate, GeoPoint> FrameOf(JsonElement root)
    {
        var named = root.TryGetProperty("crs", out var crs) && crs.ValueKind == JsonValueKind.Object && crs.TryGetProperty("properties", out var p) && p.ValueKind == JsonValueKind.Object
            && p.TryGetProperty("name", out var n) && n.ValueKind == JsonValueKind.String ? n.GetString()! : "";
        var match = UtmCode().Match(named);
        if (!match.Success) return c => new(c.Y, c.X);
        var (isSouth, zone) = (match.Groups["h"].Value == "7", int.Parse(match.Groups["z"].Value, CultureInfo.InvariantCulture));
        return zone is >= 1 and <= 60 ? c => Utm.ToDegrees(zone, isSouth, c.X, c.Y) : c => new(c.Y, c.X);
    }

    private readonly record struct Part(MapShape Shape, ImmutableArray<GeoPoint> Points);

    [GeneratedRegex(@"EPSG:{1,2}32(?<h>[67])(?<z>\d{2})$")]
    private static partial Regex UtmCode();
}
