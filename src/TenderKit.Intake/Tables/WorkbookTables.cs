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
            var scans = SheetScan.Of(bytes);
            using var stream = new MemoryStream(bytes, writable: false);
            using var reader = ExcelReaderFactory.CreateReader(stream);
            var tables = new List<Table>();
            long cells = 0;
            do
            {
                tables.Add(Sheet(reader, file, scans.GetValueOrDefault(reader.Name)));
                ReadingLimits.AssertCells(cells += (long)tables[^1].Rows.Length * (tables[^1].Rows.FirstOrDefault() is { IsDefault: false } r ? r.Length : 0));
            }
            while (reader.NextResult());
            return (tables, []);
        }
        catch (ExcelDataReader.Exceptions.InvalidPasswordException e)
        {
            throw new DamagedTableException("the workbook is protected by a password; save a copy without one", e);
        }
        catch (Exception e) when (e is not OutOfMemoryException and not TooLargeException)
        {
            // the reader meets damaged bytes with exceptions of many kinds, so none can be singled out
            throw new DamagedTableException(
                $"the workbook is damaged or of another kind than its name says ({e.Message.TrimEnd('.')}); "
                + "open it in a spreadsheet program and save it again as .xlsx",
                e);
        }
    }

    private static Table Sheet(IExcelDataReader reader, string file, SheetScan? scan)
    {
        var rows = new List<List<Cell>>();
        var hiddenRows = new SortedSet<int>(scan?.HiddenRows ?? []);
        var width = Math.Min(reader.FieldCount, scan?.LastFilledColumn ?? ReadingLimits.GreatestColumns);
        var height = scan?.LastFilledRow ?? ReadingLimits.GreatestRows;
        while (rows.Count < height && reader.Read())
        {
            while (rows.Count < Math.Min(reader.Depth, height)) rows.Add([]);
            var row = rows.Count + 1;
            rows.Add([.. Enumerable.Range(0, width).Select(c => Cell(reader, row, c)).Select(c => WithError(c, scan))]);
            if (scan is null && reader.RowHeight == 0) hiddenRows.Add(row);
        }

        var table = TableReader.Rectangle(file, reader.Name, rows);
        return LooksOf(reader, scan, width, hiddenRows).On(table);
    }

    private static SheetLooks LooksOf(IExcelDataReader reader, SheetScan? scan, int width, IEnumerable<int> hiddenRows)
    {
        var merged = (reader.MergeCells ?? []).Select(m => new CellRange(m.FromRow + 1, m.FromColumn + 1, m.ToRow + 1, m.ToColumn + 1));
        IEnumerable<int> hidden = scan is not null ? scan.HiddenColumns : Enumerable.Range(0, width).Where(c => reader.GetColumnWidth(c) == 0).Select(c => c + 1);
        return new([.. merged], [.. hidden], [.. hiddenRows], reader.VisibleState is not (null or "visible"));
    }

    private static Cell WithError(Cell cell, SheetScan? scan) =>
        cell.IsEmpty && scan is { Errors.Count: > 0 } && scan.Errors.TryGetValue(cell.Address, out var text) ? cell with { Text = text } : cell;

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
