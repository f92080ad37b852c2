using System.Globalization;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Light;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Documents.Tests.Light;

[Collection("world")]
public class LightSheetTests
{
    private static readonly RoadClass M4 = RoadClasses.Find("M4")!;

    [SkippableFact]
    public void A_luminance_class_is_shown_limit_by_limit_with_what_is_reached()
    {
        var content = InventedLight.Sheet(M4, quality: true);
        var page = PdfReader.Pages(LightSheet.Make(content))[0];

        var verdict = content.Quality!.Carriageway.Verdict!;
        Assert.Equal(5, verdict.Checks.Length);
        foreach (var check in verdict.Checks)
        {
            var sign = check.Comparison == Comparison.AtLeast ? "≥" : "≤";
            Assert.Matches($@"{check.Limit} +{sign} {N(check.Required, check.Unit)}.* {N(check.Reached, check.Unit)} .* {(check.Met ? "yes" : "NO")}", page);
        }

        Assert.Contains("EN 13201-2:2015, table 1", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_answer_stands_first_and_says_met_or_not_met()
    {
        var content = InventedLight.Sheet(M4, quality: true);
        var missed = content.Quality!.Carriageway.Verdict!.Checks.Where(c => !c.Met).Select(c => c.Limit);
        var easy = new RoadClass("wish", "wish of the employer") { Illuminance = new LightTarget("wish", 1, 0.1, null, null, "wish of the employer") };

        Assert.StartsWith($"Class M4 is NOT met on the carriageway: {string.Join(", ", missed)}.", string.Join(' ', Text(content).Skip(3)), StringComparison.Ordinal);
        Assert.Equal("Class wish is met. The tightest limit: average illuminance.", Text(InventedLight.Sheet(easy, quality: false))[3]);
        Assert.Equal("No class was asked for.", Text(InventedLight.Sheet(null, quality: true))[3]);
        Assert.Equal("Class M4 could not be judged: what it asks for was not worked out.", Text(InventedLight.Sheet(M4, quality: false))[3]);
    }

    [Fact]
    public void What_was_not_worked_out_is_never_called_met()
    {
        var partly = new RoadClass("wish", "wish of the employer") { Illuminance = new LightTarget("wish", 1, null, null, null, "wish"), Glare = new GlareLimit(0.2) };
        var text = Text(InventedLight.Sheet(partly, quality: false));

        Assert.Equal("The illuminance of class wish is met; what else it asks for was not worked out.", text[3]);
        Assert.Contains(text, l => l.Contains("NOT shown to be met", StringComparison.Ordinal));
        Assert.Contains("Class wish is met", string.Join('\n', Text(InventedLight.Sheet(partly, quality: true))), StringComparison.Ordinal);
    }

    [Fact]
    public void The_facts_of_the_layout_the_assumption_and_the_warnings_stand_on_it()
    {
        var content = InventedLight.Sheet(M4, quality: true);
        var text = string.Join('\n', Text(content));

        Assert.All(
            new[]
            {
                "7 m wide in 2 lanes", "30.0 m along one side", "8.00 m", "Maintenance factor | 0.80", "wings.ies", "10 points along one bay, 5 across",
                "straight, level road without end", "TK999", "an invented warning", "from memory", $"Average illuminance Eav | {Lux(content.Result.AverageLx)}",
                $"Minimum illuminance Emin | {Lux(content.Result.MinimumLx)}", $"Maximum illuminance Emax | {Lux(content.Result.MaximumLx)}",
                $"Edge illuminance ratio, worse side | {content.Quality!.Carriageway.EdgeRatio!.Value.ToString("F2", CultureInfo.InvariantCulture)}",
                content.Analysis.Rating.ToString(),
            },
            t => Assert.Contains(t, text, StringComparison.Ordinal));
        Assert.DoesNotContain("TK998", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_value_of_the_grid_stands_in_its_table()
    {
        var content = InventedLight.Sheet(M4, quality: true);
        var lines = Text(content);

        for (var j = 0; j < content.Result.PointsAcross; j++)
        {
            var row = content.Result.Points.Skip(j * content.Result.PointsAlong).Take(content.Result.PointsAlong).ToArray();
            Assert.Contains(string.Join(" | ", row.Select(p => F(p.IlluminanceLx)).Prepend(F(row[0].YM))), lines);
        }
    }

    [Theory]
    [InlineData(3, 20, 6, 1)]
    [InlineData(7, 45, 9, 2)]
    [InlineData(20, 60, 12, 6)]
    public void A_sheet_takes_two_pages(double widthM, double spacingM, double heightM, int lanes)
    {
        var content = InventedLight.Sheet(M4, quality: true, new RoadLayout(widthM, spacingM, heightM, 0.5, 5, Arrangement.Staggered), lanes);

        Assert.Equal(2, PdfPrinter.Lay(LightSheet.Document(content).Blocks).Sheets.Count);
    }

    [Fact]
    public void Equal_bytes_come_out_under_every_culture_and_time_zone()
    {
        var content = InventedLight.Sheet(M4, quality: true);
        var first = LightSheet.Make(content);

        Assert.All(SameEverywhere.Run(() => LightSheet.Make(content)), bytes => Assert.Equal(first, bytes));
    }

    [Fact]
    public void A_date_stands_on_it_only_when_passed_in()
    {
        var content = InventedLight.Sheet(M4, quality: true);

        Assert.Equal("Light sheet", Text(content)[1]);
        Assert.Equal("Light sheet · 15 March 2027", Text(content with { Issued = new DateOnly(2027, 3, 15) })[1]);
        Assert.NotEqual(LightSheet.Make(content), LightSheet.Make(content with { Issued = new DateOnly(2027, 3, 15) }));
    }

    [Fact]
    public void A_turned_luminaire_is_said_so()
    {
        var content = InventedLight.Sheet(null, quality: false);

        Assert.DoesNotContain("turned", string.Join('\n', Text(content)), StringComparison.Ordinal);
        Assert.Contains("0.50 m, 5°; turned −90°", string.Join('\n', Text(content with { TurnDegrees = -90 })), StringComparison.Ordinal);
    }

    [Fact]
    public void Odd_grids_are_said_so_and_stop_nothing()
    {
        var content = InventedLight.Sheet(null, quality: false);
        var thin = content with { Result = content.Result with { PointsAcross = 1, Points = [.. content.Result.Points.Take(content.Result.PointsAlong)] } };
        var empty = content with { Result = new LightResult(0, 0, 0, 0, 0, []) };

        Assert.Contains("cannot be drawn", string.Join('\n', Text(thin)), StringComparison.Ordinal);
        Assert.NotEmpty(LightSheet.Make(thin));
        Assert.NotEmpty(LightSheet.Make(empty));
    }

    private static string[] Text(LightSheetContent content) => TextView.Of(LightSheet.Document(content)).Split('\n');

    private static string Lux(double lx) => F(lx) + " lx";

    private static string F(double value) => value.ToString("F2", CultureInfo.InvariantCulture);

    private static string N(double value, string unit) => value.ToString(unit == "%" ? "F1" : "F2", CultureInfo.InvariantCulture);
}
