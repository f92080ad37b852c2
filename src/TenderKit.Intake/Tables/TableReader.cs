using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables;

/// <summary>Reads csv files and workbooks into cells; what the cells mean is decided elsewhere.</summary>
public static class TableReader
{
    /// <summary>Reads a .csv, .txt, .tsv, .xlsx or .xls file.</summary>
    public static Outcome<TableFile> Read(string path)
    {
        var place = new Place(Path.GetFileName(path));
        try
        {
            return new FileInfo(path) is { Exists: true, Length: > ReadingLimits.GreatestFileBytes and var length }
                ? Outcome.None<TableFile>(Diagnostic.Error("TK107", ReadingLimits.FileMessage(length), place))
                : Read(Bytes(path), Path.GetFileName(path));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Outcome.None<TableFile>(Diagnostic.Error("TK101", "the file does not exist; check the name and the folder", place));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Outcome.None<TableFile>(
                Diagnostic.Error("TK102",
                    "the file cannot be opened: it may be open in another program, or you may lack the right to read it; close it and try again",
                        place));
        }
    }

    /// <summary>Reads the rows of a delimited text one after another; the whole text is gone through once before, so that what follows cannot fail.</summary>
    public static Outcome<TableRows> Rows(string path)
    {
        var file = Path.GetFileName(path);
        try
        {
            if (Bytes(path) is not { Length: > 0 } bytes)
                return Outcome.None<TableRows>(Diagnostic.Error("TK105", "the file is empty; save it again from the program that made it", new Place(file)));
            var (rows, found) = CsvTable.Stream(bytes, file);
            var mark = DecimalMarks.Guess(rows.SelectMany(r => r).Select(c => c.Text).Where(DecimalMarks.MayTell));
            return rows.Any(r => r.Exists(c => !c.IsEmpty))
                ? Outcome.Of(new TableRows(file, null, mark, rows), found)
                : Outcome.None<TableRows>(Diagnostic.Error("TK105", "the file holds no filled cell; check that the right file was saved", new Place(file)));
        }
        catch (DamagedTableException e)
        {
            return Outcome.None<TableRows>(Diagnostic.Error("TK103", e.Message, new Place(file)));
        }
        catch (TooLargeException e)
        {
            return Outcome.None<TableRows>(Diagnostic.Error("TK107", e.Message, new Place(file)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Outcome.None<TableRows>(Read(path).Diagnostics);
        }
    }

    /// <summary>Reads the bytes of a file; the extension of <paramref name="fileName"/> says of which kind.</summary>
    public static Outcome<TableFile> Read(byte[] bytes, string fileName)
    {
        var place = new Place(fileName);
        if (bytes.Length == 0)
            return Outcome.None<TableFile>(Diagnostic.Error("TK105", "the file is empty; save it again from the program that made it", place));
        return Path.GetExtension(fileName).ToUpperInvariant() switch
        {
            ".CSV" or ".TSV" or ".TXT" => Tables(bytes, fileName, CsvTable.Read),
            ".XLSX" or ".XLS" => Tables(bytes, fileName, WorkbookTables.Read),
            var other => Outcome.None<TableFile>(
                Diagnostic.Error("TK104", $"files of the kind '{other}' are not read as tables; save it as .xlsx, .xls or .csv", place)),
        };
    }

    /// <summary>Bytes of a file, also while a spreadsheet program has it open.</summary>
    private static byte[] Bytes(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    /// <summary>Number as the text of a cell: the shortest text that reads back to the same double, whole numbers without exponent.</summary>
    internal static string NumberText(double value) =>
        Math.Abs(value) < 1e15 && value == Math.Floor(value)
            ? value.ToString("0", CultureInfo.InvariantCulture)
            : value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Rows of equal length, empty trailing rows and columns cut off.</summary>
    public static Table Rectangle(string file, string? sheet, List<List<Cell>> rows)
    {
        while (rows.Count > 0 && rows[^1].TrueForAll(c => c.IsEmpty)) rows.RemoveAt(rows.Count - 1);
        var width = rows.Count == 0 ? 0 : rows.Max(r => r.FindLastIndex(c => !c.IsEmpty) + 1);
        var padded = rows.Select((cells, r) => Enumerable.Range(0, width)
            .Select(c => c < cells.Count ? cells[c] : new Cell("", r + 1, c + 1)).ToImmutableArray());
        return new Table(file, sheet, [.. padded]);
    }

    private static Outcome<TableFile> Tables(byte[] bytes, string fileName, Func<byte[], string,
        (IEnumerable<Table> Tables, IEnumerable<Diagnostic> Found)> read)
    {
        try
        {
            var (tables, found) = read(bytes, fileName);
            var file = new TableFile(fileName, [.. tables], Convert.ToHexStringLower(SHA256.HashData(bytes)));
            return file.Tables.Any(t => t.Rows.Length > 0)
                ? Outcome.Of(file, found)
                : Outcome.None<TableFile>(Diagnostic.Error("TK105", "the file holds no filled cell; check that the right file was saved",
                    new Place(fileName)));
        }
        catch (TooLargeException e)
        {
            return Outcome.None<TableFile>(Diagnostic.Error("TK107", e.Message, new Place(fileName)));
        }
        catch (DamagedTableException e)
        {
            return Outcome.None<TableFile>(Diagnostic.Error("TK103", e.Message, new Place(fileName)));
        }
    }
}

/// <summary>The bytes are not what the extension says; the message tells the user what to do.</summary>
internal sealed class DamagedTableException(string message, Exception? inner = null) : Exception(message, inner);
