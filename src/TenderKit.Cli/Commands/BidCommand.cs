using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Machine;
using TenderKit.Documents.Workbooks;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Forms;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Positions;
using TenderKit.Tendering.Regions;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>bid</c>: size, choose, price, write every document.</summary>
internal static class BidCommand
{
    public static Command Make(Terminal terminal)
    {
        var tender = CommonOptions.TenderFile();
        var folder = new Option<string?>("--out") { Description = "Folder for the documents; by default output/<reference>." };
        var format = CommonOptions.Format();
        var command = new Command("bid", "Sizes every site, chooses parts, prices them and writes every document of the bid.") { tender, folder, format };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(tender), parsed.GetValue(folder), parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(string tenderPath, string? folder, bool json, Terminal terminal)
    {
        var loaded = TenderLoader.Load(tenderPath);
        if (loaded.Inputs is not { } inputs)
        {
            terminal.Problems(loaded.Diagnostics);
            terminal.Progress("Nothing was written: mend the errors above and run again.");
            return ExitCodes.CouldNotRun;
        }

        if (inputs.Sites.IsEmpty)
        {
            terminal.Problems(loaded.Diagnostics);
            terminal.Progress(inputs.Tender.Region is null ? "Nothing was written: the site list holds no usable site." : "Nothing was written: the region holds no place.");
            return ExitCodes.CouldNotRun;
        }

        terminal.Progress(string.Create(CultureInfo.InvariantCulture, $"Designing {Terminal.Count(inputs.Sites.Length, "site")} ..."));
        var progress = new DesignProgress(terminal);
        var design = progress.Design(inputs with { Explain = true }, loaded.Diagnostics);
        var bill = BillBuilder.Build(design);
        var poles = PolePlacing.Of(design);
        var evidence = Evidence.Of(design, Path.Combine(inputs.Tender.Folder, inputs.Tender.CatalogPath));
        var library = NoteLibrary.Load(inputs.Tender.Head.Language);
        design = design with { Diagnostics = [.. design.Diagnostics, .. library.Diagnostics, .. evidence.Diagnostics, .. bill.Diagnostics, .. FormFindings(design, bill.Value), .. poles.Diagnostics] };
        terminal.Problems([.. design.Diagnostics.Where(d => d.Severity != Severity.Note)]);
        if (design.Sites.IsEmpty)
        {
            terminal.Progress("Nothing was written: no site could be designed.");
            return ExitCodes.SomethingUnmet;
        }

        var target = folder ?? Path.Combine("output", SafeName.OfReference(inputs.Tender.Head.Reference, "bid"));
        var notes = NoteSelector.Select(design, library.Value!);
        var documents = BidDocuments.Make(design, bill.Value, notes, name => terminal.Progress("Writing " + name + " ..."), poles, evidence.Copies);
        var changes = BidFolder.WriteBid(target, documents, TenderInputs.Of(tenderPath, inputs.Tender));
        foreach (var removed in changes.Removed) terminal.Progress($"Removed {removed}: the earlier run wrote it, this one does not need it.");
        if (LeftBehind(changes) is { } left)
        {
            design = design with { Diagnostics = [.. design.Diagnostics, left] };
            terminal.Problems([left]);
        }

        Summarise(design, bill.Value, target, documents, json, terminal);
        return design.Diagnostics.Any(d => d.Severity == Severity.Error) ? ExitCodes.SomethingUnmet : ExitCodes.Good;
    }

    private static Diagnostic? LeftBehind(FolderChanges changes) => changes.Left.IsEmpty
        ? null
        : Diagnostic.Note("TK744", $"not of this run and left in the folder: {string.Join(", ", changes.Left)}; take out what belongs to an earlier state before the folder is handed in");

    private static IEnumerable<Diagnostic> FormFindings(TenderDesign design, BillOfQuantities? bill)
    {
        if (bill is null || design.Form is not { } form) return [];
        var priced = FormPricing.Of(design, bill, form);
        FilledForm.Make(form, priced, out var kept);
        return FormNotices.Of(form, priced, kept);
    }

    private static void Summarise(TenderDesign design, BillOfQuantities? bill, string folder, ImmutableArray<BidDocument> documents, bool json, Terminal terminal)
    {
        var total = bill is null ? null : (decimal?)LedgerValues.Evaluate(bill.Ledger)[bill.GrandTotal];
        if (json)
        {
            terminal.Result(new JsonObject
            {
                ["folder"] = folder,
                ["documents"] = new JsonArray([.. documents.Select(d => JsonValue.Create(d.RelativePath))]),
                ["sitesDesigned"] = design.Sites.Length,
                ["sitesUnmet"] = design.Unmet.Length,
                ["poleCount"] = design.PoleCount,
                ["kitCount"] = design.Kits.Length,
                ["currency"] = design.Tender.Head.Currency,
                ["grandTotal"] = total,
                ["diagnostics"] = new JsonArray([.. design.Diagnostics.Select(BidJson.DiagnosticJson)]),
            });
            return;
        }

        terminal.Table(
            ["Site", "Name", "Poles", "Spacing m", "Eav lx", "Emin lx", "Kit", "Autonomy nights", "Dark nights/year, 90 % sure at most"],
            design.Sites.Select(s => (IReadOnlyList<string>)
            [
                s.Site.Id, s.Site.Name, Text(s.Poles, "0"), Text(s.Light.SpacingM, "0.0"), Text(s.Light.Result.AverageLx, "0.0"), Text(s.Light.Result.MinimumLx, "0.00"),
                s.KitId, Text(s.Energy.AutonomyNights, "0.0"), Text(s.Energy.Simulated.DarkNightsUpperBound, "0.00"),
            ]));
        foreach (var unmet in design.Unmet) terminal.Result($"Not designed: {unmet.SiteId} {unmet.Name}");
        if (design.Region is { } region) ShowRegion(region, design.Tender.Head.Currency, terminal);
        terminal.Result(string.Create(CultureInfo.InvariantCulture, $"{Terminal.Count(design.Sites.Length, "site")}, {Terminal.Count(design.PoleCount, "pole")}, {Terminal.Count(design.Kits.Length, "kit")}."));
        if (total is { } amount) terminal.Result(string.Create(CultureInfo.InvariantCulture, $"Grand total {amount:N2} {design.Tender.Head.Currency}, tax included."));
        terminal.Result(string.Create(CultureInfo.InvariantCulture, $"{documents.Length} documents in {folder}"));
    }

    private static void ShowRegion(RegionDesign region, string currency, Terminal terminal)
    {
        terminal.Table(
            ["Place", "Sun over lamp kWh/m2 h", "Own Wp", "Own Wh", "Own cost", "Common kit", "Dark nights"],
            region.Places.Select(p => (IReadOnlyList<string>)
                [p.Name, Text(p.SunOverLamp, "0.000"), Text(p.ArrayWp, "0"), Text(p.BatteryWh, "0"), Text((double)p.OwnCost, "0.00"), Text((double)p.CommonCost, "0.00"), Text(p.DarkNightsPerYear, "0.00")]));
        terminal.Result(string.Create(CultureInfo.InvariantCulture, $"{region.Governing.Name} governs; serving every place costs {region.ExtraCost:N2} {currency} a pole (direct cost) beyond a design for {region.Mild.Name}, the mildest."));
    }

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
