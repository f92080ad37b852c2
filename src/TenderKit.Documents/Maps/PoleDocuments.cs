using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml;
using TenderKit.Tendering.Positions;

namespace TenderKit.Documents.Maps;

/// <summary>The pole schedule as a list and as maps. Positions are printed to a hundred-millionth of a degree, a millimetre.</summary>
public static class PoleDocuments
{
    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schedule as a csv file with a byte order mark, so that spreadsheet programs read its accents.</summary>
    public static byte[] Csv(PoleSchedule schedule)
    {
        var text = new StringBuilder("pole,site,name,kit,latitude,longitude,facing (degrees from north),side,along (m),lamp height (m),remark\n");
        foreach (var pole in schedule.Poles)
        {
            var p = pole.Position;
            string[] cells = [pole.Id, pole.SiteId, pole.SiteName, pole.KitId, Degrees(p.Point.LatitudeDegrees), Degrees(p.Point.LongitudeDegrees),
                Text(p.FacingDegrees, "0"), Side(p.Side), Text(p.AlongM, "0.0"), Text(pole.HeightM, "0.##"), p.Remark];
            text.AppendJoin(',', cells.Select(Quoted)).Append('\n');
        }

        return [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    /// <summary>The schedule as GeoJSON (RFC 7946).</summary>
    public static byte[] GeoJson(PoleSchedule schedule)
    {
        var root = new JsonObject { ["type"] = "FeatureCollection", ["features"] = new JsonArray([.. schedule.Poles.Select(Feature)]) };
        return [.. JsonSerializer.SerializeToUtf8Bytes(root, Layout), (byte)'\n'];
    }

    /// <summary>The schedule as KML (OGC 12-007r2), a folder for each site.</summary>
    public static byte[] Kml(PoleSchedule schedule)
    {
        using var stream = new MemoryStream();
        using (var xml = XmlWriter.Create(stream, new XmlWriterSettings { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false), CheckCharacters = false }))
        {
            xml.WriteStartElement("kml", "http://www.opengis.net/kml/2.2");
            xml.WriteStartElement("Document");
            xml.WriteElementString("name", "Poles");
            foreach (var site in schedule.Poles.GroupBy(p => (p.SiteId, p.SiteName)))
            {
                xml.WriteStartElement("Folder");
                xml.WriteElementString("name", Plain($"{site.Key.SiteId} {site.Key.SiteName}".Trim()));
                foreach (var pole in site) Placemark(xml, pole);
                xml.WriteEndElement();
            }

            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return [.. stream.ToArray(), (byte)'\n'];
    }

    private static JsonObject Feature(ScheduledPole pole) => new()
    {
        ["type"] = "Feature",
        ["id"] = pole.Id,
        ["properties"] = new JsonObject
        {
            ["pole"] = pole.Id,
            ["site"] = pole.SiteId,
            ["name"] = pole.SiteName,
            ["kit"] = pole.KitId,
            ["facingDegrees"] = Math.Round(pole.Position.FacingDegrees, 1),
            ["side"] = Side(pole.Position.Side),
            ["alongM"] = Math.Round(pole.Position.AlongM, 2),
            ["lampHeightM"] = pole.HeightM,
            ["remark"] = pole.Position.Remark,
        },
        ["geometry"] = new JsonObject
        {
            ["type"] = "Point",
            ["coordinates"] = new JsonArray(Math.Round(pole.Position.Point.LongitudeDegrees, 8), Math.Round(pole.Position.Point.LatitudeDegrees, 8)),
        },
    };

    private static void Placemark(XmlWriter xml, ScheduledPole pole)
    {
        xml.WriteStartElement("Placemark");
        xml.WriteElementString("name", Plain(pole.Id));
        xml.WriteElementString("description", Plain(FormattableString.Invariant($"kit {pole.KitId}, lamp at {pole.HeightM:0.##} m, facing {pole.Position.FacingDegrees:0} degrees{(pole.Position.Remark.Length > 0 ? ", " + pole.Position.Remark : "")}")));
        xml.WriteStartElement("Point");
        xml.WriteElementString("coordinates", Degrees(pole.Position.Point.LongitudeDegrees) + "," + Degrees(pole.Position.Point.LatitudeDegrees));
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static string Side(PoleSide side) => side switch
    {
        PoleSide.Left => "left",
        PoleSide.Area => "area",
        PoleSide.Right => "right",
        PoleSide.FirstLongSide => "first long side",
        PoleSide.SecondLongSide => "second long side",
        _ => "as drawn",
    };

    private static string Degrees(double value) => value.ToString("0.00000000", CultureInfo.InvariantCulture);

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    // a cell that starts like a formula is not to be run by a spreadsheet program
    private static string Quoted(string cell)
    {
        var safe = cell.Length > 0 && cell[0] is '=' or '+' or '@' ? "'" + cell : cell;
        return safe.AsSpan().IndexOfAny(",\"\r\n") < 0 ? safe : "\"" + safe.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
    }

    private static string Plain(string text) => string.Concat(text.Where(c => c >= ' '));
}
