using System.Collections.Immutable;

namespace TenderKit.Documents.Bids;

/// <summary>
/// Writes a set of documents so that a folder never holds half a bid: every file is first written beside its place, then all take their
/// places. Other files in the folder are left alone.
/// </summary>
public static class BidFolder
{
    private const string Beside = ".being-written";

    /// <exception cref="IOException">A file cannot be written or replaced; nothing was changed. The message names the file and what to do.</exception>
    /// <exception cref="UnauthorizedAccessException">No right to write there; nothing was changed.</exception>
    public static void Write(string folder, ImmutableArray<BidDocument> documents)
    {
        var places = documents.Select(d => (Document: d, Path: Path.Combine(folder, d.RelativePath.Replace('/', Path.DirectorySeparatorChar)))).ToList();
        try
        {
            foreach (var (document, path) in places)
            {
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path + Beside, document.Bytes);
            }

            foreach (var (_, path) in places) AssertReplaceable(path);
            foreach (var (_, path) in places) File.Move(path + Beside, path, overwrite: true);
        }
        finally
        {
            foreach (var (_, path) in places.Where(p => File.Exists(p.Path + Beside))) File.Delete(path + Beside);
        }
    }

    private static void AssertReplaceable(string path)
    {
        if (!File.Exists(path)) return;
        try
        {
            using var held = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e)
        {
            throw new IOException($"{path} is open in another program; close it and run again. Nothing was changed.", e);
        }
    }
}
