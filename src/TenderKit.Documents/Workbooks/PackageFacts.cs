using System.Xml;
using DocumentFormat.OpenXml.Packaging;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Workbooks;

/// <summary>Writes title, author and dates of a package; the one clock is the issue date.</summary>
internal static class PackageFacts
{
    private const string Core = "http://schemas.openxmlformats.org/package/2006/metadata/core-properties";
    private const string Dublin = "http://purl.org/dc/elements/1.1/";
    private const string Terms = "http://purl.org/dc/terms/";
    private const string Instance = "http://www.w3.org/2001/XMLSchema-instance";

    public static CoreFilePropertiesPart Write(SpreadsheetDocument document, TenderHead head, string title)
    {
        var part = document.AddCoreFilePropertiesPart();
        using var stream = part.GetStream(FileMode.Create);
        using var xml = XmlWriter.Create(stream);
        xml.WriteStartDocument(true);
        xml.WriteStartElement("cp", "coreProperties", Core);
        xml.WriteElementString("dc", "title", Dublin, SheetXml.Clean(title));
        xml.WriteElementString("dc", "subject", Dublin, SheetXml.Clean(head.Reference));
        xml.WriteElementString("dc", "creator", Dublin, SheetXml.Clean(head.Bidder));
        Date(xml, "created", head.IssueDate);
        Date(xml, "modified", head.IssueDate);
        xml.WriteEndElement();
        return part;
    }

    private static void Date(XmlWriter xml, string name, DateOnly date)
    {
        xml.WriteStartElement("dcterms", name, Terms);
        xml.WriteAttributeString("xsi", "type", Instance, "dcterms:W3CDTF");
        xml.WriteString(FormattableString.Invariant($"{date:yyyy-MM-dd}T00:00:00Z"));
        xml.WriteEndElement();
    }
}
