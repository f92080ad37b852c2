using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Cli.SelfCheck;

namespace TenderKit.Cli.Commands;

/// <summary><c>prove</c>: whether this installation is whole and calculates as it was tested.</summary>
internal static class ProveCommand
{
    public static Command Make(Terminal terminal)
    {
        var folder = new Option<string>("--out") { Description = "Folder whose write access and free space are looked at.", DefaultValueFactory = _ => "output" };
        var catalog = new Option<string?>("--catalog") { Description = "Also opens a catalogue of your own: a folder, a workbook or a .db file." };
        var format = CommonOptions.Format();
        var command = new Command("prove", "Proves this installation before it is relied on: fonts, notes, rules, templates, catalogue, write access, and a calculation of every slice held against its published answer.") { folder, catalog, format };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(folder), parsed.GetValue(catalog), parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(string folder, string? catalog, bool json, Terminal terminal)
    {
        List<Proof> proofs = [.. ShippedFiles.Run(), .. catalog is null ? [] : new[] { ShippedFiles.OwnCatalog(catalog) }, .. Samples.Run(), .. Surroundings.Run(folder)];
        var failed = proofs.Where(p => !p.Good).ToList();
        if (json)
        {
            terminal.Result(Json(proofs));
            return failed.Count == 0 ? ExitCodes.Good : ExitCodes.SomethingUnmet;
        }

        terminal.Table(
            ["Part", "What", "Result", "Found", "Expected", "Difference", "Source"],
            proofs.Select(p => (IReadOnlyList<string>)[p.Part, p.What, p.Good ? "good" : "NOT GOOD", p.Found, p.Expected, Text(p.Difference), p.Source]));
        foreach (var proof in failed) terminal.Progress($"error: {proof.Part}, {proof.What}: {proof.Found}. {proof.Cure}");
        terminal.Result(string.Create(CultureInfo.InvariantCulture, $"TenderKit {ProgramVersion.Text}: {proofs.Count - failed.Count} of {proofs.Count} good."));
        return failed.Count == 0 ? ExitCodes.Good : ExitCodes.SomethingUnmet;
    }

    private static JsonObject Json(IEnumerable<Proof> proofs) => new()
    {
        ["version"] = ProgramVersion.Text,
        ["good"] = proofs.All(p => p.Good),
        ["proofs"] = new JsonArray([.. proofs.Select(p => new JsonObject
        {
            ["part"] = p.Part,
            ["what"] = p.What,
            ["good"] = p.Good,
            ["found"] = p.Found,
            ["expected"] = p.Expected,
            ["difference"] = p.Difference,
            ["source"] = p.Source,
            ["cure"] = p.Good ? "" : p.Cure,
        })]),
    };

    private static string Text(double? difference) => difference?.ToString("0.0E+0", CultureInfo.InvariantCulture) ?? "";
}
