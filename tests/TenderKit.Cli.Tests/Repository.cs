namespace TenderKit.Cli.Tests;

/// <summary>Where the repository lies, found upwards from the test's own folder.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    private static string Find(string start)
    {
        var folder = new DirectoryInfo(start);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("TenderKit.sln was not found above the tests");
    }
}
