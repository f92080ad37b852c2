using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;
using TenderKit.Intake.Tables;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>One sheet as a person left it: cells, merged ranges, what is hidden.</summary>
/// <param name="Rows">Cells: a number, a text, or null for an empty cell.</param>
internal sealed record Sheet(string Name, object?[][] Rows)
{
    public string[] Merged { get; init; } = [];

    public int[] HiddenColumns { get; init; } = [];

    public int[] HiddenRows { get; init; } = [];

    public bool IsHidden { get; init; }
}

/// <summary>Writes workbooks part by part, so that a test controls what a spreadsheet program would store.</summary>
internal static class Book
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Links = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";

    public static byte[] Of(params Sheet[] sheets)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            var ids = Enumerable.Range(1, sheets.Length).ToList();
            Add(zip, "[Content_Types].xml", $"<Types xmlns=\"{Package}/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/>"
                + string.Concat(ids.Select(i => $"<Override PartName=\"/xl/worksheets/sheet{i}.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>")) + "</Types>");
            Add(zip, "_rels/.rels", $"<Relationships xmlns=\"{Package}/relationships\"><Relationship Id=\"r1\" Type=\"{Links}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            Add(zip, "xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Links}\"><sheets>"
                + string.Concat(sheets.Select((s, i) => $"<sheet name=\"{Escaped(s.Name)}\" sheetId=\"{i + 1}\"{(s.IsHidden ? " state=\"hidden\"" : "")} r:id=\"r{i + 1}\"/>")) + "</sheets></workbook>");
            Add(zip, "xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"{Package}/relationships\">"
                + string.Concat(ids.Select(i => $"<Relationship Id=\"r{i}\" Type=\"{Links}/worksheet\" Target=\"worksheets/sheet{i}.xml\"/>")) + "</Relationships>");
            foreach (var (sheet, i) in sheets.Select((s, i) => (s, i + 1))) Add(zip, $"xl/worksheets/sheet{i}.xml", Xml(sheet));
        }

        return stream.ToArray();
    }

    private static string Xml(Sheet sheet)
    {
        var cols = string.Concat(sheet.HiddenColumns.Select(c => $"<col min=\"{c}\" max=\"{c}\" width=\"0\" hidden=\"1\"/>"));
        var rows = string.Concat(sheet.Rows.Select((cells, i) => $"<row r=\"{i + 1}\"{(sheet.HiddenRows.Contains(i + 1) ? " hidden=\"1\"" : "")}>"
            + string.Concat(cells.Select((value, c) => CellXml(value, Cell.ColumnName(c + 1) + (i + 1).ToString(CultureInfo.InvariantCulture)))) + "</row>"));
        var merges = sheet.Merged.Length == 0 ? "" : $"<mergeCells count=\"{sheet.Merged.Length}\">{string.Concat(sheet.Merged.Select(m => $"<mergeCell ref=\"{m}\"/>"))}</mergeCells>";
        return $"<worksheet xmlns=\"{Main}\">{(cols.Length > 0 ? $"<cols>{cols}</cols>" : "")}<sheetData>{rows}</sheetData>{merges}</worksheet>";
    }

    private static string CellXml(object? value, string address) => value switch
    {
        null => "",
        string text when text.StartsWith('#') => $"<c r=\"{address}\" t=\"e\"><v>{text}</v></c>",
        string text => $"<c r=\"{address}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{Escaped(text)}</t></is></c>",
        IFormattable number => $"<c r=\"{address}\"><v>{number.ToString(null, CultureInfo.InvariantCulture)}</v></c>",
        _ => throw new ArgumentException("a cell is a number, a text or empty", nameof(value)),
    };

    private static string Escaped(string text) => SecurityElement.Escape(text)!;

    private static void Add(ZipArchive zip, string name, string xml)
    {
        var entry = zip.CreateEntry(name);
        entry.LastWriteTime = new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero);
        using var writer = new StreamWriter(entry.Open(), new UTF8Encoding(false));
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + xml);
    }
}
