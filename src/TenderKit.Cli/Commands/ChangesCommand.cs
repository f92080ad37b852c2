using System.CommandLine;
using System.Text.Json.Nodes;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Changes;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Changes;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>changes</c>: what an addendum or a new price file changes.</summary>
internal static class ChangesCommand
{
    public static Command Make(Terminal terminal)
    {
        var old = new Argument<string>("old") { Description = "The tender file as it was." };
        var next = new Argument<string>("new") { Description = "The tender file after the addendum, or with the new prices." };
        var folder = new Option<string?>("--out") { Description = "Folder for the page (changes.pdf) and the table (changes.xlsx)." };
        var format = CommonOptions.Format();
        var command = new Command("changes", "Designs and prices both tenders and says what changes in sites, kits, quantities, compliance and price.") { old, next, folder, format };
        command.SetAction(p => Run(p.GetRequiredValue(old), p.GetRequiredValue(next), p.GetValue(folder), p.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(string old, string next, string? folder, bool json, Terminal terminal)
    {
        if (Designed(old, terminal) is not { } before || Designed(next, terminal) is not { } after) return ExitCodes.CouldNotRun;
        var changes = TenderChanges.Between(before.Design, before.Bill, after.Design, after.Bill);
        if (folder is not null) BidFolder.Write(folder, [new("changes.pdf", ChangesPage.Make(changes, after.Design.Tender.Head)), new("changes.xlsx", ChangesTable.Make(changes, after.Design.Tender.Head))]);
        if (json)
        {
            terminal.Result(new JsonObject
            {
                ["changes"] = new JsonArray([.. changes.Select(c => new JsonObject { ["part"] = c.Part, ["what"] = c.What, ["old"] = c.Old, ["new"] = c.New, ["difference"] = c.Difference })]),
            });
        }
        else if (changes.IsEmpty)
        {
            terminal.Result("Nothing changes.");
        }
        else
        {
            terminal.Table(["Part", "What", "Before", "After", "Difference"], changes.Select(c => (IReadOnlyList<string>)[c.Part, c.What, c.Old, c.New, c.Difference]));
        }

        return ExitCodes.Good;
    }

    private static (TenderDesign Design, BillOfQuantities? Bill)? Designed(string path, Terminal terminal)
    {
        var loaded = TenderLoader.Load(path);
        if (loaded.Inputs is not { } inputs || inputs.Sites.IsEmpty)
        {
            terminal.Problems(loaded.Diagnostics);
            return null;
        }

        terminal.Progress($"Designing {Path.GetFileName(path)} ...");
        var design = TenderDesigner.Run(inputs, loaded.Diagnostics);
        return (design, BillBuilder.Build(design).Value);
    }
}
