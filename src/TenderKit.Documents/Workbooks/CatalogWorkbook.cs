using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Catalog.Families;
using Xlsx = DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>A catalogue as one workbook: a sheet per family under the names and headings of the csv files, so that it can be edited and imported again.</summary>
public static class CatalogWorkbook
{
    public static byte[] Make(PartsCatalog parts)
    {
        var byFamily = parts.All.ToLookup(PartFamily.Of);
        using var stream = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var workbook = document.AddWorkbookPart();
            var sheets = new Xlsx.Sheets();
            foreach (var family in PartFamily.All.Where(f => byFamily.Contains(f) || !f.Optional))
            {
                var id = "r" + family.Name.Replace("_", "", StringComparison.Ordinal);
                Write(workbook.AddNewPart<WorksheetPart>(id), family, byFamily[family]);
                sheets.Append(new Xlsx.Sheet { Name = family.Name, SheetId = (uint)sheets.ChildElements.Count + 1, Id = id });
            }

            workbook.Workbook = new Workbook(sheets);
            document.ChangeIdOfPart(workbook, "rBook");
        }

        stream.Position = 0;
        return PlainZip.Repack(stream);
    }

    private static void Write(WorksheetPart sheet, PartFamily family, IEnumerable<Part> parts)
    {
        using var writer = OpenXmlWriter.Create(sheet);
        writer.WriteStartElement(new Worksheet());
        writer.WriteElement(new SheetViews(new SheetView(new Pane { VerticalSplit = 1, HorizontalSplit = 1, TopLeftCell = "B2", ActivePane = PaneValues.BottomRight, State = PaneStateValues.Frozen }) { WorkbookViewId = 0 }));
        writer.WriteElement(new Columns(new Column { Min = 1, Max = 1, Width = 18, CustomWidth = true }, new Column { Min = 2, Max = 2, Width = 60, CustomWidth = true }));
        writer.WriteStartElement(new SheetData());
        var row = 1u;
        Row(writer, row, family.Columns.Select((c, i) => Words(c.Name, i + 1, row)));
        foreach (var part in parts)
        {
            row++;
            Row(writer, row, family.Columns.Select((c, i) => CellOf(c, part, i + 1, row)).OfType<Cell>());
        }

        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static void Row(OpenXmlWriter writer, uint row, IEnumerable<Cell> cells) => writer.WriteElement(new Row(cells) { RowIndex = row });

    private static Cell? CellOf(PartColumn column, Part part, int number, uint row) => column.Of(part) switch
    {
        null => null,
        double value => Figure(value.ToString("R", CultureInfo.InvariantCulture), number, row),
        decimal value => Figure(value.ToString("0.############################", CultureInfo.InvariantCulture), number, row),
        int value => Figure(value.ToString(CultureInfo.InvariantCulture), number, row),
        var value when column.TextOf(value) is { Length: > 0 } text => Words(text, number, row),
        _ => null,
    };

    private static Cell Figure(string text, int column, uint row) => new(new CellValue(text)) { CellReference = Reference(column, row) };

    private static Cell Words(string text, int column, uint row) => new(new InlineString(new Text(SheetXml.Clean(text)) { Space = SpaceProcessingModeValues.Preserve }))
    {
        CellReference = Reference(column, row),
        DataType = CellValues.InlineString,
    };

    private static string Reference(int column, uint row) => string.Create(CultureInfo.InvariantCulture, $"{Intake.Tables.Cell.ColumnName(column)}{row}");
}
