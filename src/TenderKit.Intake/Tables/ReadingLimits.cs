using System.Globalization;
using System.IO.Compression;

namespace TenderKit.Intake.Tables;

/// <summary>
/// What a file may ask of the machine. A list of ten thousand sites is some ten megabytes; beyond these limits a file is damaged, made to
/// harm, or no site list. Common practice, no source.
/// </summary>
public static class ReadingLimits
{
    public const long GreatestFileBytes = 64L << 20;

    /// <summary>Bytes of all parts of a packed file that are read, unpacked.</summary>
    public const long GreatestUnpackedBytes = 96L << 20;

    public const int GreatestRows = 100_000;
    public const int GreatestColumns = 1_000;
    public const int GreatestCells = 2_000_000;

    internal static string FileMessage(long bytes) => string.Create(CultureInfo.InvariantCulture,
        $"the file has {bytes >> 20} MB, more than the {GreatestFileBytes >> 20} MB read here; save the list alone, without pictures, as .xlsx or .csv");

    /// <summary>Refuses a packed file whose parts would not fit into memory.</summary>
    /// <exception cref="TooLargeException">The parts to be read are too large.</exception>
    internal static void AssertUnpackable(ZipArchive zip, Func<ZipArchiveEntry, bool> isRead)
    {
        long bytes = 0;
        foreach (var entry in zip.Entries.Where(isRead)) bytes += entry.Length;
        if (bytes > GreatestUnpackedBytes)
            throw new TooLargeException(string.Create(CultureInfo.InvariantCulture,
                $"the file unpacks to {bytes >> 20} MB, more than the {GreatestUnpackedBytes >> 20} MB read here; save the list alone in a new file"));
    }

    /// <summary>Refuses a cell far outside any list.</summary>
    /// <exception cref="TooLargeException">The row or the column is beyond the limits.</exception>
    internal static void AssertInside(string? sheet, int row, int column)
    {
        if (row <= GreatestRows && column <= GreatestColumns) return;
        var where = sheet is null ? "" : $" of sheet '{sheet}'";
        throw new TooLargeException(string.Create(CultureInfo.InvariantCulture,
            $"cell {new Cell("", row, column).Address}{where} is filled; at most {GreatestRows} rows and {GreatestColumns} columns are read: delete what lies outside the list"));
    }

    /// <summary>Refuses a table with more cells than are read.</summary>
    /// <exception cref="TooLargeException">There are too many cells.</exception>
    internal static void AssertCells(long count)
    {
        if (count > GreatestCells)
            throw new TooLargeException(string.Create(CultureInfo.InvariantCulture,
                $"the file holds more than {GreatestCells} cells; save the list alone in a new file"));
    }
}

/// <summary>The file asks for more than is read; the message tells the limit and what to do.</summary>
internal sealed class TooLargeException(string message) : Exception(message);
