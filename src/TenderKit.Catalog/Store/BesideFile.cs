using System.Diagnostics;
using System.Globalization;

namespace TenderKit.Catalog.Store;

/// <summary>The file a process writes beside its target before it is renamed: <c>parts.db.4711.new</c> for process 4711.</summary>
internal static class BesideFile
{
    private const string End = ".new";

    public static string Of(string path) => string.Create(CultureInfo.InvariantCulture, $"{path}.{Environment.ProcessId}{End}");

    /// <summary>Deletes what processes that run no more have left beside a target, and what this one may have left.</summary>
    public static void ClearLeft(string path)
    {
        var full = Path.GetFullPath(path);
        foreach (var left in Directory.EnumerateFiles(Path.GetDirectoryName(full)!, Path.GetFileName(full) + ".*" + End))
        {
            var number = Path.GetFileName(left)[(Path.GetFileName(full).Length + 1)..^End.Length];
            if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var id) && (id == Environment.ProcessId || !Runs(id))) File.Delete(left);
        }
    }

    private static bool Runs(int id)
    {
        try
        {
            using var process = Process.GetProcessById(id);
            return !process.HasExited;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
