using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Documents.Machine;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.PartsStated;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Cli.Commands;

/// <summary><c>inspect</c>: what was understood, row by row, and every problem.</summary>
internal static class InspectCommand
{
    public static Command Make(Terminal terminal)
    {
        var tender = CommonOptions.TenderFile();
        var format = CommonOptions.Format();
        var save = new Option<bool>("--save-columns") { Description = "Writes what the columns mean to columns.yaml beside the tender, to be edited; it is read from then on." };
        var command = new Command("inspect", "Shows what was understood of the tender, of every column and row of the site list, and every problem.") { tender, save, format };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(tender), parsed.GetValue(save), parsed.GetValue(format) == "json", terminal));
        return command;
    }

    private static int Run(string path, bool save, bool json, Terminal terminal)
    {
        var loaded = TenderLoader.Load(path);
        if (save && loaded.SiteList is { } list) Save(path, list, terminal);
        if (loaded.Inputs is { } read) loaded = loaded with { Diagnostics = [.. loaded.Diagnostics, .. ClimateTable.Noticed(read)] };
        if (json) terminal.Result(Json(loaded));
        else Show(loaded, terminal);
        if (loaded.Inputs is null) return ExitCodes.CouldNotRun;
        return loaded.Diagnostics.Any(d => d.Severity == Severity.Error) ? ExitCodes.SomethingUnmet : ExitCodes.Good;
    }

    private static void Save(string path, SiteListReading list, Terminal terminal)
    {
        var target = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, SavedColumns.FileName);
        File.WriteAllText(target, SavedColumns.Text(list.Sheets, SiteColumns.All));
        terminal.Progress($"The meanings of the columns were written to {SavedColumns.FileName}; edit them there, and they hold from then on.");
    }

    private static void Show(LoadedTender loaded, Terminal terminal)
    {
        if (loaded.Inputs is { } inputs)
        {
            var head = inputs.Tender.Head;
            terminal.Result($"{head.Reference}: {head.Title}");
            terminal.Result(string.Create(CultureInfo.InvariantCulture, $"for {head.Employer}, by {head.Bidder}, issued {head.IssueDate:yyyy-MM-dd}, valid {head.ValidityDays} days, delivery {head.DeliveryDays} days, in {head.Currency}"));
            terminal.Result(string.Create(CultureInfo.InvariantCulture, $"asked for: {inputs.Tender.Reliability.AutonomyNights} nights of autonomy, at most {inputs.Tender.Reliability.DarkNightsPerYear} dark nights a year"));
            terminal.Result(string.Create(CultureInfo.InvariantCulture, $"catalogue: {inputs.Catalog.All.Count()} parts; climate: {inputs.Tender.ClimateFile ?? "built-in estimate"}"));
        }

        if (loaded is { SiteList: null, Inputs: { } region })
        {
            terminal.Table(SiteHeadings, region.Sites.Select(SiteRow));
            ClimateTable.Show(region, terminal);
        }

        if (loaded.SiteList is { } list)
        {
            terminal.Result("");
            foreach (var sheet in list.Sheets)
            {
                terminal.Result(SheetLine(sheet, list));
                terminal.Table(["Column", "Heading", "Meaning", "Unit", "Sample", "Sure"], sheet.Columns.Where(c => c.Heading.Length > 0).Select(ColumnRow));
            }

            terminal.Table(SiteHeadings, list.Sites.Select(SiteRow));
            if (loaded.Inputs is { } known) ClimateTable.Show(known, terminal);
        }

        terminal.Result(loaded.Diagnostics.IsEmpty ? "No problems found." : string.Create(CultureInfo.InvariantCulture, $"{Terminal.Count(Count(loaded, Severity.Error), "error")}, {Terminal.Count(Count(loaded, Severity.Warning), "warning")}, {Terminal.Count(Count(loaded, Severity.Note), "note")}:"));
        foreach (var diagnostic in loaded.Diagnostics.OrderByDescending(d => d.Severity)) terminal.Result(diagnostic.ToString());
    }

    private static readonly string[] SiteHeadings =
        ["Row", "Site", "Name", "Latitude", "Longitude", "Kind", "Length m", "Width m", "Class", "Schedule", "Height m", "Shading", "Wind m/s", "Soil", "Lot", "Climate"];

    private static string[] SiteRow(Site site) =>
    [
        Text(site.Row, "0"), site.Id, site.Name, Text(site.LatitudeDegrees, "0.0000"), Text(site.LongitudeDegrees, "0.0000") + (site.IsPositionStated ? "" : " (taken)"), site.Kind.ToString().ToLowerInvariant(),
        Text(site.LengthM, "0.#"), Text(site.WidthM, "0.#"), site.Target.Name, site.Schedule.Name, HeightText(site), Text(site.ShadedFraction * 100, "0.#") + " %",
        Text(site.BasicWindMPerS, "0.#"), site.Soil.Name + (site.SoilStated ? "" : " (not stated)"), site.Lot, site.ClimateFile ?? "",
    ];

    private static string HeightText(Site site) => site.MountingHeightsM.Length == 1
        ? Text(site.MountingHeightsM[0], "0.#")
        : Text(site.MountingHeightsM[0], "0.#") + " to " + Text(site.MountingHeightsM[^1], "0.#");

    private static string SheetLine(ColumnMapping sheet, SiteListReading list)
    {
        var name = sheet.Table.Sheet is { } s ? $"{sheet.Table.File}, sheet {s}" : sheet.Table.File;
        var header = sheet.HeaderRow is { } row ? string.Create(CultureInfo.InvariantCulture, $"headings in row {row}, data from row {sheet.FirstDataRow}") : "no headings found";
        return $"{name}: {header}{(IsRead(sheet, list) ? "" : "; not read as a site list")}";
    }

    private static bool IsRead(ColumnMapping sheet, SiteListReading list) => list.ReadSheets.Contains(sheet.Table.Sheet ?? "");

    private static string[] ColumnRow(MappedColumn column) =>
    [
        Cell.ColumnName(column.Column), column.Heading.ReplaceLineEndings(" "), (column.Meaning?.Id ?? "not used") + (column.IsHidden ? " (hidden)" : ""), column.Unit ?? "",
        Short(column.Sample), column.IsConfirmed ? "saved" : column.Meaning is null ? "" : Text(column.Score * 100, "0") + " %",
    ];

    private static string Short(string text) => text.ReplaceLineEndings(" ") is var line && line.Length > 40 ? line[..37] + "..." : line;

    private static JsonObject ColumnJson(MappedColumn column) => new()
    {
        ["column"] = Cell.ColumnName(column.Column),
        ["heading"] = column.Heading,
        ["meaning"] = column.Meaning?.Id,
        ["unit"] = column.Unit,
        ["sample"] = column.Sample,
        ["scoreFraction"] = column.Score,
        ["isHidden"] = column.IsHidden,
        ["isSaved"] = column.IsConfirmed,
    };

    private static JsonObject SheetJson(ColumnMapping sheet, SiteListReading list) => new()
    {
        ["file"] = sheet.Table.File,
        ["sheet"] = sheet.Table.Sheet,
        ["headerRow"] = sheet.HeaderRow,
        ["firstDataRow"] = sheet.FirstDataRow,
        ["isRead"] = IsRead(sheet, list),
        ["columns"] = new JsonArray([.. sheet.Columns.Where(c => c.Heading.Length > 0).Select(ColumnJson)]),
    };

    private static JsonObject Json(LoadedTender loaded) => new()
    {
        ["canRun"] = loaded.Inputs is not null,
        ["sheets"] = new JsonArray([.. (loaded.SiteList is { } list ? list.Sheets : []).Select(s => SheetJson(s, loaded.SiteList!))]),
        ["columns"] = new JsonArray([.. (loaded.SiteList?.Columns.Columns ?? []).Select(ColumnJson)]),
        ["sites"] = new JsonArray([.. (loaded.SiteList?.Sites ?? loaded.Inputs?.Sites ?? []).Select(s => SiteJson(s, loaded.Inputs))]),
        ["rows"] = new JsonArray([.. (loaded.SiteList?.Rows ?? []).Select(RowJson)]),
        ["tender"] = loaded.Inputs is { } known ? TenderJson(known) : null,
        ["inputs"] = new JsonArray([.. (loaded.Inputs?.Digests ?? []).Select(d => new JsonObject { ["file"] = d.File, ["sha256"] = d.Sha256 })]),
        ["diagnostics"] = new JsonArray([.. loaded.Diagnostics.Select(BidJson.DiagnosticJson)]),
    };

    /// <summary>Every cell of a row that was understood: what stood there and what was taken.</summary>
    private static JsonObject RowJson(SiteRowEcho row) => new()
    {
        ["row"] = row.Row,
        ["siteId"] = row.SiteId,
        ["isRead"] = row.IsRead,
        ["cells"] = new JsonArray([.. row.Cells.Select(c => new JsonObject { ["heading"] = c.Heading, ["seen"] = c.Seen, ["understood"] = c.Understood })]),
    };

    private static JsonObject TenderJson(DesignInputs inputs)
    {
        var (head, tender) = (inputs.Tender.Head, inputs.Tender);
        return new JsonObject
        {
            ["reference"] = head.Reference,
            ["title"] = head.Title,
            ["employer"] = head.Employer,
            ["bidder"] = head.Bidder,
            ["issueDate"] = head.IssueDate.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            ["validityDays"] = head.ValidityDays,
            ["deliveryDays"] = head.DeliveryDays,
            ["currency"] = head.Currency,
            ["autonomyNights"] = tender.Reliability.AutonomyNights,
            ["darkNightsPerYear"] = tender.Reliability.DarkNightsPerYear,
            ["climate"] = tender.ClimateFile,
            ["catalogueParts"] = inputs.Catalog.All.Count(),
            ["region"] = tender.Region?.Name,
            ["partsStated"] = new JsonArray([.. tender.PartsStated.Select(p => JsonValue.Create(Clarifications.Text(p)))]),
            ["statedTotals"] = tender.Stated is { } stated ? new JsonObject { ["sites"] = stated.Sites, ["lengthM"] = stated.LengthM, ["poles"] = stated.Poles } : null,
        };
    }

    private static JsonObject SiteJson(Site site, DesignInputs? inputs) => new()
    {
        ["row"] = site.Row,
        ["siteId"] = site.Id,
        ["name"] = site.Name,
        ["latitudeDegrees"] = site.LatitudeDegrees,
        ["longitudeDegrees"] = site.LongitudeDegrees,
        ["positionStated"] = site.IsPositionStated,
        ["district"] = site.District,
        ["kind"] = site.Kind.ToString().ToLowerInvariant(),
        ["lengthM"] = site.LengthM,
        ["widthM"] = site.WidthM,
        ["class"] = site.Target.Name,
        ["schedule"] = site.Schedule.Name,
        ["mountingHeightsM"] = new JsonArray([.. site.MountingHeightsM.Select(h => JsonValue.Create(h))]),
        ["shadedFraction"] = site.ShadedFraction,
        ["windMPerS"] = site.BasicWindMPerS,
        ["soil"] = site.Soil.Name,
        ["soilStated"] = site.SoilStated,
        ["lot"] = site.Lot,
        ["climateFile"] = site.ClimateFile,
        ["horizon"] = site.Horizon is { } horizon ? HorizonText.Of(horizon) : null,
        ["azimuthDegrees"] = site.AzimuthDegrees,
        ["arrangement"] = site.Arrangement.ToString(),
        ["side"] = site.Side?.ToString(),
        ["poles"] = site.FixedPoles,
        ["averageLx"] = site.Target.AverageLx,
        ["minimumLx"] = site.Target.MinimumLx,
        ["uniformityFraction"] = site.Target.OverallUniformity,
        ["terrain"] = site.Terrain.ToString(),
        ["windStandard"] = site.Ground.Standard.ToString(),
        ["bearingDegrees"] = site.BearingDegrees,
        ["isSurveyed"] = site.IsSurveyed,
        ["surveyedOn"] = site.SurveyedOn?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        ["remark"] = site.Remark,
        ["drawn"] = site.Geometry is { } drawn ? DrawnJson(drawn) : null,
        ["climate"] = ClimateTable.Json(site, inputs),
    };

    private static JsonObject DrawnJson(SiteGeometry drawn) => new()
    {
        ["shape"] = drawn.Shape.ToString().ToLowerInvariant(),
        ["lengthM"] = Math.Round(drawn.LengthM, 2),
        ["areaM2"] = drawn.Lit is { } lit ? Math.Round(lit.Area.AreaM2, 1) : null,
        ["openings"] = drawn.Lit?.Area.Holes.Length,
        ["bends"] = drawn.BendFractions.Length,
        ["polesDrawn"] = drawn.Poles.Length,
        ["parts"] = new JsonArray([.. drawn.Parts.Select(p => new JsonArray([.. p.Select(q => new JsonArray(q.LongitudeDegrees, q.LatitudeDegrees))]))]),
    };

    private static int Count(LoadedTender loaded, Severity severity) => loaded.Diagnostics.Count(d => d.Severity == severity);

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
