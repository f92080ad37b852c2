using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Quotes;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Quotes;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Compare;
using TenderKit.Tendering.Quotes.Reading;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary><c>quote</c>: checks offers that came in, and puts several on one basis.</summary>
internal static class QuoteCommand
{
    public static Command Make(Terminal terminal)
    {
        var command = new Command("quote", "Checks offers as they come in (xlsx, xls, csv, txt) against the tender, and compares them. It rejects nobody: it says what the rules say.");
        command.Subcommands.Add(CheckOne(terminal));
        command.Subcommands.Add(CompareAll(terminal));
        return command;
    }

    private static Command CheckOne(Terminal terminal)
    {
        var tender = CommonOptions.TenderFile();
        var quote = new Argument<string>("offer") { Description = "The offer: .xlsx, .xls, .csv or pasted text as .txt." };
        var folder = new Option<string?>("--out") { Description = "Folder for the report (pdf, xlsx) and the record of readings (csv)." };
        var readings = new Option<string?>("--readings") { Description = "The record of readings of an earlier run, with corrections." };
        var format = CommonOptions.Format();
        var command = new Command("check", "Reads one offer, checks arithmetic, items, ratings, physics, prices and conditions, and runs its parts at every site.") { tender, quote, folder, readings, format };
        command.SetAction(p => Check(p.GetRequiredValue(tender), p.GetRequiredValue(quote), p.GetValue(folder), p.GetValue(readings), p.GetValue(format) == "json", terminal));
        return command;
    }

    private static Command CompareAll(Terminal terminal)
    {
        var tender = CommonOptions.TenderFile();
        var quotes = new Argument<string[]>("offers") { Description = "Two offers or more.", Arity = ArgumentArity.OneOrMore };
        var domestic = new Option<string[]>("--domestic") { Description = "Names of the files whose bidders have a claim to the margin of preference.", AllowMultipleArgumentsPerToken = true };
        var folder = new Option<string?>("--out") { Description = "Folder for the comparison (pdf, xlsx)." };
        var format = CommonOptions.Format();
        var command = new Command("compare", "Puts offers on one basis, step by step, and ranks those nothing speaks against.") { tender, quotes, domestic, folder, format };
        command.SetAction(p => Compare(p.GetRequiredValue(tender), p.GetRequiredValue(quotes), p.GetValue(domestic) ?? [], p.GetValue(folder), p.GetValue(format) == "json", terminal));
        return command;
    }

    /// <summary>The tender designed and what it asks; null when it cannot be.</summary>
    private static (DesignInputs Inputs, TenderDesign Design, Asked Asked, StatedAsk? Stated)? Prepared(string path, Terminal terminal)
    {
        var loaded = TenderLoader.Load(path);
        if (loaded.Inputs is not { } inputs || inputs.Sites.IsEmpty)
        {
            terminal.Problems(loaded.Diagnostics);
            terminal.Progress("Nothing was checked: the tender cannot be used; mend the errors above and run again.");
            return null;
        }

        StatedAsk? stated = null;
        if (inputs.Tender.Quotes.AskedFile is { } file)
        {
            var asked = StatedKits.Read(Path.Combine(inputs.Tender.Folder, file));
            terminal.Problems(asked.Diagnostics);
            if (asked.Value is null) return null;
            stated = asked.Value;
        }

        terminal.Progress("Designing the tender to know what is asked ...");
        var design = TenderDesigner.Run(inputs, loaded.Diagnostics);
        if (stated is not null) terminal.Problems(WholeRun.OfTender(design, inputs, stated));
        if (!design.Sites.IsEmpty) return (inputs, design, AskedBuilder.Of(design, BillBuilder.Build(design).Value, stated, inputs), stated);
        terminal.Problems(design.Diagnostics);
        return null;
    }

    private static int Check(string tender, string path, string? folder, string? readings, bool json, Terminal terminal)
    {
        var earlier = readings is null ? null : ReadingRecord.Read(readings);
        if (earlier is { Value: null })
        {
            terminal.Problems(earlier.Diagnostics);
            return ExitCodes.CouldNotRun;
        }

        if (earlier is not null) terminal.Problems(earlier.Diagnostics);
        var read = OfferReader.Read(path, earlier?.Value);
        terminal.Problems(read.Diagnostics);
        if (read.Value is not { } offer || Prepared(tender, terminal) is not { } basis) return ExitCodes.CouldNotRun;
        var runs = ImmutableArray<SiteRun>.Empty;
        var judged = OfferChecker.Check(offer, basis.Asked, kits =>
        {
            runs = WholeRun.Of(basis.Design, basis.Inputs, kits, basis.Stated);
            return WholeRun.Findings(runs, kits, basis.Asked, basis.Inputs.Tender.Reliability.DarkNightsPerYear);
        });
        var head = basis.Inputs.Tender.Head;
        if (folder is not null)
        {
            BidFolder.Write(folder,
            [
                new("quote-check.pdf", QuoteReport.Make(judged, runs, head)), new("quote-check.xlsx", QuoteTables.Workbook(judged, head)),
                new("quote-readings.csv", QuoteTables.Readings(ReadingRecord.Of(offer, earlier?.Value))),
            ]);
        }

        if (json) terminal.Result(QuoteJson.Check(judged, runs));
        else Show(judged, folder, terminal);
        return judged.Overall == OfferChecker.Ready ? ExitCodes.Good : ExitCodes.SomethingUnmet;
    }

    private static void Show(CheckedOffer judged, string? folder, Terminal terminal)
    {
        terminal.Table(["Where", "Code", "Weight", "Finding"], judged.Findings.Select(f => (IReadOnlyList<string>)
            [f.Where.Row is 0 or null ? "whole offer" : (f.Where with { File = null }).ToString(), f.Code, f.Severity == Severity.Error ? "serious" : f.Severity == Severity.Warning ? "ask" : "note", f.Message]));
        terminal.Result(string.Create(CultureInfo.InvariantCulture, $"{Terminal.Count(judged.Lines.Length, "line")}, {judged.Lines.Count(l => l.Verdict == OfferChecker.AsAsked)} as asked. Stated total {judged.Price.Stated:N2}, corrected {judged.Price.Corrected:N2} {judged.Offer.Terms.Currency}."));
        terminal.Result("Overall: " + judged.Overall + ".");
        if (folder is not null) terminal.Result("Report and record of readings in " + folder);
    }

    private static int Compare(string tender, string[] paths, string[] domestic, string? folder, bool json, Terminal terminal)
    {
        var read = paths.Select(p => OfferReader.Read(p)).ToList();
        terminal.Problems([.. read.SelectMany(r => r.Diagnostics)]);
        if (read.Exists(r => r.Value is null) || Prepared(tender, terminal) is not { } basis) return ExitCodes.CouldNotRun;
        if (read.Select(r => r.Value!.File).GroupBy(f => f, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            terminal.Progress($"Nothing was compared: two offers are called {twice.Key}; give each file a name of its own.");
            return ExitCodes.CouldNotRun;
        }

        var runs = new Dictionary<string, ImmutableArray<SiteRun>>(StringComparer.Ordinal);
        var judged = read.Select(r => OfferChecker.Check(r.Value!, basis.Asked, kits =>
        {
            runs[r.Value!.File] = WholeRun.Of(basis.Design, basis.Inputs, kits, basis.Stated);
            return WholeRun.Findings(runs[r.Value!.File], kits, basis.Asked, basis.Inputs.Tender.Reliability.DarkNightsPerYear);
        })).ToImmutableArray();
        var compared = OfferComparison.Of(judged, basis.Asked, domestic.Select(d => Path.GetFileName(d)!).ToImmutableHashSet(), runs);
        var head = basis.Inputs.Tender.Head;
        if (folder is not null) BidFolder.Write(folder, [new("quote-comparison.pdf", ComparisonReport.Make(compared, head)), new("quote-comparison.xlsx", ComparisonWorkbook.Make(compared, head))]);
        if (json) terminal.Result(QuoteJson.Compare(compared));
        else
        {
            terminal.Table(["Lot", "Rank", "Offer", "Evaluated", "Over the years", "What the rules say"], compared.Lots.SelectMany(l => l.Offers.Select(o => (IReadOnlyList<string>)
                [l.Lot, o.Rank?.ToString(CultureInfo.InvariantCulture) ?? "-", o.File, Money(o.Evaluated), Money(o.OverYears), compared.Offers.First(e => e.File == o.File).Checked.Overall])));
            terminal.Result(compared.Best is { } best
                ? $"Least together: {string.Join(", ", best.Awards.Select(a => $"lot {a.Lot} {a.File}"))}: {Money(best.Total)} {compared.Currency}. The committee decides."
                : "No combination covers every lot with offers that nothing speaks against. The committee decides.");
        }

        return ExitCodes.Good;
    }

    private static string Money(decimal? value) => value?.ToString("N2", CultureInfo.InvariantCulture) ?? "-";
}
