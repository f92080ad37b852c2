using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml.Linq;

namespace TenderKit.Documents.Tests.Workbooks;

/// <summary>Looks into a workbook's parts: formulas and cached values by sheet and address; can change one input cell.</summary>
internal static class WorkbookText
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    /// <summary>Sheet name to part name, in the order of the sheets.</summary>
    public static IReadOnlyList<string> SheetNames(byte[] workbook) =>
        [.. Part(workbook, "xl/workbook.xml").Descendants(Main + "sheet").Select(s => s.Attribute("name")!.Value)];

    public static XDocument Sheet(byte[] workbook, string name) => Part(workbook, PartName(workbook, name));

    public static string? Formula(byte[] workbook, string sheet, string address) => Cell(Sheet(workbook, sheet), address)?.Element(Main + "f")?.Value;

    /// <summary>Every sheet as text: address, then the text, the number to ten digits, or the formula with its value.</summary>
    public static string View(byte[] workbook)
    {
        var text = new StringBuilder();
        foreach (var name in SheetNames(workbook))
        {
            text.Append("== ").Append(name).Append(" ==\n");
            foreach (var cell in Sheet(workbook, name).Descendants(Main + "c").Where(c => c.Value.Length > 0)) text.Append(View(cell)).Append('\n');
        }

        return text.ToString();
    }

    private static string View(XElement cell)
    {
        var formula = cell.Element(Main + "f")?.Value;
        var value = Value(cell) is { } number ? ((double)number).ToString("G10", CultureInfo.InvariantCulture) : cell.Value;
        return cell.Attribute("r")!.Value + "\t" + (formula is null ? value : "=" + formula + "\t" + value);
    }

    /// <summary>Every formula cell: sheet, address, formula, cached value.</summary>
    public static IEnumerable<(string Sheet, string Address, string Formula, decimal? Cached)> Formulas(byte[] workbook) =>
        from name in SheetNames(workbook)
        from cell in Sheet(workbook, name).Descendants(Main + "c")
        where cell.Element(Main + "f") is not null
        select (name, cell.Attribute("r")!.Value, cell.Element(Main + "f")!.Value, Value(cell));

    /// <summary>The same workbook with another number in one cell, as a user would type it.</summary>
    public static byte[] WithNumber(byte[] workbook, string sheet, string address, decimal value)
    {
        var part = PartName(workbook, sheet);
        var xml = Part(workbook, part);
        var cell = Cell(xml, address)!;
        if (cell.Element(Main + "f") is not null) throw new InvalidOperationException("a formula cell is no input");
        cell.Element(Main + "v")!.Value = value.ToString(CultureInfo.InvariantCulture);
        using var stream = new MemoryStream();
        stream.Write(workbook);
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            zip.GetEntry(part)!.Delete();
            using var target = zip.CreateEntry(part).Open();
            xml.Save(target);
        }

        return stream.ToArray();
    }

    /// <summary>Address of the cell in a column whose row holds a text in another column.</summary>
    public static string Find(byte[] workbook, string sheet, string textColumn, string text, string column)
    {
        var row = Sheet(workbook, sheet).Descendants(Main + "c")
            .First(c => c.Attribute("r")!.Value.StartsWith(textColumn, StringComparison.Ordinal) && c.Value == text).Parent!.Attribute("r")!.Value;
        return column + row;
    }

    private static decimal? Value(XElement cell) =>
        cell.Element(Main + "v") is { } v ? decimal.Parse(v.Value, NumberStyles.Float, CultureInfo.InvariantCulture) : null;

    private static XElement? Cell(XDocument sheet, string address) => sheet.Descendants(Main + "c").FirstOrDefault(c => c.Attribute("r")!.Value == address);

    private static string PartName(byte[] workbook, string name)
    {
        var sheet = Part(workbook, "xl/workbook.xml").Descendants(Main + "sheet").Single(s => s.Attribute("name")!.Value == name);
        var id = sheet.Attributes().Single(a => a.Name.LocalName == "id").Value;
        var relation = Part(workbook, "xl/_rels/workbook.xml.rels").Root!.Elements().Single(r => r.Attribute("Id")!.Value == id);
        return relation.Attribute("Target")!.Value.TrimStart('/') is var target && target.StartsWith("xl/", StringComparison.Ordinal) ? target : "xl/" + relation.Attribute("Target")!.Value;
    }

    private static XDocument Part(byte[] workbook, string name)
    {
        using var zip = new ZipArchive(new MemoryStream(workbook));
        using var stream = zip.GetEntry(name)!.Open();
        return XDocument.Load(stream);
    }
}
