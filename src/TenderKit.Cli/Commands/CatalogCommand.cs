using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Catalog;
using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Documents.Machine;
using TenderKit.Sizing.Basics;

namespace TenderKit.Cli.Commands;

/// <summary><c>catalog</c>: the parts store.</summary>
internal static class CatalogCommand
{
    public static Command Make(Terminal terminal)
    {
        var command = new Command("catalog", "The parts store: import from csv or xlsx, list what is in it.");
        command.Subcommands.Add(Import(terminal));
        command.Subcommands.Add(List(terminal));
        return command;
    }

    private static Command Import(Terminal terminal)
    {
        var folder = new Argument<string>("folder") { Description = "Folder with one csv or xlsx file per part family and a folder photometry." };
        var target = new Option<string>("--to") { Description = "The .db file to write.", Required = true };
        var command = new Command("import", "Reads a folder of parts into one .db file; a single bad cell and nothing is changed.") { folder, target };
        command.SetAction(parsed =>
        {
            var outcome = CatalogImporter.FromFolderToFile(parsed.GetRequiredValue(folder), parsed.GetRequiredValue(target));
            terminal.Problems(outcome.Diagnostics);
            if (outcome.Value is not { } store) return ExitCodes.CouldNotRun;
            using (store) terminal.Result($"{Count(store.Load())} parts in {parsed.GetRequiredValue(target)}");
            return ExitCodes.Good;
        });
        return command;
    }

    private static Command List(Terminal terminal)
    {
        var path = new Argument<string>("catalog") { Description = "A folder of csv files or a .db file." };
        var format = CommonOptions.Format();
        var command = new Command("list", "Lists every part with its price.") { path, format };
        command.SetAction(parsed =>
        {
            var opened = Catalogs.Open(parsed.GetRequiredValue(path));
            terminal.Problems(opened.Diagnostics);
            if (opened.Value is not { } source) return ExitCodes.CouldNotRun;
            if (parsed.GetValue(format) == "json") terminal.Result(Json(source, opened));
            else terminal.Table(["Code", "Family", "Description", "Price", "Currency", "Valid until"], source.Parts.All.Select(Row));
            return ExitCodes.Good;
        });
        return command;
    }

    private static string[] Row(Part part) =>
    [
        part.Code, part.GetType().Name, part.Description, part.UnitPrice.ToString("N2", CultureInfo.InvariantCulture), part.Currency,
        part.PriceValidUntil?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
    ];

    private static JsonObject Json(CatalogSource source, Outcome<CatalogSource> opened) => new()
    {
        ["catalogSha256"] = source.Digest,
        ["parts"] = new JsonArray([.. source.Parts.All.Select(p => new JsonObject
        {
            ["code"] = p.Code,
            ["family"] = p.GetType().Name,
            ["description"] = p.Description,
            ["unitPrice"] = p.UnitPrice,
            ["currency"] = p.Currency,
        })]),
        ["diagnostics"] = new JsonArray([.. opened.Diagnostics.Select(BidJson.DiagnosticJson)]),
    };

    private static int Count(PartsCatalog parts) => parts.All.Count();
}
