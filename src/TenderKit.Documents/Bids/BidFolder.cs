using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace TenderKit.Documents.Bids;

/// <summary>What became of a folder besides the documents written.</summary>
/// <param name="Removed">Documents an earlier run had written and this one did not, unchanged since: removed.</param>
/// <param name="Left">Files in the folders of the documents that are not of this run and were left alone.</param>
public sealed record FolderChanges(ImmutableArray<string> Removed, ImmutableArray<string> Left)
{
    public static FolderChanges None { get; } = new([], []);
}

/// <summary>
/// Writes a set of documents so that a folder never holds half of one: every file is first written beside its place and down to the disk,
/// then all take their places under a note (<see cref="UnfinishedName"/>) that stays only when a run is killed in that moment. Two runs
/// into one folder wait for each other. Files nobody here wrote are left alone.
/// </summary>
public static class BidFolder
{
    /// <summary>Stands in a folder while documents take their places.</summary>
    public const string UnfinishedName = "UNFINISHED.txt";

    /// <summary>Held while documents are written; who ends the process takes it first.</summary>
    public static Lock Writing { get; } = new();

    private const string Beside = ".being-written";

    /// <summary>Writes documents into a folder; other files are left alone.</summary>
    /// <exception cref="IOException">A file cannot be written or replaced. The message names it, says what to do and what was changed.</exception>
    public static void Write(string folder, ImmutableArray<BidDocument> documents) => Write(folder, documents, keepsList: false);

    /// <summary>
    /// Writes the documents of a bid with their list (<see cref="DocumentList.FileName"/>). Those of an earlier run that are no longer part of
    /// it are removed; one that was changed by hand since is kept under another name.
    /// </summary>
    /// <param name="inputs">Files the bid was made from, which must not be replaced.</param>
    /// <exception cref="IOException">As above.</exception>
    public static FolderChanges WriteBid(string folder, ImmutableArray<BidDocument> documents, IEnumerable<string> inputs)
    {
        var taken = inputs.Select(Path.GetFullPath).ToHashSet(OperatingSystem.IsLinux() ? StringComparer.Ordinal : StringComparer.OrdinalIgnoreCase);
        if (documents.Select(d => PathOf(folder, d)).FirstOrDefault(p => taken.Contains(Path.GetFullPath(p))) is { } input)
            throw new IOException($"{input} is a file this tender is made from and would be replaced by a document of that name; choose another folder with --out. Nothing was changed.");
        return Write(folder, documents, keepsList: true);
    }

    internal static FolderChanges Write(string folder, ImmutableArray<BidDocument> documents, bool keepsList, Func<string, Stream>? open = null)
    {
        var made = new FolderMaker();
        try
        {
            made.Make(folder);
            using var held = FolderLock.Take(folder);
            lock (Writing)
            {
                var list = keepsList ? DocumentList.In(folder) : null;
                ImmutableArray<BidDocument> all = list is null ? documents : [.. documents, DocumentList.Of(documents)];
                WriteAll(folder, all, made, open ?? OpenForWriting, list);
                return list is null ? FolderChanges.None : list.ClearEarlier(documents);
            }
        }
        catch
        {
            made.Undo();
            throw;
        }
    }

    private static void WriteAll(string folder, ImmutableArray<BidDocument> documents, FolderMaker made, Func<string, Stream> open, DocumentList? list)
    {
        var places = documents.Select(d => (Document: d, Path: PathOf(folder, d))).ToList();
        try
        {
            foreach (var place in places.Select(p => Path.GetDirectoryName(p.Path)!).Distinct())
            {
                made.Make(place);
                foreach (var left in Directory.EnumerateFiles(place, "*" + Beside)) File.Delete(left);
            }

            foreach (var (document, path) in places) WriteBeside(document, path, open);
            foreach (var (_, path) in places) AssertReplaceable(path);
            var changed = places.Where(p => list?.IsChangedByHand(p.Document) == true).Select(p => p.Path).ToHashSet(StringComparer.Ordinal);
            Replace(folder, [.. places.Select(p => p.Path)], changed, list is null ? "" : Encoding.UTF8.GetString(documents[^1].Bytes));
        }
        finally
        {
            foreach (var (_, path) in places.Where(p => File.Exists(BesideOf(p.Path)))) File.Delete(BesideOf(path));
        }
    }

    private static void WriteBeside(BidDocument document, string path, Func<string, Stream> open)
    {
        try
        {
            using var stream = open(BesideOf(path));
            stream.Write(document.Bytes);
            if (stream is FileStream file) file.Flush(flushToDisk: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"{path} cannot be written: {e.Message.TrimEnd('.')}. Make room or ask for the right to write there, or choose another folder with --out. Nothing was changed.", e);
        }
    }

    private static void AssertReplaceable(string path)
    {
        if (Directory.Exists(path)) throw new IOException($"{path} is a folder; a document of that name cannot be written. Nothing was changed.");
        if (!File.Exists(path)) return;
        try
        {
            using var held = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new IOException($"{path} may not be replaced: it is marked read-only or there is no right to change it. Nothing was changed.", e);
        }
        catch (IOException e)
        {
            throw new IOException($"{path} is open in another program; close it and run again. Nothing was changed.", e);
        }
    }

    /// <summary>All that could fail has been tried by now; the note covers a kill or a document opened in this very moment.</summary>
    private static void Replace(string folder, string[] paths, HashSet<string> changedByHand, string listed)
    {
        var note = Path.Combine(folder, UnfinishedName);
        LeaveNote(note, listed);
        foreach (var path in paths)
        {
            try
            {
                if (changedByHand.Contains(path)) File.Move(path, KeptName(path));
                File.Move(BesideOf(path), path, overwrite: true);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                throw new IOException($"{path} could not be replaced: {e.Message.TrimEnd('.')}. Some documents of the folder are new, some of the earlier run: close what is open there and run again.", e);
            }
        }

        File.Delete(note);
    }

    private static void LeaveNote(string note, string listed)
    {
        try
        {
            File.WriteAllText(note, "A run was ended while its documents took their places: some here are of that run, some of the one before. Run the same command again, and this file goes.\n" + listed);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            File.Delete(note);
            throw new IOException($"{note} cannot be written: {e.Message.TrimEnd('.')}. Make room and run again. Nothing was changed.", e);
        }
    }

    /// <summary>Where a document that somebody worked on is kept: <c>survey-answers.changed-1.xlsx</c>.</summary>
    private static string KeptName(string path) => Enumerable.Range(1, int.MaxValue)
        .Select(n => Path.ChangeExtension(path, string.Create(CultureInfo.InvariantCulture, $".changed-{n}{Path.GetExtension(path)}")))
        .First(p => !File.Exists(p));

    private static FileStream OpenForWriting(string path) => new(path, FileMode.Create, FileAccess.Write, FileShare.None);

    private static string PathOf(string folder, BidDocument document) => Path.Combine(folder, document.RelativePath.Replace('/', Path.DirectorySeparatorChar));

    private static string BesideOf(string path) => string.Create(CultureInfo.InvariantCulture, $"{path}.{Environment.ProcessId}{Beside}");
}
