using System.IO.Compression;
using System.Text;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Intake.Tests.Maps;

public sealed class MapReaderTests
{
    internal const string Kml = """
        <?xml version="1.0" encoding="UTF-8"?>
        <kml xmlns="http://www.opengis.net/kml/2.2" xmlns:gx="http://www.google.com/kml/ext/2.2"><Document><name>Lighting</name>
        <Folder><name>Roads</name>
          <Placemark><name>Market road</name><ExtendedData><Data name="width_m"><value>6</value></Data></ExtendedData>
            <LineString><coordinates> -4.25,14.25,270 -4.25,14.251,271 -4.249,14.251 </coordinates></LineString></Placemark>
          <Placemark><name>Two pieces</name><MultiGeometry><LineString><coordinates>-4.2,14.2 -4.2,14.201</coordinates></LineString>
            <LineString><coordinates>-4.2, 14.202 -4.2, 14.203</coordinates></LineString><Point><coordinates>-4.2,14.2</coordinates></Point></MultiGeometry></Placemark>
        </Folder>
        <Folder><name>Yards</name><Placemark><name>Bus yard</name><ExtendedData><SchemaData><SimpleData name="class">P4</SimpleData></SchemaData></ExtendedData>
            <Polygon><outerBoundaryIs><LinearRing><coordinates>-4.26,14.26 -4.2594,14.26 -4.2594,14.2604 -4.26,14.2604 -4.26,14.26</coordinates></LinearRing></outerBoundaryIs>
            <innerBoundaryIs><LinearRing><coordinates>-4.2598,14.2601 -4.2597,14.2601 -4.2597,14.2602 -4.2598,14.2601</coordinates></LinearRing></innerBoundaryIs></Polygon></Placemark></Folder>
        <Placemark><name>Walked</name><gx:Track><gx:coord>-4.3 14.3 200</gx:coord><gx:coord>-4.3 14.301 200</gx:coord></gx:Track></Placemark>
        <Placemark><name>Nothing</name></Placemark>
        <Placemark><name>Broken</name><LineString><coordinates>-4.3,14.3 x,y</coordinates></LineString></Placemark>
        <Placemark><name>Dot</name><LineString><coordinates>-4.3,14.3 -4.3,14.3</coordinates></LineString></Placemark>
        <NetworkLink><Link><href>http://example.org/other.kml</href></Link></NetworkLink>
        </Document></kml>
        """;

    internal const string GeoJson = """
        {"type":"FeatureCollection","features":[
        {"type":"Feature","id":7,"properties":{"name":"Market road","width":6.5,"lit":true,"more":{"a":1}},"geometry":{"type":"LineString","coordinates":[[-4.25,14.25],[-4.25,14.251]]}},
        {"type":"Feature","properties":{"id":"Y1","nom":"Bus yard"},"geometry":{"type":"Polygon","coordinates":[[[-4.26,14.26],[-4.2594,14.26],[-4.2594,14.2604],[-4.26,14.2604],[-4.26,14.26]]]}},
        {"type":"Feature","properties":null,"geometry":{"type":"MultiPoint","coordinates":[[-4.2,14.2],[-4.21,14.21]]}},
        {"type":"Feature","properties":{},"geometry":{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":[-4.2,14.2]},{"type":"LineString","coordinates":[[-4.2,14.2],[-4.2,14.21]]}]}},
        {"type":"Feature","properties":{"name":"Lost"},"geometry":null},
        {"type":"Feature","properties":{"name":"Metres"},"geometry":{"type":"Point","coordinates":[365020,1575826]}},
        {"type":"Feature","properties":{"name":"Odd"},"geometry":{"type":"Hexagon","coordinates":[1,2]}},
        5]}
        """;

    [Fact]
    public void KmlIsRead()
    {
        var outcome = Read(Kml, "a.kml");
        var features = outcome.Value!.Features;
        Assert.Equal(["Market road", "Two pieces", "Two pieces", "Bus yard", "Walked"], features.Select(f => f.Name));
        Assert.Equal([MapShape.Line, MapShape.Line, MapShape.Point, MapShape.Area, MapShape.Line], features.Select(f => f.Shape));
        Assert.Equal(2, features[1].Parts.Length);
        Assert.Equal(4, features[3].Parts[0].Length);
        Assert.Equal([("width_m", "6"), ("folder", "Roads")], features[0].Properties.Select(p => (p.Key, p.Value)));
        Assert.Contains(features[3].Properties, p => (p.Key, p.Value) == ("class", "P4"));
        Assert.DoesNotContain(features[4].Properties, p => p.Key == "folder");
        Assert.Equal(new GeoPoint(14.25, -4.25), features[0].Parts[0][0]);
        Assert.Equal(3, outcome.Diagnostics.Count(d => d is { Code: "TK109", Severity: Severity.Warning }));
        Assert.Contains(outcome.Diagnostics, d => d.Severity == Severity.Note && d.Message.Contains("other files", StringComparison.Ordinal));
    }

    [Fact]
    public void LengthIsOnTheEllipsoid()
    {
        // geographiclib 2.0: 14.25 to 14.251 along -4.25 is 110.6426 m; -4.25 to -4.249 along 14.251 is 107.9189 m; recomputed
        Assert.Equal(110.6426 + 107.9189, Read(Kml, "a.kml").Value!.Features[0].LengthM, 0.01);
    }

    [Fact]
    public void GeoJsonIsRead()
    {
        var outcome = Read(GeoJson, "a.geojson");
        var features = outcome.Value!.Features;
        Assert.Equal([MapShape.Line, MapShape.Area, MapShape.Point, MapShape.Point, MapShape.Line], features.Select(f => f.Shape));
        Assert.Equal(["Market road", "Bus yard", "", "", ""], features.Select(f => f.Name));
        Assert.Equal([("id", "7"), ("width", "6.5"), ("lit", "True")], features[0].Properties.Select(p => (p.Key, p.Value)));
        Assert.Equal([("id", "Y1")], features[1].Properties.Select(p => (p.Key, p.Value)));
        Assert.Equal(2, features[2].Parts.Length);
        Assert.Equal(4, outcome.Diagnostics.Count(d => d.Code == "TK109"));
        Assert.Equal(MapShape.Point, Assert.Single(Read("""{"type":"Point","coordinates":[-4.2,14.2]}""", "a.json").Value!.Features).Shape);
    }

    [Fact]
    public void GridOfAnOlderGeoJsonIsHeeded()
    {
        const string text = """{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::32630"}},"features":[{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[365020.2689,1575826.6758]}}]}""";
        var point = Read(text, "a.geojson").Value!.Features[0].Parts[0][0];
        Assert.Equal(14.2508, point.LatitudeDegrees, 1e-7); // PROJ 9.1.1, recomputed
        Assert.Equal(-4.2512, point.LongitudeDegrees, 1e-7);
    }

    [Fact]
    public void KmzIsReadAndNothingIsUnpacked()
    {
        Assert.Equal(5, MapReader.Read(Zip(("files/picture.png", "x"), ("doc.kml", Kml)), "a.kmz").Value!.Features.Length);
        Assert.Equal(5, MapReader.Read(Zip(("b/c.kml", "<kml/>"), ("map.kml", Kml)), "a.kmz").Value!.Features.Length);
        foreach (var name in new[] { "../../etc/x.kml", "/abs.kml", "..\\x.png", "C:\\x.kml" })
            Assert.Equal("TK108", Code(MapReader.Read(Zip(("doc.kml", Kml), (name, "x")), "a.kmz")));
        Assert.Equal("TK103", Code(MapReader.Read(Zip(("readme.txt", "x")), "a.kmz")));
    }

    [Fact]
    public void TroubleIsADiagnostic()
    {
        Assert.Equal("TK101", Code(MapReader.Read(Path.Combine(Path.GetTempPath(), "no-such-folder", "a.kml"))));
        Assert.Equal("TK103", Code(Read("<kml><Placemark>", "a.kml")));
        Assert.Equal("TK103", Code(Read("{\"type\":", "a.geojson")));
        Assert.Equal("TK103", Code(Read("[1,2]", "a.geojson")));
        Assert.Equal("TK103", Code(Read("not a zip", "a.kmz")));
        Assert.Equal("TK105", Code(Read("<kml/>", "a.kml")));
        Assert.Equal("TK105", Code(Read("", "a.kml")));
        Assert.True(MapReader.IsMap("A.KMZ"));
        Assert.False(MapReader.IsMap("a.xlsx"));
    }

    [Fact]
    public void ExternalEntitiesAreRefused()
    {
        const string outside = """<?xml version="1.0"?><!DOCTYPE kml [<!ENTITY x SYSTEM "file:///etc/hostname">]><kml><Placemark><name>&x;</name><Point><coordinates>1,2</coordinates></Point></Placemark></kml>""";
        Assert.Equal("TK103", Code(Read(outside, "a.kml")));
    }

    internal static byte[] Zip(params (string Name, string Text)[] entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in entries)
            {
                using var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
                writer.Write(text);
            }
        }

        return stream.ToArray();
    }

    private static Outcome<MapFile> Read(string text, string name) => MapReader.Read(Encoding.UTF8.GetBytes(text), name);

    private static string Code(Outcome<MapFile> outcome)
    {
        Assert.Null(outcome.Value);
        return Assert.Single(outcome.Diagnostics, d => d.Severity == Severity.Error).Code;
    }
}
