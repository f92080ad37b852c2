using System.Diagnostics;

namespace TenderKit.Documents.Bids;

/// <summary>Holds a folder while documents are written into it, so that two runs never mix; a killed run lets go of it.</summary>
internal static class FolderLock
{
    public const string FileName = "being-written.lock";

    /// <summary>Writing takes far less than this.</summary>
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(10);

    /// <summary>Waits until no other run writes there.</summary>
    /// <exception cref="IOException">Another run does not let go, or nothing can be written there.</exception>
    public static IDisposable Take(string folder, TimeSpan? patience = null)
    {
        var path = Path.Combine(folder, FileName);
        for (var waited = Stopwatch.StartNew(); ; Thread.Sleep(50))
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
            }
            catch (UnauthorizedAccessException e)
            {
                throw new IOException($"{folder} cannot be written: {e.Message.TrimEnd('.')}. Ask for the right to write there, or choose another folder with --out. Nothing was changed.", e);
            }
            catch (IOException e) when (!File.Exists(path))
            {
                throw new IOException($"{folder} cannot be written: {e.Message.TrimEnd('.')}. Make room, or choose another folder with --out. Nothing was changed.", e);
            }
            catch (IOException e) when (waited.Elapsed > (patience ?? _patience))
            {
                throw new IOException($"another run is writing into {folder}; wait until it has finished and run again, or choose another folder with --out. Nothing was changed.", e);
            }
            catch (IOException)
            {
                // Held by another run: try again
            }
        }
    }
}
