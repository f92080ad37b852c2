using System.Text.Json.Nodes;
using TenderKit.Cli.SelfCheck;
using Xunit;

namespace TenderKit.Cli.Tests.SelfCheck;

/// <summary>Command <c>prove</c>.</summary>
public class ProveTests
{
    [Fact]
    public void A_whole_installation_is_good_and_each_figure_names_its_source()
    {
        using var folder = new TenderFolder();
        var run = TenderFolder.Run("prove", "--out", folder.Out, "--format", "json");
        Assert.Equal(ExitCodes.Good, run.Code);
        var json = JsonNode.Parse(run.Output)!;
        Assert.True(json["good"]!.GetValue<bool>());
        var parts = json["proofs"]!.AsArray().Select(p => p!["part"]!.GetValue<string>()).ToHashSet();
        Assert.Superset(new HashSet<string> { "fonts", "notes", "climate", "templates", "rules", "catalogue", "design", "light", "energy", "wiring", "structure", "bill", "output" }, parts);
        Assert.All(json["proofs"]!.AsArray().Where(p => p!["difference"] is not null), p => Assert.NotEqual("", p!["source"]!.GetValue<string>()));
        Assert.False(Directory.Exists(folder.Out));
    }

    [Fact]
    public void Every_sample_fails_when_its_answer_is_another() => Assert.All(Samples.All, s =>
    {
        Assert.True(Samples.Prove(s).Good, s.What);
        Assert.False(Samples.Prove(s with { Expected = s.Expected + (3 * s.Tolerance) + (1e-6 * s.Expected) }).Good, s.What);
        Assert.False(Samples.Prove(s with { Compute = () => double.NaN }).Good, s.What);
        Assert.False(Samples.Prove(s with { Compute = () => throw new ArithmeticException("lost") }).Good, s.What);
    });

    [Fact]
    public void A_damaged_catalogue_and_a_file_in_the_way_are_named_with_what_to_do()
    {
        using var folder = new TenderFolder();
        File.WriteAllText(folder.PathOf("parts.db"), "no catalogue");
        var run = TenderFolder.Run("prove", "--catalog", folder.PathOf("parts.db"), "--out", Path.Combine(folder.Tender, "bids"));
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("parts.db", run.Errors, StringComparison.Ordinal);
        Assert.Contains("tenderkit catalog list", run.Errors, StringComparison.Ordinal);
        Assert.Contains("tender.yaml is a file", run.Errors, StringComparison.Ordinal);
        Assert.Contains("--out", run.Errors, StringComparison.Ordinal);
    }
}
