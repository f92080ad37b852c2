using System.Text;
using Sylvan.Data.Csv;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables;

/// <summary>A delimited text file: comma, semicolon or tab, whichever the file uses.</summary>
internal static class CsvTable
{
    private const int SniffedLines = 50;

    private static readonly char[] Delimiters = [';', '\t', ','];

    static CsvTable() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static (IEnumerable<Table> Tables, IEnumerable<Diagnostic> Found) Read(byte[] bytes, string file)
    {
        var (rows, found) = Stream(bytes, file);
        return ([TableReader.Rectangle(file, null, [.. rows])], found);
    }

    /// <summary>The rows, read anew each time they are asked for, so that a large file is never held as cells.</summary>
    /// <exception cref="DamagedTableException">From here or from the rows: the bytes are no table.</exception>
    public static (IEnumerable<List<Cell>> Rows, IEnumerable<Diagnostic> Found) Stream(byte[] bytes, string file)
    {
        if (bytes is [(byte)'P', (byte)'K', ..] or [0xD0, 0xCF, ..])
            throw new DamagedTableException("the file is a workbook under the name of a text file; rename it to .xlsx or .xls");
        var (text, encoding) = Text(bytes);
        var (delimiter, body) = Delimiter(text);
        var found = encoding is null
            ? Array.Empty<Diagnostic>()
            : [Diagnostic.Note("TK106", $"read as {encoding}, since it is not UTF-8; check the accents", new Place(file))];
        return (Rows(body, delimiter), found);
    }

    /// <summary>The delimiter that gives the most lines the same number of fields, the widest first; a first line <c>sep=;</c> decides and is taken off.</summary>
    internal static (char Delimiter, string Body) Delimiter(string text)
    {
        if (text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text.Length > 4 && text.IndexOf('\n') is var end and > 0)
            return (text[4], text[(end + 1)..]);
        var best = Delimiters.Select(d => (Delimiter: d, Fit: Fit(text, d))).MaxBy(f => f.Fit);
        return (best.Fit.Agreeing == 0 ? ',' : best.Delimiter, text);
    }

    private static (int Agreeing, int Count) Fit(string text, char delimiter)
    {
        var counts = DelimitersPerLine(text, delimiter).Take(SniffedLines).Where(c => c > 0).ToList();
        if (counts.Count == 0) return (0, 0);
        var mode = counts.GroupBy(c => c).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).First();
        return (mode.Count(), mode.Key);
    }

    private static IEnumerable<int> DelimitersPerLine(string text, char delimiter)
    {
        var (count, quoted) = (0, false);
        foreach (var c in text)
        {
            if (c == '"') quoted = !quoted;
            else if (c == delimiter && !quoted) count++;
            else if (c == '\n' && !quoted)
            {
                yield return count;
                count = 0;
            }
        }

        yield return count;
    }

    private static (string Text, string? Encoding) Text(byte[] bytes)
    {
        (Encoding Encoding, int Skip) marked = bytes switch
        {
            [0xEF, 0xBB, 0xBF, ..] => (Encoding.UTF8, 3),
            [0xFF, 0xFE, ..] => (Encoding.Unicode, 2),
            [0xFE, 0xFF, ..] => (Encoding.BigEndianUnicode, 2),
            _ => (Encoding.UTF8, 0),
        };
        if (marked.Skip > 0) return (marked.Encoding.GetString(bytes, marked.Skip, bytes.Length - marked.Skip), null);
        try
        {
            return (new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes), null);
        }
        catch (DecoderFallbackException)
        {
            // accents of the one code page are signs in the other
            var (windows, dos) = (Encoding.GetEncoding(1252).GetString(bytes), Encoding.GetEncoding(850).GetString(bytes));
            return Letters(dos) > Letters(windows) ? (dos, "DOS code page 850") : (windows, "Windows-1252");
        }
    }

    private static int Letters(string text) => text.Count(c => c > '\u007F' && char.IsLetter(c));

    /// <summary>The rows one after another, each as long as the file has it.</summary>
    private static IEnumerable<List<Cell>> Rows(string text, char delimiter)
    {
        var options = new CsvDataReaderOptions { HasHeaders = false, Delimiter = delimiter, MaxBufferSize = 1 << 24, CsvStyle = CsvStyle.Lax, Comment = '\0' };
        using var reader = Sound(() => CsvDataReader.Create(new StringReader(text), options));
        long count = 0;
        for (var row = 1; Sound(reader.Read); row++)
        {
            ReadingLimits.AssertInside(null, row, reader.RowFieldCount);
            ReadingLimits.AssertCells(count += reader.RowFieldCount);
            var cells = new List<Cell>(reader.RowFieldCount);
            for (var c = 0; c < reader.RowFieldCount; c++) cells.Add(new Cell(reader.GetString(c).Trim(), row, c + 1));
            yield return cells;
        }
    }

    private static T Sound<T>(Func<T> step)
    {
        try
        {
            return step();
        }
        catch (Exception e) when (e is CsvFormatException or CsvRecordTooLargeException or InvalidDataException)
        {
            throw new DamagedTableException(
                $"the text cannot be read as a table ({e.Message.TrimEnd('.')}); "
                + "look for an unclosed quotation mark, or save it again as .csv or .xlsx",
                e);
        }
    }
}
