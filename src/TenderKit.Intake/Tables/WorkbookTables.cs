using System.Globalization;
using System.Text;
using ExcelDataReader;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables;

/// <summary>Sheets of an .xlsx or .xls workbook.</summary>
internal static class WorkbookTables
{
    static WorkbookTables() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static (IEnumerable<Table> Tables, IEnumerable<Diagnostic> Found) Read(byte[] bytes, string file)
    {
        try
        {
            using var stream = new MemoryStream(bytes, writable: false);
            using var reader = ExcelReaderFactory.CreateReader(stream);
            var tables = new List<Table>();
            var errors = ErrorCells.Of(bytes);
            do tables.Add(Sheet(reader, file, errors));
            while (reader.NextResult());
            return (tables, []);
        }
        catch (ExcelDataReader.Exceptions.InvalidPasswordException e)
        {
            throw new DamagedTableException("the workbook is protected by a password; save a copy without one", e);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // the reader meets damaged bytes with exceptions of many kinds, so none can be singled out
            throw new DamagedTableException(
                $"the workbook is damaged or of another kind than its name says ({e.Message.TrimEnd('.')}); "
                + "open it in a spreadsheet program and save it again as .xlsx",
                e);
        }
    }

    private static Table Sheet(IExcelDataReader reader, string file, Dictionary<(string Sheet, string Address), string> errors)
    {
        var rows = new List<List<Cell>>();
        while (reader.Read())
        {
            while (rows.Count < reader.Depth) rows.Add([]);
            var row = rows.Count + 1;
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(c => Cell(reader, row, c)).Select(c => WithError(c, reader.Name, errors))]);
        }

        return TableReader.Rectangle(file, reader.Name, rows);
    }

    private static Cell WithError(Cell cell, string sheet, Dictionary<(string Sheet, string Address), string> errors) =>
        errors.Count > 0 && cell.IsEmpty && errors.TryGetValue((sheet, cell.Address), out var text) ? cell with { Text = text } : cell;

    private static Cell Cell(IExcelDataReader reader, int row, int column)
    {
        return reader.GetValue(column) switch
        {
            null => new Cell("", row, column + 1),
            double d when reader.GetNumberFormatString(column)?.Contains('%', StringComparison.Ordinal) == true =>
                new Cell(PercentText(d), row, column + 1, d),
            double d => new Cell(TableReader.NumberText(d), row, column + 1, d),
            int i => new Cell(TableReader.NumberText(i), row, column + 1, i),
            bool b => new Cell(b ? "true" : "false", row, column + 1),
            DateTime t => new Cell(DateText(t), row, column + 1),
            TimeSpan t => new Cell(t.ToString("c", CultureInfo.InvariantCulture), row, column + 1),
            var other => new Cell(Convert.ToString(other, CultureInfo.InvariantCulture)!.Trim(), row, column + 1),
        };
    }

    /// <summary>A cell shown as 5 % holds 0.05; its text is what the user sees, so that a csv of the same sheet reads the same.</summary>
    private static string PercentText(double fraction) =>
        (Math.Abs(fraction) < 1e9 ? TableReader.NumberText((double)((decimal)fraction * 100)) : TableReader.NumberText(fraction * 100)) + " %";

    private static string DateText(DateTime time) =>
        time.ToString(time.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
}
