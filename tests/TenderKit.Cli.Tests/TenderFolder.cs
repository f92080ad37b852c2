using System.Text.Json.Nodes;

namespace TenderKit.Cli.Tests;

/// <summary>A copy of the starter tender in a folder of its own, to be changed and run; removed afterwards.</summary>
internal sealed class TenderFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("tenderkit-");

    public TenderFolder()
    {
        var starter = Path.Combine(Repository.Root, "templates", "starter");
        foreach (var file in Directory.EnumerateFiles(starter)) File.Copy(file, Path.Combine(_folder.FullName, Path.GetFileName(file)));
        Change("tender.yaml", "../../catalog-sample", Path.Combine(Repository.Root, "catalog-sample").Replace('\\', '/'));
        Change("tender.yaml", "../design-rules.yaml", Path.Combine(Repository.Root, "templates", "design-rules.yaml").Replace('\\', '/'));
    }

    public string Tender => Path.Combine(_folder.FullName, "tender.yaml");

    public string Out => Path.Combine(_folder.FullName, "out");

    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    /// <summary>Keeps the header and the rows of the sites named; the tender reads the csv list from then on.</summary>
    public TenderFolder WithSites(params string[] ids)
    {
        var lines = File.ReadAllLines(PathOf("sites.csv"));
        File.WriteAllLines(PathOf("sites.csv"), lines.Where((l, i) => i == 0 || ids.Contains(l.Split(',')[0])));
        return UseCsv();
    }

    public TenderFolder UseCsv()
    {
        Change("tender.yaml", "sites: sites.xlsx", "sites: sites.csv");
        return this;
    }

    /// <summary>Replaces text in a file, and fails when it was not there.</summary>
    public TenderFolder Change(string file, string from, string to)
    {
        var text = File.ReadAllText(PathOf(file));
        if (!text.Contains(from, StringComparison.Ordinal)) throw new InvalidOperationException($"{file} does not hold '{from}'");
        File.WriteAllText(PathOf(file), text.Replace(from, to, StringComparison.Ordinal));
        return this;
    }

    /// <summary>Runs a command in this process.</summary>
    public static (int Code, string Output, string Errors) Run(params string[] args)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var code = App.Run(args, output, errors);
        return (code, output.ToString(), errors.ToString());
    }

    public (int Code, string Output, string Errors) Bid(string? folder = null) => Run("bid", Tender, "--out", folder ?? Out);

    public static JsonObject BidJson(string folder) => JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "internal", "bid.json")))!.AsObject();

    public void Dispose() => _folder.Delete(recursive: true);
}
