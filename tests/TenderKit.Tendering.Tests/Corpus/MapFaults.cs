using System.IO.Compression;
using System.Text;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>Messy maps of our own making, each with the fault it holds.</summary>
internal static class MapFaults
{
    private const string Start = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>\n";
    private const string End = "</Document></kml>\n";
    private const string Road = "[[-4.25,14.25],[-4.25,14.251],[-4.249,14.251]]";
    private const string Yard = "[[-4.26,14.26],[-4.2594,14.26],[-4.2594,14.2604],[-4.26,14.2604],[-4.26,14.26]]";

    public static IEnumerable<(string Name, string Fault, byte[] Bytes)> All()
    {
        yield return Text(
            "01-folders.kml", "folders in folders, styles, a schema with SimpleData and a placemark without geometry", Start
            + "<Style id=\"a\"><LineStyle><width>4</width></LineStyle></Style><Schema id=\"s\"><SimpleField name=\"width_m\" type=\"double\"/></Schema>"
            + "<Folder><name>Roads</name><Folder><name>North</name>" + Mark("Market road", "<styleUrl>#a</styleUrl><ExtendedData><SchemaData schemaUrl=\"#s\"><SimpleData name=\"width_m\">6</SimpleData></SchemaData></ExtendedData>" + Line("-4.25,14.25,0 -4.25,14.251,0 -4.249,14.251,0"))
            + "</Folder></Folder><Folder><name>Notes</name><Placemark><name>Ask the ward</name></Placemark></Folder>" + End);
        yield return Text(
            "02-extended-data.kml", "ExtendedData with headings in French and units in the values", Start
            + Mark("Route du marché", Data(("N° du site", "R1"), ("Largeur", "6 m"), ("Hauteur de feu", "6 m"), ("Nombre de mats", "8")) + Line("-4.25,14.25 -4.25,14.252")) + End);
        yield return Text(
            "03-html-description.kml", "a description in HTML, as globes save it, and entities in the name", Start
            + Mark("Ward &amp; clinic &lt;north&gt;", "<description><![CDATA[<table><tr><td>Width</td><td>9</td></tr></table><script>alert(1)</script>]]></description>" + Line("-4.25,14.25 -4.251,14.251")) + End);
        yield return Text("04-no-namespace.kml", "no namespace, a space after the commas, tabs and line breaks between the points", "<kml><Placemark><name>Lane</name><LineString><coordinates>\n\t-4.25, 14.25, 0\n\t-4.25, 14.252, 0\n</coordinates></LineString></Placemark></kml>");
        yield return Text(
            "05-poles-and-road.kml", "poles drawn as points beside their road, and one far away", Start + Mark("Road", Line("-4.25,14.25 -4.25,14.252"))
            + string.Concat(new[] { "-4.25004,14.2505", "-4.25004,14.2515", "-4.30,14.30" }.Select((p, i) => Mark($"Pole {i + 1}", $"<Point><coordinates>{p},0</coordinates></Point>"))) + End);
        yield return Text("06-ring-and-hole.kml", "a yard with an opening, and a ring that stands by itself and is not closed", Start
            + Mark("Court", "<Polygon><outerBoundaryIs>" + Ring("-4.26,14.26 -4.2594,14.26 -4.2594,14.2604 -4.26,14.2604 -4.26,14.26") + "</outerBoundaryIs><innerBoundaryIs>" + Ring("-4.2598,14.2601 -4.2596,14.2601 -4.2596,14.2603 -4.2598,14.2603 -4.2598,14.2601") + "</innerBoundaryIs></Polygon>")
            + Mark("Open ring", Ring("-4.27,14.27 -4.2696,14.27 -4.2696,14.2703 -4.27,14.2703")) + End);
        yield return Text("07-entities.kml", "an external entity, as a file made to harm holds it", "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY x SYSTEM \"file:///none\">]><kml><Placemark><name>&x;</name>" + Line("-4.25,14.25 -4.25,14.252") + "</Placemark></kml>");
        yield return ("08-two-maps.kmz", "two maps packed in one file, and a picture", Zip(("files/other.kml", Start + Mark("Other", Line("-4.3,14.3 -4.3,14.301")) + End), ("doc.kml", Start + Mark("Main", Line("-4.25,14.25 -4.25,14.252")) + End), ("files/icon.png", "no picture")));
        yield return ("09-path-traversal.kmz", "a packed name that leads out of its folder", Zip(("../doc.kml", Start + Mark("Main", Line("-4.25,14.25 -4.25,14.252")) + End)));
        yield return Json("20-null-and-bbox.geojson", "bounding boxes, a null geometry, altitudes and members nobody knows", Feature("R1", "LineString", "[[-4.25,14.25,271.2],[-4.25,14.252,270.9]]", "\"bbox\":[-4.25,14.25,-4.25,14.252],\"foo\":{\"a\":[1,{\"b\":null}]},"), "{\"type\":\"Feature\",\"properties\":{\"id\":\"N\"},\"geometry\":null}", "{\"type\":\"Feature\",\"properties\":null,\"geometry\":{\"type\":\"LineString\",\"coordinates\":" + Road + "}}");
        yield return Json("21-multi.geojson", "multi-part lines and areas, and a collection of geometries", Feature("R1", "MultiLineString", "[[[-4.25,14.25],[-4.25,14.252]],[[-4.251,14.25],[-4.251,14.251]]]"), Feature("Y1", "MultiPolygon", "[[" + Yard + "],[[[-4.28,14.28],[-4.2799,14.28],[-4.2799,14.2801],[-4.28,14.28]]]]"), "{\"type\":\"Feature\",\"properties\":{\"id\":\"C1\"},\"geometry\":{\"type\":\"GeometryCollection\",\"geometries\":[{\"type\":\"LineString\",\"coordinates\":" + Road + "},{\"type\":\"Polygon\",\"coordinates\":[" + Yard + "]}]}}");
        yield return Json("22-latitude-first.geojson", "latitude written first, where longitude cannot be a latitude", Feature("R1", "LineString", "[[10.5,104.25],[10.502,104.25]]"), Feature("Y1", "Polygon", "[[[10.5,104.26],[10.5004,104.26],[10.5004,104.2606],[10.5,104.2606],[10.5,104.26]]]"));
        yield return Json("23-one-exchanged.geojson", "one road of six with latitude and longitude exchanged", [.. Enumerable.Range(0, 6).Select(i => i == 4 ? Feature($"R{i}", "LineString", FormattableString.Invariant($"[[14.{250 + i},-4.25],[14.{250 + i},-4.248]]")) : Feature($"R{i}", "LineString", FormattableString.Invariant($"[[-4.25,14.{250 + i}],[-4.248,14.{250 + i}]]")))]);
        yield return Json("24-huge.geojson", "metres of a grid without its name, and a number beyond all numbers", Feature("R1", "LineString", "[[345000.2,1576000.4],[345100.2,1576000.4]]"), Feature("R2", "LineString", "[[1e308,14.25],[-4.25,14.252]]"), Feature("R3", "LineString", Road));
        yield return Json("25-bow-tie.geojson", "an area that crosses itself", Feature("Y1", "Polygon", "[[[-4.26,14.26],[-4.2594,14.2604],[-4.2594,14.26],[-4.26,14.2604],[-4.26,14.26]]]"));
        yield return Json("26-unclosed.geojson", "a ring that is not closed, and one of two points", Feature("Y1", "Polygon", "[[[-4.26,14.26],[-4.2594,14.26],[-4.2594,14.2604],[-4.26,14.2604]]]"), Feature("Y2", "Polygon", "[[[-4.26,14.26],[-4.2594,14.26]]]"));
        yield return Json("27-twice.geojson", "one road drawn twice, with one id", Feature("R1", "LineString", Road), Feature("R1", "LineString", Road), Feature("R2", "LineString", Road));
        yield return Json("28-grid-named.geojson", "an older member crs that names a UTM zone", "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32630\"}},", Feature("R1", "LineString", "[[365200.0,1575600.0],[365200.0,1575800.0]]"));
        yield return Text("29-bare.geojson", "a bare geometry after a byte-order mark, with comments and a trailing comma", "\uFEFF// saved by hand\n{ \"type\": \"LineString\", \"coordinates\": " + Road + ", }");
        yield return Text("30-cut.geojson", "a file that ends in the middle", "{ \"type\": \"FeatureCollection\", \"features\": [ " + Feature("R1", "LineString", Road) + ", { \"type\": \"Feat");
        yield return Json("31-lengths-stated.geojson", "a length that is not the one drawn, a width in feet, a kind in Spanish", Feature("R1", "LineString", Road, more: ",\"longitud (m)\":350,\"ancho\":\"20 ft\",\"tipo\":\"calle\""), Feature("P1", "Point", "[-4.2512,14.2508]", more: ",\"length\":\"120 m\",\"kind\":\"path\""));
    }

    private static (string, string, byte[]) Text(string name, string fault, string text) => (name, fault, new UTF8Encoding(false).GetBytes(text));

    private static (string, string, byte[]) Json(string name, string fault, params string[] features)
    {
        var crs = features[0].StartsWith("\"crs\"", StringComparison.Ordinal) ? features[0] : "";
        return Text(name, fault, "{\"type\":\"FeatureCollection\"," + crs + "\"features\":[" + string.Join(",\n", features.Skip(crs.Length > 0 ? 1 : 0)) + "]}\n");
    }

    private static string Feature(string id, string type, string coordinates, string before = "", string more = "") =>
        "{\"type\":\"Feature\"," + before + "\"properties\":{\"id\":\"" + id + "\"" + more + "},\"geometry\":{\"type\":\"" + type + "\",\"coordinates\":" + coordinates + "}}";

    private static string Mark(string name, string inner) => $"<Placemark><name>{name}</name>{inner}</Placemark>\n";

    private static string Line(string points) => $"<LineString><coordinates>{points}</coordinates></LineString>";

    private static string Ring(string points) => $"<LinearRing><coordinates>{points}</coordinates></LinearRing>";

    private static string Data(params (string Name, string Value)[] data) => "<ExtendedData>" + string.Concat(data.Select(d => $"<Data name=\"{d.Name}\"><value>{d.Value}</value></Data>")) + "</ExtendedData>";

    private static byte[] Zip(params (string Name, string Text)[] entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in entries)
            {
                var entry = zip.CreateEntry(name);
                entry.LastWriteTime = new DateTimeOffset(2027, 1, 1, 0, 0, 0, TimeSpan.Zero);
                using var writer = entry.Open();
                writer.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return stream.ToArray();
    }
}
