using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;

namespace TenderKit.Intake.Tables;

/// <summary>
/// What one pass over the raw sheets of an .xlsx workbook tells before it is read: error cells (#REF!, #N/A), which the workbook reader
/// passes over as empty so that they would silently take the default; what is hidden; and how far the sheet is filled.
/// </summary>
internal sealed class SheetScan
{
    private static readonly XmlReaderSettings Safe = new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null };

    /// <summary>Text of error cells by address.</summary>
    public Dictionary<string, string> Errors { get; } = [];

    public SortedSet<int> HiddenColumns { get; } = [];

    public SortedSet<int> HiddenRows { get; } = [];

    public int LastFilledRow { get; private set; }

    public int LastFilledColumn { get; private set; }

    public int FilledCells { get; private set; }

    /// <summary>A scan per sheet name; none for the old binary kind.</summary>
    /// <exception cref="TooLargeException">The workbook is beyond the limits.</exception>
    public static Dictionary<string, SheetScan> Of(byte[] bytes)
    {
        var scans = new Dictionary<string, SheetScan>(StringComparer.Ordinal);
        if (bytes is not [(byte)'P', (byte)'K', ..]) return scans;
        using var zip = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
        ReadingLimits.AssertUnpackable(zip, e => e.FullName.EndsWith(".xml", StringComparison.OrdinalIgnoreCase)
            || e.FullName.EndsWith(".rels", StringComparison.OrdinalIgnoreCase) || e.FullName.EndsWith(".bin", StringComparison.OrdinalIgnoreCase));
        long cells = 0;
        foreach (var (name, part) in Sheets(zip))
        {
            var scan = scans[name] = new SheetScan();
            scan.Read(name, part);
            ReadingLimits.AssertCells(cells += scan.FilledCells);
        }

        return scans;
    }

    private static IEnumerable<(string Name, ZipArchiveEntry Part)> Sheets(ZipArchive zip)
    {
        if (zip.GetEntry("xl/workbook.xml") is not { } book || zip.GetEntry("xl/_rels/workbook.xml.rels") is not { } links) yield break;
        var targets = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var link in Load(links).Descendants().Where(e => e.Name.LocalName == "Relationship"))
            targets[(string?)link.Attribute("Id") ?? ""] = (string?)link.Attribute("Target") ?? "";
        foreach (var sheet in Load(book).Descendants().Where(e => e.Name.LocalName == "sheet"))
        {
            var id = sheet.Attributes().FirstOrDefault(a => a.Name.LocalName == "id")?.Value ?? "";
            if (!targets.TryGetValue(id, out var target)) continue;
            var path = target.StartsWith('/') ? target[1..] : "xl/" + target;
            if (zip.GetEntry(path) is { } part) yield return ((string?)sheet.Attribute("name") ?? "", part);
        }
    }

    private void Read(string sheet, ZipArchiveEntry part)
    {
        using var stream = part.Open();
        using var xml = XmlReader.Create(stream, Safe);
        var (row, column) = (0, 0);
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element) continue;
            switch (xml.LocalName)
            {
                case "col":
                    Hide(xml);
                    break;
                case "row":
                    (row, column) = (Whole(xml.GetAttribute("r"), row + 1), 0);
                    if (IsTrue(xml.GetAttribute("hidden"))) HiddenRows.Add(row);
                    break;
                case "c":
                    (row, column) = Address(xml.GetAttribute("r"), row, column + 1);
                    if (!xml.IsEmptyElement) Fill(sheet, row, column, xml.GetAttribute("t") == "e", xml);
                    break;
            }
        }
    }

    private void Fill(string sheet, int row, int column, bool isError, XmlReader xml)
    {
        ReadingLimits.AssertInside(sheet, row, column);
        ReadingLimits.AssertCells(++FilledCells);
        (LastFilledRow, LastFilledColumn) = (Math.Max(LastFilledRow, row), Math.Max(LastFilledColumn, column));
        if (isError) Errors[new Cell("", row, column).Address] = TextOfValue(xml);
    }

    private static string TextOfValue(XmlReader xml)
    {
        var depth = xml.Depth;
        while (xml.Read() && xml.Depth > depth)
        {
            if (xml is { NodeType: XmlNodeType.Text }) return xml.Value;
        }

        return "#ERROR";
    }

    private void Hide(XmlReader col)
    {
        if (!IsTrue(col.GetAttribute("hidden"))) return;
        var first = Math.Max(1, Whole(col.GetAttribute("min"), 1));
        var last = Math.Min(Whole(col.GetAttribute("max"), first), ReadingLimits.GreatestColumns);
        for (var c = first; c <= last; c++) HiddenColumns.Add(c);
    }

    private static (int Row, int Column) Address(string? reference, int row, int next)
    {
        if (reference is null) return (row, next);
        long column = 0;
        var i = 0;
        for (; i < reference.Length && char.IsAsciiLetter(reference[i]) && column < int.MaxValue / 32; i++) column = (column * 26) + (char.ToUpperInvariant(reference[i]) - 'A' + 1);
        return (Whole(reference[i..], row), column == 0 ? next : (int)column);
    }

    private static int Whole(string? text, int otherwise)
    {
        if (!long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)) return otherwise;
        return (int)Math.Min(value, int.MaxValue / 2);
    }

    private static bool IsTrue(string? flag) => flag is "1" or "true";

    private static XElement Load(ZipArchiveEntry part)
    {
        using var stream = part.Open();
        using var xml = XmlReader.Create(stream, Safe);
        return XElement.Load(xml);
    }
}

/// <summary>What a user does not see of a sheet, and its merged cells.</summary>
internal readonly record struct SheetLooks(ImmutableArray<CellRange> Merged, ImmutableArray<int> HiddenColumns, ImmutableArray<int> HiddenRows, bool IsHidden)
{
    public Table On(Table table) =>
        table with { Merged = Merged, HiddenColumns = HiddenColumns, HiddenRows = HiddenRows, IsHidden = IsHidden };
}
