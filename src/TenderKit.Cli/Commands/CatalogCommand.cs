using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using TenderKit.Catalog;
using TenderKit.Catalog.Import;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Workbooks;

namespace TenderKit.Cli.Commands;

/// <summary><c>catalog</c>: the parts store.</summary>
internal static class CatalogCommand
{
    public const string Forms = "A folder of csv or xlsx files, a workbook with a sheet per family, or a .db file.";

    public static Command Make(Terminal terminal)
    {
        var command = new Command("catalog", "The parts store: import from csv or xlsx, list, explain a part, export.");
        command.Subcommands.Add(Import(terminal));
        command.Subcommands.Add(CatalogListCommand.Make(terminal));
        command.Subcommands.Add(CatalogShowCommand.Make(terminal));
        command.Subcommands.Add(Export(terminal));
        return command;
    }

    private static Command Import(Terminal terminal)
    {
        var source = new Argument<string>("source") { Description = "Folder with one csv or xlsx file per part family, or one workbook with a sheet per family; photometric files in a folder photometry beside them." };
        var target = new Option<string>("--to") { Description = "The .db file to write.", Required = true };
        var command = new Command("import", "Reads parts into one .db file; a single bad cell and nothing is changed.") { source, target };
        command.SetAction(parsed =>
        {
            Interrupts.Writing(parsed.GetRequiredValue(target));
            var outcome = CatalogImporter.ToFile(parsed.GetRequiredValue(source), parsed.GetRequiredValue(target));
            terminal.Problems(outcome.Diagnostics);
            if (outcome.Value is not { } store) return ExitCodes.CouldNotRun;
            using (store) terminal.Result(string.Create(CultureInfo.InvariantCulture, $"{store.Count()} parts in {parsed.GetRequiredValue(target)}"));
            return ExitCodes.Good;
        });
        return command;
    }

    private static Command Export(Terminal terminal)
    {
        var source = new Argument<string>("catalog") { Description = Forms };
        var target = new Option<string>("--out") { Description = "A folder for csv files, or a file .xlsx or .db.", Required = true };
        var command = new Command("export", "Writes a catalogue as csv files, as one workbook or as a .db file; importing it again gives the same catalogue.") { source, target };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(source), parsed.GetRequiredValue(target), terminal));
        return command;
    }

    private static int Run(string source, string target, Terminal terminal)
    {
        var opened = Catalogs.OpenStore(source);
        terminal.Problems(opened.Diagnostics);
        if (opened.Value is not { } store) return ExitCodes.CouldNotRun;
        using (store)
        {
            switch (Path.GetExtension(target).ToUpperInvariant())
            {
                case ".DB":
                    Interrupts.Writing(target);
                    store.SaveAs(target);
                    break;
                case ".XLSX":
                    BidFolder.Write(Path.GetDirectoryName(Path.GetFullPath(target))!, [new(Path.GetFileName(target), CatalogWorkbook.Make(store.Load())), .. Exported(store.ExportPhotometry)]);
                    break;
                case "":
                    BidFolder.Write(target, Exported(store.Export));
                    break;
                default:
                    terminal.Progress($"error: '{target}' is neither a folder nor a file .xlsx or .db");
                    return ExitCodes.CouldNotRun;
            }

            terminal.Result(string.Create(CultureInfo.InvariantCulture, $"{store.Count()} parts in {target}; digest {store.Digest()}"));
        }

        return ExitCodes.Good;
    }

    /// <summary>The files an export writes, made in a folder of their own first, so that they take their places together.</summary>
    private static ImmutableArray<BidDocument> Exported(Action<string> export)
    {
        var folder = Directory.CreateTempSubdirectory("tenderkit-export-");
        try
        {
            export(folder.FullName);
            return
            [
                .. Directory.EnumerateFiles(folder.FullName, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                    .Select(f => new BidDocument(Path.GetRelativePath(folder.FullName, f).Replace(Path.DirectorySeparatorChar, '/'), File.ReadAllBytes(f))),
            ];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
