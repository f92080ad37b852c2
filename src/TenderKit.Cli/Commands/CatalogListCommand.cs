using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Catalog;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Machine;
using TenderKit.Sizing.Basics;

namespace TenderKit.Cli.Commands;

/// <summary><c>catalog list</c>: parts by family and text, in the order asked for.</summary>
internal static class CatalogListCommand
{
    public static Command Make(Terminal terminal)
    {
        var path = new Argument<string>("catalog") { Description = CatalogCommand.Forms };
        var family = new Option<string?>("--family") { Description = "Only this family: " + string.Join(", ", PartFamily.All.Select(f => f.Name)) + "." };
        family.AcceptOnlyFromAmong([.. PartFamily.All.Select(f => f.Name)]);
        var text = new Option<string?>("--text") { Description = "Only parts whose code, description or certificates hold these words, in any order." };
        var sort = new Option<string?>("--sort") { Description = "Column to sort by, such as unit_price, lead_time_days or rated_wp; with '-' before it, greatest first. By family and code when left out." };
        var format = CommonOptions.Format();
        var command = new Command("list", "Lists parts with their prices.") { path, family, text, sort, format };
        command.SetAction(parsed =>
        {
            var opened = Catalogs.Open(parsed.GetRequiredValue(path));
            terminal.Problems(opened.Diagnostics);
            if (opened.Value is not { } source) return ExitCodes.CouldNotRun;
            var parts = source.Parts.All.Where(p => parsed.GetValue(family) is not { } name || PartFamily.Of(p).Name == name).Where(p => Holds(p, parsed.GetValue(text))).ToList();
            if (parsed.GetValue(sort) is { } column && !Sort(parts, column))
            {
                terminal.Progress($"error: no part listed has a column '{column.TrimStart('-')}' to sort by");
                return ExitCodes.CouldNotRun;
            }

            if (parsed.GetValue(format) == "json") terminal.Result(Json(parts, source, opened));
            else Show(parts, terminal);
            return ExitCodes.Good;
        });
        return command;
    }

    private static bool Holds(Part part, string? text) => text is null || text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
        .All(w => $"{part.Code} {part.Description} {part.Certificates}".Contains(w, StringComparison.OrdinalIgnoreCase));

    /// <summary>Sorts by a column; parts without it, or without a value, come last.</summary>
    private static bool Sort(List<Part> parts, string column)
    {
        var name = column.TrimStart('-');
        var keyed = parts.Select(p => (Part: p, Key: PartFamily.Of(p).Columns.FirstOrDefault(c => c.Name == name)?.Of(p) as IComparable)).ToList();
        if (parts.Count > 0 && !parts.Exists(p => PartFamily.Of(p).Columns.Any(c => c.Name == name))) return false;
        var known = keyed.Where(k => k.Key is not null).GroupBy(k => k.Key!.GetType()).OrderBy(g => g.Key.Name, StringComparer.Ordinal)
            .SelectMany(g => column[0] == '-' ? g.OrderByDescending(k => k.Key, Comparer<IComparable?>.Create(Compare)) : g.OrderBy(k => k.Key, Comparer<IComparable?>.Create(Compare)));
        var sorted = known.Concat(keyed.Where(k => k.Key is null)).Select(k => k.Part).ToList();
        parts.Clear();
        parts.AddRange(sorted);
        return true;
    }

    private static int Compare(IComparable? a, IComparable? b) => a is string x && b is string y ? string.CompareOrdinal(x, y) : Comparer<IComparable>.Default.Compare(a, b);

    private static void Show(List<Part> parts, Terminal terminal)
    {
        terminal.Table(["Code", "Family", "Description", "Price", "Currency", "Valid until", "Days to come"], parts.Select(Row));
        terminal.Result(Terminal.Count(parts.Count, "part"));
    }

    private static string[] Row(Part part) =>
    [
        part.Code, PartFamily.Of(part).Name, part.Description, part.UnitPrice.ToString("N2", CultureInfo.InvariantCulture), part.Currency,
        part.PriceValidUntil?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", part.LeadTimeDays.ToString(CultureInfo.InvariantCulture),
    ];

    private static JsonObject Json(List<Part> parts, CatalogSource source, Outcome<CatalogSource> opened) => new()
    {
        ["catalogSha256"] = source.Digest,
        ["parts"] = new JsonArray([.. parts.Select(p => new JsonObject
        {
            ["code"] = p.Code,
            ["family"] = PartFamily.Of(p).Name,
            ["description"] = p.Description,
            ["unitPrice"] = p.UnitPrice,
            ["currency"] = p.Currency,
            ["priceValidUntil"] = p.PriceValidUntil?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            ["leadTimeDays"] = p.LeadTimeDays,
        })]),
        ["diagnostics"] = new JsonArray([.. opened.Diagnostics.Select(BidJson.DiagnosticJson)]),
    };
}
