namespace TenderKit.Intake.Tests.Photometry;

/// <summary>Files of the source tree.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string SamplePhotometryFolder => Path.Combine(Root, "catalog-sample", "photometry");

    public static byte[] Fixture(string name) =>
        File.ReadAllBytes(Path.Combine(Root, "tests", "TenderKit.Intake.Tests", "Photometry", "Files", name));

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException("TenderKit.sln is in no folder above " + AppContext.BaseDirectory);
    }
}
