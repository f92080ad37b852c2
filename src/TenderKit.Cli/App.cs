using System.CommandLine;
using Microsoft.Data.Sqlite;
using TenderKit.Cli.Commands;

namespace TenderKit.Cli;

/// <summary>The command line: parses, runs, turns a broken world into one clear message.</summary>
public static class App
{
    /// <summary>Runs one command.</summary>
    /// <param name="args">Arguments as given.</param>
    /// <param name="output">Results.</param>
    /// <param name="errors">Progress and messages.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter errors)
    {
        var console = new Terminal(output, errors);
        var parsed = RootOf(console).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors) errors.WriteLine("error: " + error.Message);
            errors.WriteLine("Run 'tenderkit --help' for what can be asked.");
            return ExitCodes.CouldNotRun;
        }

        try
        {
            return parsed.Invoke(new InvocationConfiguration { Output = output, Error = errors, EnableDefaultExceptionHandler = false });
        }
        catch (Exception e) when (e.GetBaseException() is IOException or UnauthorizedAccessException or SqliteException or InvalidDataException)
        {
            errors.WriteLine("error: " + (e is AggregateException ? e.GetBaseException() : e).Message);
            return ExitCodes.CouldNotRun;
        }
        catch (OutOfMemoryException)
        {
            errors.WriteLine("error: the memory of this machine is not enough for this work; close other programs, or split the tender. Nothing was written.");
            return ExitCodes.CouldNotRun;
        }
        catch (Exception e)
        {
            errors.WriteLine($"error: a fault of the program: {e.GetBaseException().Message.ReplaceLineEndings(" ")} ({e.GetBaseException().GetType().Name}). Nothing was written. Report it with the tender that causes it.");
            return ExitCodes.CouldNotRun;
        }
    }

    private static RootCommand RootOf(Terminal console)
    {
        var root = new RootCommand("From a site list and a lighting requirement to a complete, priced bid for stand-alone solar street lighting.");
        root.Subcommands.Add(NewCommand.Make(console));
        root.Subcommands.Add(InspectCommand.Make(console));
        root.Subcommands.Add(BidCommand.Make(console));
        root.Subcommands.Add(SpecifyCommand.Make(console));
        root.Subcommands.Add(LightCommand.Make(console));
        root.Subcommands.Add(EnergyCommand.Make(console));
        root.Subcommands.Add(WiringCommand.Make(console));
        root.Subcommands.Add(PoleCommand.Make(console));
        root.Subcommands.Add(CatalogCommand.Make(console));
        root.Subcommands.Add(QuoteCommand.Make(console));
        root.Subcommands.Add(ChangesCommand.Make(console));
        root.Subcommands.Add(ProveCommand.Make(console));
        return root;
    }
}
