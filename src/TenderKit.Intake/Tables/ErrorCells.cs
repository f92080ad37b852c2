using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;

namespace TenderKit.Intake.Tables;

/// <summary>
/// Error cells (#REF!, #N/A) of an .xlsx workbook by sheet name and address. The workbook reader passes them over as
/// empty, and an empty cell would silently take the default.
/// </summary>
internal static class ErrorCells
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly XNamespace Link = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static readonly XNamespace Package = "http://schemas.openxmlformats.org/package/2006/relationships";

    public static Dictionary<(string Sheet, string Address), string> Of(byte[] bytes)
    {
        var errors = new Dictionary<(string, string), string>();
        if (bytes is not [(byte)'P', (byte)'K', ..]) return errors;
        using var zip = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
        foreach (var (name, part) in Sheets(zip))
        {
            foreach (var (address, text) in InSheet(part)) errors[(name, address)] = text;
        }

        return errors;
    }

    private static IEnumerable<(string Name, ZipArchiveEntry Part)> Sheets(ZipArchive zip)
    {
        if (zip.GetEntry("xl/workbook.xml") is not { } book || zip.GetEntry("xl/_rels/workbook.xml.rels") is not { } links) yield break;
        var targets = Load(links).Descendants(Package + "Relationship")
            .ToDictionary(e => (string)e.Attribute("Id")!, e => (string)e.Attribute("Target")!);
        foreach (var sheet in Load(book).Descendants(Main + "sheet"))
        {
            if (!targets.TryGetValue((string?)sheet.Attribute(Link + "id") ?? "", out var target)) continue;
            var path = target.StartsWith('/') ? target[1..] : "xl/" + target;
            if (zip.GetEntry(path) is { } part) yield return ((string)sheet.Attribute("name")!, part);
        }
    }

    private static IEnumerable<(string Address, string Text)> InSheet(ZipArchiveEntry part)
    {
        using var stream = part.Open();
        using var xml = XmlReader.Create(stream);
        while (xml.ReadToFollowing("c", Main.NamespaceName))
        {
            if (xml.GetAttribute("t") != "e" || xml.GetAttribute("r") is not { } address) continue;
            if (xml.ReadToDescendant("v", Main.NamespaceName)) yield return (address, xml.ReadElementContentAsString());
        }
    }

    private static XElement Load(ZipArchiveEntry part)
    {
        using var stream = part.Open();
        return XElement.Load(stream);
    }
}
