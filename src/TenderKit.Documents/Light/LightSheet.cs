using System.Collections.Immutable;
using TenderKit.Documents.Drawings;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Light;

/// <summary>
/// One layout of a road on a sheet of two pages as a PDF file: the result against its class and the plan, then the luminaire and the grid.
/// Same content, same bytes.
/// </summary>
public static class LightSheet
{
    public static byte[] Make(LightSheetContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return PdfPrinter.Print(Document(content));
    }

    internal static PaperDocument Document(LightSheetContent content) => new(
        content.Title + ": light sheet", content.Author, "Light sheet", $"{content.Title}  ·  Light sheet", content.Issued,
        [.. Front(content), new PageBreak(), .. Back(content)])
    { Wording = Wording.In(content.Language, [content.Author, content.PhotometricFile]) };

    private static IEnumerable<Block> Front(LightSheetContent content)
    {
        yield return new Paragraph(Byline(content), TextStyle.BodyStrong, AfterSteps: 0);
        yield return new Paragraph(content.Title, TextStyle.Chapter, AfterSteps: 1);
        yield return new Paragraph(Answer(content), TextStyle.BodyStrong);
        yield return Facts(content);
        var verdicts = content.Verdicts;
        if (!verdicts.IsEmpty) yield return LightTables.Limits(verdicts);
        if (content.IsPartly) yield return new Paragraph($"Class {content.Class!.Name} asks for more than illuminance; what this table does not name was not worked "
            + "out here and is NOT shown to be met.", TextStyle.SmallStrong);
        yield return LightTables.Measures(content);
        yield return Plan(content);
        yield return new Paragraph(Assumed(content), TextStyle.Small);
        foreach (var block in Warned(content)) yield return block;
    }

    private static IEnumerable<Block> Back(LightSheetContent content)
    {
        yield return new Heading(3, "Luminaire");
        foreach (var block in PhotometryBlocks.Of(content.PhotometricFile, content.Distribution, content.Analysis)) yield return block;
        yield return new Paragraph(PhotometryBlocks.Recalled, TextStyle.Small);
        if (content.Quality?.Carriageway.Luminance is { } luminance) yield return LightTables.Drivers(luminance);
        if (content.Quality is { Sidewalks.IsEmpty: false } quality) yield return LightTables.Sidewalks(quality.Sidewalks);
        foreach (var block in LightTables.Grid(content.Result)) yield return block;
    }

    private static string Byline(LightSheetContent content) => string.Join(" · ", new[]
    {
        "Light sheet", content.Author, content.Issued is { } date ? Figures.Date(date) : "",
    }.Where(t => t.Length > 0));

    /// <summary>The one sentence a reader looks for.</summary>
    private static string Answer(LightSheetContent content)
    {
        var verdicts = content.Verdicts;
        if (verdicts.IsEmpty) return content.Judged is { } asked ? $"Class {asked.Name} could not be judged: what it asks for was not worked out."
            : "No class was asked for.";
        var missed = verdicts.Where(v => !v.Met).Select(v =>
            $"Class {v.Class.Name} is NOT met on the {v.Strip}: {string.Join(", ", v.Checks.Where(c => !c.Met).Select(c => c.Limit))}.").ToImmutableArray();
        if (!missed.IsEmpty) return string.Join(" ", missed);
        var names = verdicts.Select(v => v.Class.Name).Distinct().ToImmutableArray();
        if (content.IsPartly) return $"The illuminance of class {names[0]} is met; what else it asks for was not worked out.";
        return (names.Length == 1 ? $"Class {names[0]} is" : $"Classes {string.Join(" and ", names)} are")
            + $" met. The tightest limit: {verdicts.Select(v => v.Governing).MinBy(c => c.MarginRatio)!.Limit}.";
    }

    private static TableBlock Facts(LightSheetContent content)
    {
        var (road, lanes) = (content.Layout, content.Lanes is { } n ? $" in {Figures.Count(n, "lane", "lanes")}" : "");
        return new TableBlock(
            null,
            [new("", FixedPt: 92), new(""), new("", FixedPt: 92), new("")],
            [
                Row.Of("Carriageway", $"{Figures.Short(road.WidthM)} m wide{lanes}", "Class asked for", content.Judged is { } c ? c.Name : "none"),
                Row.Of("Arrangement", Words.Of(road.Arrangement), "Standard of the class", content.Judged?.Source ?? "–"),
                Row.Of("Spacing", $"{Figures.Number(road.SpacingM, 1)} m along one side", "Surface", content.Surface ?? "not stated"),
                Row.Of("Mounting height", $"{Figures.Number(road.MountingHeightM, 2)} m", "Maintenance factor", Figures.Number(content.MaintenanceFactor, 2)),
                Row.Of("Overhang, tilt", $"{Figures.Signed(road.OverhangM, 2)} m, {Figures.Short(road.TiltDegrees)}°{Turned(content)}", "Level", Figures.Percent(content.LevelFraction)),
                Row.Of("Photometric file", content.PhotometricFile, "Set by", content.Governs.Length > 0 ? content.Governs : "–"),
                Row.Of("Luminaire", Luminaire(content.Analysis), "Grid", Grid(content.Result)),
            ])
        {
            Compact = true,
            KeepTogether = true,
        };
    }

    private static string Turned(LightSheetContent content) =>
        content.TurnDegrees == 0 ? "" : $"; turned {Figures.Short(content.TurnDegrees).Replace('-', '−')}°";

    private static string Luminaire(PhotometricAnalysis a) => string.Join(", ", new[]
    {
        Figures.Number(a.FluxLm, 0) + " lm", a.PowerW is { } power ? Figures.Short(power) + " W" : "", a.EfficacyLmPerW is { } e ? Figures.Number(e, 0) + " lm/W" : "",
    }.Where(t => t.Length > 0));

    private static string Grid(LightResult r) =>
        $"{Figures.Number(r.PointsAlong, 0)} points along one bay, {Figures.Number(r.PointsAcross, 0)} across";

    private static Block Plan(LightSheetContent content)
    {
        if (!LightField.CanDraw(content.Result)) return new Paragraph($"No plan: a grid of {Grid(content.Result)} cannot be drawn.");
        var light = new LightSolution(content.Layout.SpacingM, content.Layout, null, content.LevelFraction, content.Result, content.Verdicts.All(v => v.Met), content.Governs);
        var picture = new LightPicture(light, content.ArmReachM);
        return new Figure(picture.HeightPt, picture.Draw, "Maintained horizontal illuminance, one bay, near side at the foot; linear between grid points, level beyond.");
    }

    private static string Assumed(LightSheetContent content) =>
        "Assumed: a straight, level road without end, equal luminaires at equal spacing, no other light, nothing in its way. Bends, junctions, slopes, crossings, "
        + "trees and the ends of the row need a calculation of their own. "
        + (content.Quality?.Carriageway.Luminance is null ? "" : "The surface is dry; the wet limits of the class are not worked out. ")
        + "The edition of the standard in force and the local code prevail; a person licensed for it answers for the design.";

    private static IEnumerable<Block> Warned(LightSheetContent content)
    {
        var warnings = content.Warnings.Where(d => d.Severity != Severity.Note).Distinct().OrderByDescending(d => d.Severity).ToImmutableArray();
        if (warnings.IsEmpty) yield break;
        yield return new TableBlock(
            "Warnings",
            [new("Code", FixedPt: 42), new("", FixedPt: 46), new("What, and what to do")],
            [.. warnings.Select(d => new Row([d.Code, d.Severity == Severity.Error ? "error" : "warning", Said(d)], Strong: d.Severity == Severity.Error))])
        {
            Compact = true,
        };
    }

    private static string Said(Diagnostic diagnostic) => diagnostic.Place.ToString() is { Length: > 0 } place ? $"{place}: {diagnostic.Message}" : diagnostic.Message;
}
