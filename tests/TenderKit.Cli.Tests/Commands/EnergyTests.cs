using System.Text.Json.Nodes;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Command <c>energy</c>.</summary>
public class EnergyTests
{
    private const string Sun = "5.9 6.2 6.3 6.0 5.8 5.2 4.6 4.8 5.4 6.1 6.2 5.9";
    private const string Air = "16 17 18 18 18 17 16 16 16 16 15 15";

    private static readonly string[] Pole = ["--longitude", "38.8", "--ghi-kwh-per-m2-day", Sun, "--temperature-c", Air, "--lamp-w", "30"];
    private static readonly string[] Sizes = ["--array-wp", "160", "--tilt-deg", "15", "--battery-ah", "60", "--battery-v", "12.8", "--battery-type", "lifepo4", "--control", "mppt"];

    [Fact]
    public void The_agreed_keys_are_there()
    {
        var json = Json(["--latitude", "9", .. Sizes, "--schedule", "dusk-to-dawn", "--years", "20", "--seed", "1"]);
        foreach (var key in new[] { "extraterrestrialWhPerM2Day", "horizontalWhPerM2Day", "planeWhPerM2Day", "nightH", "loadWh", "lowestStateOfChargeFraction" })
            Assert.Equal(12, json[key]!.AsArray().Count);
        foreach (var key in new[]
        {
            "lossOfLoadFraction", "darkNightsPerYear", "darkNightsPerYearLow", "darkNightsPerYearHigh", "longestDarkRunNights", "autonomyNights", "equivalentFullCyclesPerYear",
            "energyBalanceErrorFraction", "arrayWp", "batteryAh",
        })
        {
            Assert.True(Value(json, key) >= 0, key);
        }

        Assert.InRange(Value(json, "energyBalanceErrorFraction"), 0, 1e-9);
        Assert.InRange(Value(json, "darkNightsPerYear"), Value(json, "darkNightsPerYearLow"), Value(json, "darkNightsPerYearHigh"));
        Assert.Equal(160, Value(json, "arrayWp"));
        Assert.Equal(60, Value(json, "batteryAh"));
        Assert.Equal(20, Value(json, "years"));
    }

    [Fact]
    public void The_horizontal_is_printed_as_given_and_the_load_by_hand()
    {
        var json = Json(["--latitude", "9", .. Sizes, "--years", "2"]);
        Assert.Equal(5900, json["horizontalWhPerM2Day"]![0]!.GetValue<double>(), 1e-9);
        Assert.Equal(0.88, Value(json, "cautiousFactorFraction"));
        for (var m = 0; m < 12; m++) // lamp power x hours of the night
            Assert.Equal(30 * json["nightH"]![m]!.GetValue<double>(), json["loadWh"]![m]!.GetValue<double>(), 0.01);
    }

    // Duffie and Beckman, example 1.10.1: 43 degrees north, 15 April, which is the mean day of April: 33.8 MJ/m2 (read)
    [Fact]
    public void The_sun_outside_the_air()
    {
        var run = TenderFolder.Run("energy", "--latitude", "43", "--longitude", "-89.4", "--lamp-w", "30", "--array-wp", "200", "--battery-ah", "100", "--years", "1", "--format", "json");
        Assert.Equal(33.8, JsonNode.Parse(run.Output)!["extraterrestrialWhPerM2Day"]![3]!.GetValue<double>() * 3.6e-3, 0.05);
    }

    // Longest nights, Florida 13.25 h, New York 14.5 h: quoted in a lighting guide (read, coarse, within 0.5 h)
    [Theory]
    [InlineData("28", 13.25)]
    [InlineData("40.7", 14.5)]
    public void Longest_nights(string latitude, double hours)
    {
        var json = JsonNode.Parse(TenderFolder.Run("energy", "--latitude", latitude, "--longitude", "-78", "--lamp-w", "30", "--array-wp", "200", "--battery-ah", "100", "--years", "1", "--format", "json").Output)!;
        Assert.Equal(hours, json["nightH"]!.AsArray().Max(h => h!.GetValue<double>()), 0.5);
    }

    // Array above the load and a battery of many nights: no dark night (constant weather gives loss of load 0, derived); here weather varies, array and battery are ample
    [Fact]
    public void Enough_sun_and_battery_leave_no_night_dark()
    {
        var json = Json(["--latitude", "9", "--array-wp", "600", "--battery-ah", "400", "--years", "5", "--rule", "climate.year_spread=0"]);
        Assert.Equal(0, Value(json, "darkNightsPerYear"));
        Assert.Equal(0, Value(json, "lossOfLoadFraction"));
        Assert.Equal(0, Value(json, "darkNightsPerYearLow"));
        Assert.True(Value(json, "darkNightsPerYearHigh") > 0); // five years prove no certainty
    }

    [Theory]
    [InlineData("--latitude", "-13.5")]
    [InlineData("--latitude=-13.5")]
    [InlineData("--latitude:-13.5")]
    public void Southern_latitudes_are_read_in_every_spelling(params string[] latitude)
    {
        var json = Json([.. latitude, .. Sizes, "--years", "1"]);
        Assert.Equal(-13.5, Value(json, "latitudeDegrees"));
        Assert.Equal(0, Value(json, "azimuthDegrees"));
        Assert.True(json["nightH"]![5]!.GetValue<double>() > 12.4);
    }

    [Fact]
    public void Frost_may_begin_the_list_of_temperatures()
    {
        var run = TenderFolder.Run(
            "energy", "--latitude", "45", "--longitude", "-93.2", "--lamp-w", "20", "--array-wp", "300", "--battery-ah", "200", "--years", "2", "--format", "json",
            "--ghi-kwh-per-m2-day", "1,9;2,8;3,9;4,8;5,7;6,2;6,2;5,3;4,1;2,7;1,8;1,5", "--temperature-c", "-9.5, -7, 0, 8, 15, 20, 23, 22, 17, 9, 1, -7");
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        Assert.Equal(-9.5, JsonNode.Parse(run.Output)!["meanC"]![0]!.GetValue<double>());
        Assert.Equal(1900, JsonNode.Parse(run.Output)!["horizontalWhPerM2Day"]![0]!.GetValue<double>(), 1e-9);
        Assert.Contains("TK323", run.Errors, StringComparison.Ordinal); // lithium iron phosphate is not charged in frost
    }

    [Fact]
    public void The_battery_found_keeps_the_target_and_15_percent_less_does_not()
    {
        string[] pole = ["--latitude", "9", "--array-wp", "180", "--years", "20", "--seed", "1"];
        var found = Json([.. pole, "--dark-nights-per-year", "2"]);
        Assert.True(found["batteryFound"]!.GetValue<bool>());
        Assert.False(found["arrayFound"]!.GetValue<bool>());
        Assert.True(Value(found, "darkNightsPerYear") <= 2);
        var ah = Value(found, "batteryAh");
        Assert.True(Value(Json([.. pole, "--battery-ah", Text(ah)]), "darkNightsPerYear") <= 2);
        Assert.True(Value(Json([.. pole, "--battery-ah", Text(ah * 0.85)]), "darkNightsPerYear") > 2);
    }

    [Fact]
    public void The_array_found_keeps_the_target()
    {
        var found = Json(["--latitude", "9", "--battery-ah", "110", "--battery-type", "gel", "--control", "pwm", "--years", "10"]);
        Assert.True(found["arrayFound"]!.GetValue<bool>());
        Assert.True(Value(found, "darkNightsPerYear") <= 1);
        var less = Json(["--latitude", "9", "--array-wp", Text(Value(found, "arrayWp") * 0.85), "--battery-ah", "110", "--battery-type", "gel", "--control", "pwm", "--years", "10"]);
        Assert.True(Value(less, "darkNightsPerYear") > 1);
    }

    [Fact]
    public void Array_and_battery_are_found_at_the_least_price_on_the_curve()
    {
        var json = Json(["--latitude", "9", "--years", "10", "--price-per-wp", "0.5", "--price-per-wh", "0.25"]);
        var curve = json["equalReliability"]!.AsArray();
        Assert.True(curve.Count >= 8);
        double Price(JsonNode p) => p["arrayWp"]!.GetValue<double>() * 0.5 + p["batteryAh"]!.GetValue<double>() * 12.8 * 0.25;
        var least = curve.MinBy(p => Price(p!))!;
        Assert.Equal(least["arrayWp"]!.GetValue<double>(), Value(json, "arrayWp"));
        Assert.Equal(least["batteryAh"]!.GetValue<double>(), Value(json, "batteryAh"));
        Assert.Equal(0.5, Value(json, "pricePerWp"));
        Assert.All(curve, p => Assert.True(p!["darkNightsPerYear"]!.GetValue<double>() <= 1));
    }

    [Fact]
    public void TK340_an_array_short_of_the_load_is_unmet()
    {
        var run = Energy(["--latitude", "9", "--array-wp", "50", "--years", "5", "--format", "json"]);
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("TK340", run.Errors, StringComparison.Ordinal);
        Assert.Equal("TK340", JsonNode.Parse(run.Output)!["diagnostics"]![0]!["code"]!.GetValue<string>());
    }

    [Fact]
    public void A_target_missed_by_the_sizes_given_is_unmet() =>
        Assert.Equal(ExitCodes.SomethingUnmet, Energy(["--latitude", "9", .. Sizes, "--dark-nights-per-year", "1", "--years", "5"]).Code);

    [Fact]
    public void The_same_seed_gives_the_same_bytes_and_another_seed_others()
    {
        string Out(string seed) => Energy(["--latitude", "9", .. Sizes, "--years", "3", "--seed", seed, "--format", "json"]).Output;
        Assert.Equal(Out("1"), Out("1"));
        Assert.NotEqual(Out("1"), Out("2"));
    }

    [Fact]
    public void Without_a_climate_the_estimate_is_labelled()
    {
        var run = TenderFolder.Run("energy", "--latitude", "9", "--longitude", "38.8", "--lamp-w", "30", "--array-wp", "200", "--battery-ah", "100", "--years", "1", "--format", "json");
        var json = JsonNode.Parse(run.Output)!;
        Assert.StartsWith("estimate", json["climateGrade"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains("TK320", run.Errors, StringComparison.Ordinal);
        Assert.True(json["cautiousFactorFraction"]!.GetValue<double>() < 0.95);
    }

    [Fact]
    public void A_climate_file_of_the_starter_is_read()
    {
        var file = Path.Combine(Repository.Root, "templates", "starter", "climate.csv");
        var run = TenderFolder.Run("energy", "--latitude", "-13.9", "--longitude", "33.8", "--climate", file, "--lamp-w", "30", "--array-wp", "200", "--battery-ah", "100", "--years", "1", "--format", "json");
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        Assert.Equal(5320, JsonNode.Parse(run.Output)!["horizontalWhPerM2Day"]![0]!.GetValue<double>(), 1e-9);
    }

    // by hand: four hours and two hours at 30 W, the rest of the night at 12 W
    [Fact]
    public void A_schedule_in_one_line()
    {
        var json = Json(["--latitude", "9", .. Sizes, "--years", "1", "--schedule", "dusk+4h:100%,dawn-2h:100%,rest:40%"]);
        for (var m = 0; m < 12; m++) Assert.Equal(6 * 30 + (json["nightH"]![m]!.GetValue<double>() - 6) * 12, json["loadWh"]![m]!.GetValue<double>(), 0.01);
        var evening = Json(["--latitude", "9", .. Sizes, "--years", "1", "--schedule", "dusk+5h"]);
        Assert.All(evening["loadWh"]!.AsArray(), wh => Assert.Equal(150, wh!.GetValue<double>(), 1e-6));
        var middle = Json(["--latitude", "9", .. Sizes, "--years", "1", "--schedule", "midnight-1h:50%; midnight+1h:0.5; dusk..dusk+1,5h"]);
        Assert.All(middle["loadWh"]!.AsArray(), wh => Assert.Equal(75, wh!.GetValue<double>(), 1e-6));
    }

    // by hand: six hours at 30 W called for a quarter of the time over a rest of 12 W
    [Fact]
    public void Presence_detection_in_one_line()
    {
        var json = Json(["--latitude", "9", .. Sizes, "--years", "1", "--schedule", "midnight-3h..midnight+3h:100% presence 25%, rest:40%"]);
        for (var m = 0; m < 12; m++)
            Assert.Equal(6 * (0.25 * 30 + 0.75 * 12) + (json["nightH"]![m]!.GetValue<double>() - 6) * 12, json["loadWh"]![m]!.GetValue<double>(), 0.01);
        Assert.Contains("called for 25 % of the time", json["scheduleInWords"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_schedule_with_seasons_comes_from_a_file()
    {
        using var folder = new TenderFolder();
        var file = Path.Combine(Path.GetDirectoryName(folder.Tender)!, "night.yaml");
        File.WriteAllText(file, "parts: [ { from: dusk, for: 5 h } ]\nseasons: [ { from: 1 Nov, to: 31 Mar, parts: [ { from: dusk, for: 2 h } ] } ]\n");
        var json = Json(["--latitude", "9", .. Sizes, "--years", "1", "--schedule", file]);
        Assert.Equal([60.0, 150.0, 60.0], new[] { 0, 6, 11 }.Select(m => Math.Round(json["loadWh"]![m]!.GetValue<double>(), 6)));
        Assert.Contains("TK316", json["diagnostics"]!.ToJsonString(), StringComparison.Ordinal);
        var evening = Json(["--latitude", "9", .. Sizes, "--years", "1", "--schedule", folder.Tender + "#evening"]);
        Assert.Equal("evening", evening["schedule"]!.GetValue<string>());
        Assert.All(evening["loadWh"]!.AsArray(), wh => Assert.Equal(150, wh!.GetValue<double>(), 1e-6));
        var run = Energy(["--latitude", "9", .. Sizes, "--schedule", folder.Tender]);
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("several schedules", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Recovery_the_worst_days_and_the_months_of_missed_light()
    {
        var json = Json(["--latitude", "9", .. Sizes, "--years", "5"]);
        Assert.Equal(5, json["darkNightsByYear"]!.AsArray().Count);
        Assert.Equal(Value(json, "darkNightsPerYear") * 5, json["darkNightsByYear"]!.AsArray().Sum(n => n!.GetValue<int>()), 1e-9);
        Assert.Equal(12, json["lossOfLoadByMonthFraction"]!.AsArray().Count);
        Assert.True(Value(json, "recoveries") > 0 && Value(json, "longestRecoveryDays") >= Value(json, "meanRecoveryDays"));
        Assert.Equal(720, json["worstSpell"]!["stateOfChargeFraction"]!.AsArray().Count);
        Assert.Equal(30, json["worstSpell"]!["disconnectFraction"]!.AsArray().Count);
    }

    [Fact]
    public void The_hours_of_a_file_are_run_beside_the_synthetic_years()
    {
        using var folder = new TenderFolder();
        var file = HourlyFile(folder.PathOf("hours.epw"));
        var run = TenderFolder.Run("energy", "--latitude", "-13.9", "--longitude", "33.8", "--climate", file, "--lamp-w", "20", "--array-wp", "100", "--battery-ah", "60", "--years", "2", "--format", "json");
        var own = JsonNode.Parse(run.Output)!["onOwnSeries"]!.AsObject();
        Assert.Equal(12, own["lowestStateOfChargeFraction"]!.AsArray().Count);
        Assert.InRange(Value(own, "darkNightsPerYear"), Value(own, "darkNightsPerYearLow"), Value(own, "darkNightsPerYearHigh"));
        Assert.Equal(1, Value(own, "years"));
        Assert.Equal("TypicalYear", own["kind"]!.GetValue<string>());
        foreach (var key in new[] { "kind", "source", "caution", "lossOfLoadFraction", "longestDarkRunNights" }) Assert.True(own.ContainsKey(key), key);
        var people = TenderFolder.Run("energy", "--latitude", "-13.9", "--longitude", "33.8", "--climate", file, "--lamp-w", "20", "--array-wp", "100", "--battery-ah", "60", "--years", "2");
        Assert.Contains("The file's own", people.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Twelve_months_have_no_series_of_their_own() => Assert.False(Json(["--latitude", "9", .. Sizes, "--years", "1"]).ContainsKey("onOwnSeries"));

    // outside the tropics the heading away from the equator is the worst and governs
    [Fact]
    public void Any_heading_shows_the_worst()
    {
        string[] pole = ["--latitude", "40", "--longitude", "-3", "--ghi-kwh-per-m2-day", "2 3 4.5 5.5 6.5 7.3 7.4 6.5 5 3.3 2.2 1.7", "--temperature-c", "6 7 10 12 16 22 25 25 21 15 10 7", "--lamp-w", "15", "--battery-ah", "60", "--years", "3", "--tilt-deg", "20", "--format", "json"];
        var run = TenderFolder.Run(["energy", .. pole, "--array-wp", "200", "--heading", "any"]);
        var json = JsonNode.Parse(run.Output)!.AsObject();
        Assert.Equal(8, json["headings"]!.AsArray().Count);
        Assert.Equal(0, Value(json, "azimuthDegrees"));
        var worst = Assert.Single(json["headings"]!.AsArray(), h => h!["governs"]!.GetValue<bool>())!.AsObject();
        Assert.Equal(Value(json, "darkNightsPerYear"), Value(worst, "darkNightsPerYear"));
        var north = JsonNode.Parse(TenderFolder.Run(["energy", .. pole, "--array-wp", "200", "--heading-deg", "0"]).Output)!.AsObject();
        Assert.Equal(Value(json, "lossOfLoadFraction"), Value(north, "lossOfLoadFraction"));

        var found = JsonNode.Parse(TenderFolder.Run(["energy", .. pole, "--heading", "any"]).Output)!.AsObject();
        Assert.All(found["headings"]!.AsArray(), h => Assert.True(h!["darkNightsPerYear"]!.GetValue<double>() <= 1));
    }

    [Theory]
    [InlineData("a module fixed to the lamp head needs its --tilt-deg", "--heading", "any")]
    [InlineData("not both", "--heading", "any", "--heading-deg", "40", "--tilt-deg", "10")]
    [InlineData("--azimuth-deg is the direction", "--heading-deg", "40", "--tilt-deg", "10", "--azimuth-deg", "0")]
    [InlineData("must lie between", "--heading-deg", "400", "--tilt-deg", "10")]
    public void Contradictions_about_the_heading_are_named(string why, params string[] options)
    {
        var run = Energy(["--latitude", "9", "--array-wp", "160", "--battery-ah", "60", .. options]);
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(why, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_may_be_changed()
    {
        var json = Json(["--latitude", "9", .. Sizes, "--years", "1", "--rule", "climate.factor.unsourced=1", "--rule", "battery.end_of_life=1"]);
        Assert.Equal(1, Value(json, "cautiousFactorFraction"));
        Assert.Contains(json["rules"]!.AsArray(), r => r!["id"]!.GetValue<string>() == "battery.end_of_life" && r["source"]!.GetValue<string>() == "changed by the user");
    }

    [Fact]
    public void People_read_months_and_words()
    {
        var run = Energy(["--latitude", "9", .. Sizes, "--years", "2"]);
        foreach (var word in new[] { "Jan", "Dec", "Night h", "dark nights", "90 % range", "autonomy", "nights" }) Assert.Contains(word, run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--latitude", "95")]
    [InlineData("--latitude", "north")]
    [InlineData("--ghi-kwh-per-m2-day", "5 5 5")]
    [InlineData("--ghi-kwh-per-m2-day", "5 5 5 5 5 5 5 5 5 5 5 five")]
    [InlineData("--temperature-c", "20 20")]
    [InlineData("--temperature-c", "20 20 20 20 20 20 20 20 20 20 20 NaN")]
    [InlineData("--schedule", "evening")]
    [InlineData("--schedule", "dusk+4h:140%")]
    [InlineData("--schedule", "dusk+4h,rest:10%,rest:20%")]
    [InlineData("--schedule", "dusk+30h")]
    [InlineData("--schedule", "dusk+3h presence 130%")]
    [InlineData("--schedule", "dusk+3h,rest:20% presence 30%")]
    [InlineData("--schedule", "dusk+3h:100% presence 0%")]
    [InlineData("--schedule", "nowhere.yaml")]
    [InlineData("--schedule", "dusk")]
    [InlineData("--schedule", "dusk+2h:0%")]
    [InlineData("--battery-type", "lipo")]
    [InlineData("--control", "hybrid")]
    [InlineData("--judged-by", "feeling")]
    [InlineData("--years", "0")]
    [InlineData("--seed", "-1")]
    [InlineData("--tilt-deg", "120")]
    [InlineData("--array-wp", "0")]
    [InlineData("--battery-v", "600")]
    [InlineData("--dark-nights-per-year", "400")]
    [InlineData("--price-per-wh", "0")]
    [InlineData("--rules", "nothing.yaml")]
    [InlineData("--rule", "energy.soiling")]
    [InlineData("--rule", "energy.soilin=0.9")]
    public void What_cannot_be_read_is_named(string option, string value)
    {
        var others = new List<string>(["--latitude", "9", .. Pole, .. Sizes]);
        var at = others.IndexOf(option);
        if (at >= 0) others.RemoveRange(at, 2);
        var run = TenderFolder.Run(["energy", .. others, option, value]);
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains(option, run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Megajoules_are_refused()
    {
        var run = TenderFolder.Run("energy", "--latitude", "9", "--longitude", "38", "--lamp-w", "30", "--ghi-kwh-per-m2-day", "21 22 22 21 20 18 16 17 19 21 22 21");
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("TK302", run.Errors, StringComparison.Ordinal);
        Assert.Contains("--ghi-kwh-per-m2-day", run.Errors, StringComparison.Ordinal);
    }

    /// <summary>A typical year of 14 degrees south as an EnergyPlus weather file: half sines of sun from 6 to 18 h, dull every seventh day.</summary>
    private static string HourlyFile(string path)
    {
        var lines = Enumerable.Range(0, 365 * 24).Select(i =>
        {
            var (day, hour) = (i / 24, i % 24);
            var date = new DateTime(2001, 1, 1).AddDays(day);
            var wh = Math.Max(0, Math.Sin(Math.PI * (hour + 0.5 - 6) / 12)) * (day % 7 == 0 ? 200 : 750);
            return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{1990 + date.Month},{date.Month},{date.Day},{hour + 1},0,x,{15 + 8 * Math.Sin(Math.PI * (hour - 8) / 12):0.0},10,50,90000,0,0,300,{wh:0},0,0");
        });
        File.WriteAllLines(path, ["LOCATION,Somewhere,-,-,invented,0,-13.9,33.8,2.25,1000", .. lines]);
        return path;
    }

    private static (int Code, string Output, string Errors) Energy(string[] options) => TenderFolder.Run(["energy", .. Pole, .. options]);

    private static JsonObject Json(string[] options)
    {
        var run = Energy([.. options, "--format", "json"]);
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        return JsonNode.Parse(run.Output)!.AsObject();
    }

    private static double Value(JsonObject json, string key) => json[key]!.GetValue<double>();

    private static string Text(double value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
