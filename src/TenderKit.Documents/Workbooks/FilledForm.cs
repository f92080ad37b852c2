using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Tendering.Forms;
using Xlsx = DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>
/// The employer's form with our rates in it. Only the cells of the rates change, and the mark that makes the spreadsheet program calculate when the
/// file is opened; formulas lose the values they held for the empty form, so that nobody reads an old zero. Every other part of the file stays as it was.
/// </summary>
public static class FilledForm
{
    /// <param name="form">The form as read.</param>
    /// <param name="priced">What is written.</param>
    /// <param name="kept">Lines whose rate cell holds a formula of the employer's and was left alone.</param>
    /// <exception cref="OpenXmlPackageException">The bytes are no workbook.</exception>
    public static byte[] Make(PriceForm form, PricedForm priced, out IReadOnlyList<FormLine> kept)
    {
        using var culture = InvariantScope.Enter();
        using var stream = new MemoryStream();
        stream.Write([.. form.Bytes]);
        var left = new List<FormLine>();
        using (var document = SpreadsheetDocument.Open(stream, true))
        {
            var workbook = document.WorkbookPart!;
            foreach (var group in priced.Answers.Where(a => a.Rate is not null).GroupBy(a => a.Line.Sheet, StringComparer.Ordinal))
            {
                var settings = form.Settings.Sheets.First(s => string.Equals(s.Sheet, group.Key, StringComparison.OrdinalIgnoreCase));
                var rows = SheetPart(workbook, group.Key).Worksheet.GetFirstChild<SheetData>()!;
                foreach (var answer in group)
                {
                    if (!Write(rows, answer.Line.Row, settings.RateColumn, answer.Rate!.Value)) left.Add(answer.Line);
                }
            }

            foreach (var part in workbook.WorksheetParts) ForgetResults(part.Worksheet);
            Recalculate(workbook.Workbook);
        }

        kept = left;
        return stream.ToArray();
    }

    private static WorksheetPart SheetPart(WorkbookPart workbook, string name)
    {
        var sheet = workbook.Workbook.Sheets!.Elements<Xlsx.Sheet>().First(s => string.Equals(s.Name!.Value, name, StringComparison.OrdinalIgnoreCase));
        return (WorksheetPart)workbook.GetPartById(sheet.Id!.Value!);
    }

    /// <summary>Whether the number was written; a formula is left alone.</summary>
    private static bool Write(SheetData rows, int row, int column, decimal rate)
    {
        var address = Address.ColumnName(column) + row.ToString(CultureInfo.InvariantCulture);
        var cell = CellAt(RowAt(rows, (uint)row), address, column);
        if (cell.CellFormula is not null) return false;
        cell.DataType = null;
        cell.InlineString = null;
        cell.CellValue = new CellValue(rate);
        return true;
    }

    private static Row RowAt(SheetData rows, uint index)
    {
        var next = rows.Elements<Row>().FirstOrDefault(r => r.RowIndex!.Value >= index);
        if (next?.RowIndex?.Value == index) return next;
        var made = new Row { RowIndex = index };
        if (next is null) rows.AppendChild(made);
        else rows.InsertBefore(made, next);
        return made;
    }

    private static Cell CellAt(Row row, string address, int column)
    {
        var next = row.Elements<Cell>().FirstOrDefault(c => ColumnOf(c.CellReference!.Value!) >= column);
        if (next?.CellReference?.Value == address) return next;
        var made = new Cell { CellReference = address };
        if (next is null) row.AppendChild(made);
        else row.InsertBefore(made, next);
        return made;
    }

    private static int ColumnOf(string address) => address.TakeWhile(char.IsAsciiLetter).Aggregate(0, (sum, letter) => (sum * 26) + char.ToUpperInvariant(letter) - 'A' + 1);

    private static void ForgetResults(Worksheet sheet)
    {
        foreach (var cell in sheet.Descendants<Cell>().Where(c => c.CellFormula is not null))
        {
            cell.CellValue = null;
            cell.DataType = null;
        }
    }

    private static void Recalculate(Workbook workbook)
    {
        var properties = workbook.CalculationProperties ??= new CalculationProperties();
        properties.FullCalculationOnLoad = true;
    }
}
