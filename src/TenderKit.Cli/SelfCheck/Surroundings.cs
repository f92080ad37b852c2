using System.Globalization;

namespace TenderKit.Cli.SelfCheck;

/// <summary>Whether documents can be written where they would go.</summary>
internal static class Surroundings
{
    /// <summary>A bid of a few hundred sites with its copies beside, MB.</summary>
    private const long LeastFreeMB = 100;

    public static IEnumerable<Proof> Run(string folder)
    {
        var place = NearestExisting(folder, out var inTheWay);
        yield return inTheWay is null
            ? Writable(place)
            : new("output", folder, false, $"{inTheWay} is a file", "can be written", Cure: "Choose another folder with --out.");
        yield return Space(place);
    }

    private static Proof Writable(string place)
    {
        var trial = Path.Combine(place, string.Create(CultureInfo.InvariantCulture, $".tenderkit-{Environment.ProcessId}.trial"));
        try
        {
            using (var file = new FileStream(trial, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose)) file.WriteByte(0);
            return new("output", place, true, "can be written", "can be written");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new("output", place, false, e.Message, "can be written", Cure: "Choose another folder with --out, or ask for the right to write there.");
        }
    }

    private static Proof Space(string place)
    {
        try
        {
            var free = new DriveInfo(place).AvailableFreeSpace / 1_000_000;
            return new("output", "free space", free >= LeastFreeMB, Mb(free), "at least " + Mb(LeastFreeMB), Cure: "Make room on the disk: a run that finds it full changes nothing, but writes nothing either.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return new("output", "free space", true, "not told by this disk", "at least " + Mb(LeastFreeMB));
        }
    }

    /// <summary>The folder itself or the nearest one above it that is there.</summary>
    /// <param name="inTheWay">A file where a folder would have to be, or null.</param>
    private static string NearestExisting(string folder, out string? inTheWay)
    {
        inTheWay = null;
        var place = Path.GetFullPath(folder);
        while (!Directory.Exists(place) && Path.GetDirectoryName(place) is { } above)
        {
            if (File.Exists(place)) inTheWay = place;
            place = above;
        }

        return place;
    }

    private static string Mb(long value) => string.Create(CultureInfo.InvariantCulture, $"{value} MB");
}
