namespace TenderKit.Documents.Bids;

/// <summary>Makes folders and takes those it made away again when nothing came to lie in them.</summary>
internal sealed class FolderMaker
{
    private readonly Stack<string> _made = new();

    /// <exception cref="IOException">A folder cannot be made; the message names it.</exception>
    public void Make(string folder)
    {
        var missing = new Stack<string>();
        for (var place = Path.GetFullPath(folder); !Directory.Exists(place) && Path.GetDirectoryName(place) is { } above; place = above) missing.Push(place);
        try
        {
            foreach (var place in missing)
            {
                Directory.CreateDirectory(place);
                _made.Push(place);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"the folder {folder} cannot be made: {e.Message.TrimEnd('.')}. Choose another with --out. Nothing was changed.", e);
        }
    }

    public void Undo()
    {
        foreach (var place in _made.Where(p => Directory.Exists(p) && !Directory.EnumerateFileSystemEntries(p).Any())) Directory.Delete(place);
    }
}
