using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Command <c>light</c>, on files whose light is known in closed form.</summary>
public class LightTests
{
    private static readonly string Files = Path.Combine(Repository.Root, "tests", "TenderKit.Intake.Tests", "Photometry", "Files");

    // Lambertian, whole road grid with the 5 H cut at 3000 lm: Eav 5.627, Emin 1.920, Emax 14.27, Uo 0.341 (recomputed); here 1000 lm
    [Fact]
    public void A_lambertian_road_gives_the_recomputed_light()
    {
        var json = Json("G01_lambertian_1000lm_sym.ies", "--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--overhang-m", "0", "--arrangement", "single", "--maintenance-factor", "1");
        Assert.Equal(10, json["gridPointsAlong"]!.GetValue<int>());
        Assert.Equal(5, json["gridPointsAcross"]!.GetValue<int>());
        Assert.Equal(5.627, Value(json, "averageLx") * 3, 0.01 * 5.627);
        Assert.Equal(1.920, Value(json, "minimumLx") * 3, 0.02 * 1.920);
        Assert.Equal(14.27, Value(json, "maximumLx") * 3, 0.02 * 14.27);
        Assert.Equal(0.341, Value(json, "uniformityFraction"), 0.001);
        Assert.Equal(1000, Value(json, "fluxLm"), 2.5);
        Assert.True(json.ContainsKey("edgeRatioFraction"));
        Assert.True(json.ContainsKey("meets"));
        Assert.True(json.ContainsKey("governs"));
    }

    [Fact]
    public void Staggered_and_opposite_give_twice_the_average_of_one_side()
    {
        double Average(string arrangement) => Value(Json("G01_lambertian_1000lm_sym.ies", "--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--arrangement", arrangement), "averageLx");
        Assert.Equal(2 * Average("single"), Average("staggered"), 0.01);
        Assert.Equal(2 * Average("single"), Average("opposite"), 0.01);
    }

    [Fact]
    public void A_street_side_turned_away_lights_less_and_round_again_the_same()
    {
        double Average(string degrees) => Value(Json("G06_asym_180_same.ies", "--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--rotate-deg", degrees), "averageLx");
        Assert.True(Average("180") < 0.7 * Average("0"));
        Assert.Equal(Average("0"), Average("360"), 1e-6);
    }

    [Fact]
    public void C90_of_a_eulumdat_file_faces_the_street()
    {
        double Average(string degrees) => Value(Json("G08_isym3_asym_C90.ldt", "--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--rotate-deg", degrees), "averageLx");
        Assert.True(Average("180") < 0.8 * Average("0"));
    }

    [Fact]
    public void A_class_is_judged_and_an_unmet_one_is_exit_code_1()
    {
        var run = Light("G01_lambertian_1000lm_sym.ies", "--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--class", "P4", "--format", "json");
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        var json = JsonNode.Parse(run.Output)!;
        Assert.False(json["meets"]!.GetValue<bool>());
        Assert.Equal("average illuminance", json["governs"]!.GetValue<string>());
    }

    [Fact]
    public void A_file_alone_shows_its_zones_and_ratings()
    {
        var json = Json("G01_lambertian_1000lm_sym.ies");
        Assert.Equal(125, json["zoneFluxLm"]!["forwardLow"]!.GetValue<double>(), 0.5); // Lambertian: half of sin^2 30 (closed form)
        Assert.StartsWith("B", json["backlightUplightGlare"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.False(json.ContainsKey("averageLx"));
    }

    [Theory]
    [InlineData("--height-m 8 --spacing-m 25 --width-m 700", "--width-m must lie between 0.5 and 40")]
    [InlineData("--height-m tall --spacing-m 25 --width-m 7", "--height-m is 'tall'")]
    [InlineData("--height-m 8 --spacing-m 25 --width-m 7 --class P44", "did you mean 'P4'?")]
    [InlineData("--height-m 8 --spacing-m 25 --width-m 7 --arrangement round", "round")]
    public void Odd_values_are_named(string options, string message)
    {
        var run = Light("G01_lambertian_1000lm_sym.ies", options.Split(' '));
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(message, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_decimal_comma_is_a_decimal_comma() => Assert.Equal(
        Value(Json("G01_lambertian_1000lm_sym.ies", "--height-m", "8.5", "--spacing-m", "25", "--width-m", "7"), "averageLx"),
        Value(Json("G01_lambertian_1000lm_sym.ies", "--height-m", "8,5", "--spacing-m", "25", "--width-m", "7"), "averageLx"));

    [Fact]
    public void Without_a_spacing_the_widest_that_meets_the_class_is_found()
    {
        var lamp = Path.Combine(Repository.Root, "catalog-sample", "photometry", "LUM-R30-40.ies");
        var run = TenderFolder.Run("light", "--photometry", lamp, "--height-m", "6", "--width-m", "6", "--overhang-m", "0.5", "--maintenance-factor", "0.8", "--class", "P4", "--least-level", "10 %", "--near-sidewalk-m", "1.5", "--sidewalk-class", "P5", "--format", "json");
        Assert.True(run.Code == ExitCodes.Good, run.Errors + run.Output);
        var json = JsonNode.Parse(run.Output)!;
        Assert.InRange(json["spacingM"]!.GetValue<double>(), 20, 40);
        Assert.True(json["meets"]!.GetValue<bool>());
        Assert.Equal("near sidewalk", json["sidewalks"]![0]!["name"]!.GetValue<string>());
    }

    [Fact]
    public void A_line_of_poles_on_the_left_lights_like_one_on_the_right()
    {
        double Average(string arrangement) => Value(Json("G06_asym_180_same.ies", "--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--arrangement", arrangement), "averageLx");
        Assert.Equal(Average("single"), Average("left"), 1e-3);
    }

    // CEN/TR 13201-1:2014: low speed, quiet, pedestrians and cyclists, nothing parked, ambient low: sum 0, class P6 (read)
    [Fact]
    public void A_class_is_proposed_from_its_weights()
    {
        var run = TenderFolder.Run("light", "propose-class", "--speed", "low", "--use", "quiet", "--users", "pedestrians-and-cyclists", "--surroundings", "low", "--format", "json");
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.Equal("P6", JsonNode.Parse(run.Output)!["class"]!.GetValue<string>());
    }

    [Fact]
    public void A_sheet_is_written_and_is_the_same_each_time()
    {
        using var folder = new TenderFolder();
        string[] options = ["--height-m", "8", "--spacing-m", "25", "--width-m", "7", "--arrangement", "staggered", "--class", "P5", "--pdf"];
        Light("G06_asym_180_same.ies", [.. options, folder.PathOf("a.pdf")]);
        Light("G06_asym_180_same.ies", [.. options, folder.PathOf("b.pdf")]);
        Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(folder.PathOf("a.pdf"))[..4]);
        Assert.Equal(File.ReadAllBytes(folder.PathOf("a.pdf")), File.ReadAllBytes(folder.PathOf("b.pdf")));
    }

    [Fact]
    public void A_missing_file_is_named() => Assert.Contains("nothing.ies", Light("nothing.ies").Errors, StringComparison.Ordinal);

    private static (int Code, string Output, string Errors) Light(string file, params string[] options) =>
        TenderFolder.Run(["light", "--photometry", Path.Combine(Files, file), .. options]);

    private static JsonObject Json(string file, params string[] options)
    {
        var run = Light(file, [.. options, "--format", "json"]);
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        return JsonNode.Parse(run.Output)!.AsObject();
    }

    private static double Value(JsonObject json, string key) => json[key]!.GetValue<double>();
}
