using System.IO.Compression;

namespace TenderKit.Documents.Workbooks;

/// <summary>Packs a package again with its entries in a fixed order and at a fixed time, so that equal contents give equal bytes.</summary>
internal static class PlainZip
{
    private const string First = "[Content_Types].xml";

    /// <summary>Earliest time a zip can hold.</summary>
    private static readonly DateTimeOffset FixedTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static byte[] Repack(Stream package)
    {
        using var source = new ZipArchive(package, ZipArchiveMode.Read, leaveOpen: true);
        using var result = new MemoryStream();
        using (var target = new ZipArchive(result, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in source.Entries.OrderBy(e => e.FullName != First).ThenBy(e => e.FullName, StringComparer.Ordinal)) Copy(entry, target);
        }

        return result.ToArray();
    }

    private static void Copy(ZipArchiveEntry entry, ZipArchive target)
    {
        var copy = target.CreateEntry(entry.FullName, CompressionLevel.Optimal);
        copy.LastWriteTime = FixedTime;
        using var from = entry.Open();
        using var to = copy.Open();
        from.CopyTo(to);
    }
}
