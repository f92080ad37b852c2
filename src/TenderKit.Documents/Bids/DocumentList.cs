using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace TenderKit.Documents.Bids;

/// <summary>
/// The list of a bid's documents with their digests, in the form that common checking programs read (<c>digest, two spaces, path</c>).
/// By it a later run knows which documents are its own and unchanged since, and whoever receives the folder can check that it is whole.
/// </summary>
internal sealed class DocumentList
{
    public const string FileName = "documents.sha256";

    private readonly string _folder;
    private readonly ILookup<string, string> _digests;

    private DocumentList(string folder, ILookup<string, string> digests)
    {
        _folder = folder;
        _digests = digests;
    }

    /// <summary>The lists earlier runs left in a folder, the unfinished one too; empty when there is none or it cannot be read.</summary>
    public static DocumentList In(string folder) => new(
        folder,
        new[] { FileName, BidFolder.UnfinishedName }.Select(name => Path.Combine(folder, name)).Where(File.Exists).SelectMany(File.ReadAllLines)
            .Select(l => l.Split("  ", 2)).Where(f => f.Length == 2 && IsInside(f[1])).ToLookup(f => f[1], f => f[0], StringComparer.Ordinal));

    /// <summary>The list of these documents.</summary>
    public static BidDocument Of(ImmutableArray<BidDocument> documents) => new(FileName, Encoding.UTF8.GetBytes(string.Concat(
        documents.OrderBy(d => d.RelativePath, StringComparer.Ordinal).Select(d => $"{Convert.ToHexStringLower(SHA256.HashData(d.Bytes))}  {d.RelativePath}\n"))));

    /// <summary>Removes what the earlier run wrote, this one did not and nobody changed; names all else that lies among the documents.</summary>
    public FolderChanges ClearEarlier(ImmutableArray<BidDocument> written)
    {
        var now = written.Select(d => d.RelativePath).ToHashSet(StringComparer.Ordinal);
        var removed = Earlier.Where(d => !now.Contains(d) && IsUnchanged(d)).Where(Remove).ToImmutableArray();
        return new(removed, [.. Beneath(now).Except(now, StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
    }

    /// <summary>Whether somebody worked on a document since the earlier run wrote it, so that replacing it would lose that work.</summary>
    public bool IsChangedByHand(BidDocument document) =>
        _digests.Contains(document.RelativePath) && File.Exists(PathOf(document.RelativePath)) && !IsUnchanged(document.RelativePath)
        && DigestOf(document.RelativePath) != Convert.ToHexStringLower(SHA256.HashData(document.Bytes));

    private IEnumerable<string> Earlier => _digests.Select(d => d.Key).Order(StringComparer.Ordinal);

    /// <summary>Files in the folders the documents lie in, relative to the bid's folder.</summary>
    private IEnumerable<string> Beneath(IEnumerable<string> documents) =>
        documents.Select(d => d.Split('/')[0]).Concat(Earlier.Select(d => d.Split('/')[0])).Distinct(StringComparer.Ordinal)
            .Select(top => Path.Combine(_folder, top)).Where(Directory.Exists)
            .SelectMany(top => Directory.EnumerateFiles(top, "*", SearchOption.AllDirectories))
            .Select(f => Path.GetRelativePath(_folder, f).Replace(Path.DirectorySeparatorChar, '/'));

    private bool IsUnchanged(string document) => File.Exists(PathOf(document)) && _digests[document].Contains(DigestOf(document));

    private string DigestOf(string document) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(PathOf(document))));

    private bool Remove(string document)
    {
        try
        {
            File.Delete(PathOf(document));
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private string PathOf(string document) => Path.Combine(_folder, document.Replace('/', Path.DirectorySeparatorChar));

    /// <summary>Nothing outside the folder is ever touched, whatever the list says.</summary>
    private static bool IsInside(string document) => !Path.IsPathRooted(document) && !document.Split('/', '\\').Contains("..");
}
