using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Machine;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>specify</c>: the buyer's specification and blank price form out of the same tender file.</summary>
internal static class SpecifyCommand
{
    public static Command Make(Terminal terminal)
    {
        var tender = CommonOptions.TenderFile();
        var folder = new Option<string?>("--out") { Description = "Folder for the documents; by default output/<reference>-specification." };
        var format = CommonOptions.Format();
        var command = new Command("specify", "Writes a specification without makes and a blank price form, for a buyer who asks for bids.") { tender, folder, format };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(tender), parsed.GetValue(folder), parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(string tenderPath, string? folder, bool json, Terminal terminal)
    {
        var loaded = TenderLoader.Load(tenderPath);
        if (loaded.Inputs is not { Sites.IsEmpty: false } inputs)
        {
            terminal.Problems(loaded.Diagnostics);
            terminal.Progress("Nothing was written: mend the errors above and run again.");
            return ExitCodes.CouldNotRun;
        }

        terminal.Progress(string.Create(CultureInfo.InvariantCulture, $"Checking that {Terminal.Count(inputs.Sites.Length, "site")} can be met ..."));
        var design = new DesignProgress(terminal).Design(inputs, loaded.Diagnostics);
        terminal.Problems([.. design.Diagnostics.Where(d => d.Severity != Severity.Note)]);
        if (design.Sites.IsEmpty)
        {
            terminal.Progress("Nothing was written: no site could be designed.");
            return ExitCodes.SomethingUnmet;
        }

        var target = folder ?? Path.Combine("output", SafeName.OfReference(design.Tender.Head.Reference, "tender") + "-specification");
        var documents = BuyerDocuments.Make(design);
        BidFolder.Write(target, documents);
        if (json)
            terminal.Result(new JsonObject { ["folder"] = target, ["documents"] = new JsonArray([.. documents.Select(d => JsonValue.Create(d.RelativePath))]), ["diagnostics"] = new JsonArray([.. design.Diagnostics.Select(BidJson.DiagnosticJson)]) });
        else
            foreach (var document in documents) terminal.Result(Path.Combine(target, document.RelativePath));
        return design.Diagnostics.Any(d => d.Severity == Severity.Error) ? ExitCodes.SomethingUnmet : ExitCodes.Good;
    }
}
