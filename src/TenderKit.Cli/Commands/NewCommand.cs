using System.CommandLine;
using TenderKit.Documents.Bids;

namespace TenderKit.Cli.Commands;

/// <summary><c>new</c>: a starter tender with its own catalogue and rules in a fresh folder.</summary>
internal static class NewCommand
{
    public static Command Make(Terminal terminal)
    {
        var folder = new Argument<string>("folder") { Description = "A folder that does not exist yet, or is empty." };
        var command = new Command("new", "Writes a starter tender to change: tender file, site list, climate, rules and a sample catalogue.") { folder };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(folder), terminal));
        return command;
    }

    private static int Run(string folder, Terminal terminal)
    {
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
        {
            terminal.Progress($"error: {folder} is not empty; name a new folder. Nothing was written.");
            return ExitCodes.CouldNotRun;
        }

        BidFolder.Write(folder, StarterFiles.All());
        terminal.Result($"A starter tender stands in {folder}. Change it, then run: tenderkit bid {Path.Combine(folder, StarterFiles.TenderName)}");
        return ExitCodes.Good;
    }
}
