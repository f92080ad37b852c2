using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Command <c>wiring</c>.</summary>
public class WiringTests
{
    private static readonly string[] Run8m = ["--current-a", "10", "--length-m", "8", "--voltage-v", "12", "--conductor-temperature-c", "60"];

    // IEC 60228 class 2, 4 mm2: 4.61 Ohm/km at 20 degC (read); copper at 60 degC by (234.5 + t) / 254.5 (from memory): by hand
    [Fact]
    public void The_agreed_keys_by_hand()
    {
        var json = Json(["--area-mm2", "4", .. Run8m]);
        var ohm = 4.61e-3 * 8 * 294.5 / 254.5;
        Assert.Equal(ohm, Value(json, "resistanceOhm"), 1e-5);
        Assert.Equal("one conductor, one way", json["resistanceOf"]!.GetValue<string>());
        Assert.Equal(2 * 10 * ohm, Value(json, "dropV"), 1e-3);
        Assert.Equal(2 * 10 * ohm / 12, Value(json, "dropFraction"), 1e-4);
        Assert.Equal(30 * 0.71, Value(json, "capacityA"), 0.01); // B2, PVC, 50 degC: read
        Assert.Equal(16, Value(json, "fuseA"));
    }

    // The coefficient of copper, 0.00393 per K (read), gives the same within a thousandth
    [Fact]
    public void Temperature_by_the_coefficient_of_copper() =>
        Assert.Equal(4.61e-3 * 8 * (1 + 0.00393 * 40), Value(Json(["--area-mm2", "4", .. Run8m]), "resistanceOhm"), 5e-5);

    // Worked example, read: 4 A over 100 ft of 4.99 Ohm per 1000 ft on 24 V drops 4.0 V, 16.7 %. No metric size has that resistance at 20 degC;
    // 1.5 mm2 class 2 at the temperature at which it has, 124 degC, is beyond the command, so the relation is asked: drop goes with length and current.
    [Fact]
    public void Drop_goes_with_length_and_current()
    {
        var once = Value(Json(["--area-mm2", "4", .. Run8m]), "dropV");
        Assert.Equal(2 * once, Value(Json(["--area-mm2", "4", "--current-a", "10", "--length-m", "16", "--voltage-v", "12", "--conductor-temperature-c", "60"]), "dropV"), 1e-3);
        Assert.Equal(once / 2, Value(Json(["--area-mm2", "4", "--current-a", "5", "--length-m", "8", "--voltage-v", "12", "--conductor-temperature-c", "60"]), "dropV"), 1e-3);
    }

    // 2 pairs of 5 mOhm a pole at 10 A: 0.2 V more (Ohm's law)
    [Fact]
    public void Connectors_add_their_drop() =>
        Assert.Equal(Value(Json(["--area-mm2", "4", .. Run8m]), "dropV") + 0.2, Value(Json(["--area-mm2", "4", "--connector-pairs", "2", .. Run8m]), "dropV"), 1e-5);

    [Theory]
    [InlineData("2.5")]
    [InlineData("4")]
    [InlineData("6")]
    [InlineData("16")]
    [InlineData("25")]
    public void The_fuse_lies_between_the_current_and_the_cable(string area)
    {
        var json = Json(["--area-mm2", area, .. Run8m]);
        Assert.InRange(Value(json, "fuseA"), 12.5, Value(json, "capacityA"));
    }

    [Fact]
    public void TK401_TK402_TK403_what_is_not_right_is_said()
    {
        var run = TenderFolder.Run(["wiring", "--area-mm2", "1.5", "--current-a", "10", "--length-m", "8", "--voltage-v", "12", "--conductor-temperature-c", "80"]);
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code); // no fuse between 12.5 A and 11.7 A
        foreach (var code in new[] { "TK401", "TK402", "TK403" }) Assert.Contains(code, run.Errors, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.SomethingUnmet, TenderFolder.Run(["wiring", "--area-mm2", "4", "--drop-limit", "3 %", .. Run8m]).Code);
        Assert.Equal(ExitCodes.Good, TenderFolder.Run(["wiring", "--area-mm2", "16", "--drop-limit", "3 %", .. Run8m]).Code);
    }

    [Theory]
    [InlineData("--area-mm2", "3")]
    [InlineData("--area-mm2", "0")]
    [InlineData("--area-mm2", "wide")]
    [InlineData("--current-a", "-1")]
    [InlineData("--length-m", "0")]
    [InlineData("--voltage-v", "0")]
    [InlineData("--laid", "hanging")]
    public void What_cannot_be_is_answered(string option, string value)
    {
        string[] all = ["--area-mm2", "4", .. Run8m];
        var i = Array.IndexOf(all, option);
        var run = TenderFolder.Run(["wiring", .. i < 0 ? all : [.. all[..i], .. all[(i + 2)..]], option, value]);
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(option, run.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("fault of the program", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_says_whose_resistance_it_is()
    {
        var run = TenderFolder.Run(["wiring", "--area-mm2", "4", .. Run8m]);
        Assert.Contains("one conductor, one way", run.Output, StringComparison.Ordinal);
        Assert.Contains("drop, V", run.Output, StringComparison.Ordinal);
    }

    private static JsonObject Json(string[] options)
    {
        var run = TenderFolder.Run(["wiring", .. options, "--format", "json"]);
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        return JsonNode.Parse(run.Output)!.AsObject();
    }

    private static double Value(JsonObject json, string key) => json[key]!.GetValue<double>();
}
