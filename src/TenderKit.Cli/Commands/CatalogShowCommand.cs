using System.CommandLine;
using System.Globalization;
using TenderKit.Catalog;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>catalog show</c>: explains a part and, given a tender, where it is used.</summary>
internal static class CatalogShowCommand
{
    public static Command Make(Terminal terminal)
    {
        var code = new Argument<string>("code") { Description = "Code of the part." };
        var catalog = new Option<string?>("--catalog") { Description = CatalogCommand.Forms + " Left out: the catalogue of --tender." };
        var tender = new Option<string?>("--tender") { Description = "A tender file: designs it and says in which kits and items of the bill the part is used." };
        var format = CommonOptions.Format();
        var command = new Command("show", "Explains a part: its properties, price, plausibility, what fits it and where a tender uses it.") { code, catalog, tender, format };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(code), parsed.GetValue(catalog), parsed.GetValue(tender), parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(string code, string? catalogPath, string? tenderPath, bool json, Terminal terminal)
    {
        if (catalogPath is null && tenderPath is null) return Stop(terminal, "name a catalogue with --catalog, or a tender with --tender");
        DesignInputs? inputs = null;
        if (tenderPath is not null)
        {
            var loaded = TenderLoader.Load(tenderPath);
            if (loaded.Inputs is null) terminal.Problems(loaded.Diagnostics);
            inputs = loaded.Inputs;
            if (inputs is null) return ExitCodes.CouldNotRun;
        }

        if (Parts(catalogPath, inputs, terminal) is not { } parts) return ExitCodes.CouldNotRun;
        if (parts.All.FirstOrDefault(p => p.Code.Equals(code, StringComparison.OrdinalIgnoreCase)) is not { } part)
            return Stop(terminal, $"no part has the code '{code}'; the nearest: {string.Join(", ", Nearest(code, parts))}");
        if (inputs is not null) terminal.Progress(string.Create(CultureInfo.InvariantCulture, $"Designing {Terminal.Count(inputs.Sites.Length, "site")} ..."));
        var uses = inputs is null ? null : PartUse.Of(part.Code, TenderDesigner.Run(inputs, []));
        if (json) terminal.Result(CatalogPartText.Json(part, parts, uses, inputs?.Tender.Head.IssueDate));
        else CatalogPartText.Show(part, parts, uses, inputs?.Tender.Head.IssueDate, terminal);
        return ExitCodes.Good;
    }

    private static PartsCatalog? Parts(string? path, DesignInputs? inputs, Terminal terminal)
    {
        if (path is null) return inputs!.Catalog;
        var opened = Catalogs.Open(path);
        if (opened.Value is null) terminal.Problems(opened.Diagnostics);
        return opened.Value?.Parts;
    }

    private static IEnumerable<string> Nearest(string code, PartsCatalog parts)
    {
        var likeness = new F23.StringSimilarity.NormalizedLevenshtein();
        return parts.All.OrderBy(p => likeness.Distance(code.ToUpperInvariant(), p.Code.ToUpperInvariant())).ThenBy(p => p.Code, StringComparer.Ordinal).Take(3).Select(p => p.Code);
    }

    private static int Stop(Terminal terminal, string message)
    {
        terminal.Progress("error: " + message);
        return ExitCodes.CouldNotRun;
    }
}
