using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>Climate of a tender from end to end: as typed, as a file, as hours, as an estimate, behind hills.</summary>
public class ClimateTests
{
    private const string Typed = "5.32, 5.41, 5.52, 5.47, 5.21, 4.78, 4.95, 5.74, 6.46, 6.83, 6.35, 5.58";
    private const string Air = "mean_c: \"25 25 25 24 22 20 19 21 24 27 27 26\", max_c: \"29 29 30 29 28 26 25 27 31 33 33 31\", min_c: \"21 21 21 19 17 14 13 15 17 20 22 22\", record_low_c: 8, record_high_c: 40";

    [Theory]
    [InlineData("source: station 12, kind: measured record, years: 2001-2015", "measured record", 0.98)]
    [InlineData("source: grid cell 7, kind: satellite, years: 2001-2015", "satellite series", 0.95)]
    [InlineData("source: station 12", "means with source", 0.93)]
    [InlineData("kind: measured record", "no source", 0.88)]
    public void Typed_values_are_graded_and_the_grade_is_printed(string head, string grade, double factor)
    {
        using var folder = WithClimate($"monthly: {{ irradiation_kwh_per_m2_day: [{Typed}], {Air}, {head} }}");
        var climate = JsonNode.Parse(TenderFolder.Run("inspect", folder.Tender, "--format", "json").Output)!["sites"]![0]!["climate"]!;
        Assert.Equal((grade, factor), (climate["grade"]!.GetValue<string>(), climate["cautiousFactorFraction"]!.GetValue<double>()));
        Assert.Matches($@"S11\s+monthly\s+{grade}\s+{factor.ToString("0.00", CultureInfo.InvariantCulture)}", TenderFolder.Run("inspect", folder.Tender).Output);
    }

    [Theory]
    [InlineData("irradiation_kwh_per_m2_day: \"165 151 171 164 162 143 153 178 194 212 191 173\"", "TK309", "totals of a month where the mean of one day is meant")]
    [InlineData("irradiation_kwh_per_m2_day: \"19.2 19.5 19.9 19.7 18.8 17.2 17.8 20.7 23.3 24.6 22.9 20.1\"", "TK302", "look like MJ/m2 a day where kWh/m2 a day is meant. State the unit MJ/m2/day, or divide each value by 3.6")]
    [InlineData("irradiation_mj_per_m2_day: \"5.3 5.4 5.5 5.5 5.2 4.8 5 5.7 6.5 6.8 6.4 5.6\"", "TK302", "kWh/m2 a day where MJ/m2 a day is stated")]
    [InlineData("irradiation_kwh_per_m2_day: \"5.3 5.4 5.5 5.5 0.9 4.8 5 5.7 6.5 6.8 6.4 5.6\"", "TK301", "Irradiation of May is 0.90 kWh/m2 a day, clearness 0.11")]
    public void A_unit_slip_is_told_with_what_to_do(string irradiation, string code, string words)
    {
        using var folder = WithClimate($"monthly: {{ {irradiation}, {Air}, source: s }}");
        var run = TenderFolder.Run("inspect", folder.Tender);
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains($"error {code}: site S11: Irradiation of", run.Output, StringComparison.Ordinal);
        Assert.Contains(words, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TK303_the_wrong_hemisphere_is_told()
    {
        using var folder = WithClimate($"monthly: {{ irradiation_kwh_per_m2_day: \"2 3 4.2 5.3 6 6.5 6.4 5.6 4.5 3.2 2.2 1.8\", {Air}, source: s }}").Change("sites.csv", "-13.6522,34.5351", "-35,20");
        var run = TenderFolder.Run("inspect", folder.Tender);
        Assert.Contains("TK303", run.Output, StringComparison.Ordinal);
        Assert.Contains("The latitude looks as if it had the wrong sign", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TK133_eleven_months_are_refused_and_nothing_is_written()
    {
        using var folder = WithClimate("monthly: { irradiation_kwh_per_m2_day: [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5], source: s }");
        var run = folder.Bid();
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("there is none for December", run.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.Out));
    }

    [Fact]
    public void Sites_name_their_climates_and_an_unknown_one_is_told()
    {
        using var folder = new TenderFolder().WithSites("S01", "S09", "S11")
            .Change("tender.yaml", "climate: { default: climate.csv }", $"climate: {{ default: lake, named: {{ lake: {{ irradiation_kwh_per_m2_day: [{Typed}], {Air}, source: station 12 }}, hill: {{ file: climate.csv }} }} }}")
            .Change("sites.csv", "medium,,\n", "medium,Hill,\n").Change("sites.csv", "dense,estimate", "dense,lakk");
        var run = TenderFolder.Run("inspect", folder.Tender);
        Assert.Equal(ExitCodes.SomethingUnmet, run.Code);
        Assert.Contains("error TK101: lakk: ", run.Output, StringComparison.Ordinal);
        Assert.Contains("its climate 'lakk' could not be read, so the site is left out; the tender names hill, lake", run.Output, StringComparison.Ordinal);
        Assert.Contains("TK321", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"S01\s+hill\s+means with source", run.Output);
        Assert.Matches(@"S11\s+(hill|lake)\s+means with source", run.Output);
    }

    // ten made years: sunny, with ten dull days each June; the balance of the chosen design runs on them and they are judged
    [Fact]
    public void Ten_years_of_hours_are_run_as_they_were_and_judged()
    {
        using var folder = WithClimate("default: hours.csv");
        File.WriteAllText(folder.PathOf("hours.csv"), Hours(10));
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var site = Site(folder);
        var own = site["energy"]!["onOwnSeries"]!;
        Assert.Equal((10, true, "satellite years"), (own["years"]!.GetValue<int>(), own["judged"]!.GetValue<bool>(), own["kind"]!.GetValue<string>()));
        var check = site["checks"]!.AsArray().Single(c => c!["id"]!.GetValue<string>() == "energy.dark_nights_own_series")!;
        Assert.Equal(own["darkNightsPerYear"]!.GetValue<double>(), check["offered"]!.GetValue<double>(), 1e-4);
        Assert.True(check["complies"]!.GetValue<bool>());
        Assert.Equal("satellite series", site["climate"]!["grade"]!.GetValue<string>());
        Assert.InRange(site["climate"]!["yearSpreadFraction"]!.GetValue<double>(), 0.001, 0.2);
    }

    [Fact]
    public void A_single_year_of_hours_is_run_and_keeps_the_rule_for_the_spread()
    {
        using var folder = WithClimate("default: hours.csv");
        File.WriteAllText(folder.PathOf("hours.csv"), Hours(1));
        var (site, inputs) = Loaded(folder);
        var weather = ClimateStage.Run(site, ClimateStage.ClimateOf(site, inputs), inputs);
        Assert.Equal(1, weather.Own!.Weather.YearCount);
        Assert.Equal(ClimateGrade.MeansWithSource, weather.Climate.Monthly.Grade);
        Assert.Null(weather.Climate.Monthly.YearSpreadFraction);
        // the cautious factor of the grade lies on the hours too
        Assert.Equal(0.93 * inputs.Climates["hours.csv"].Series!.GlobalWhPerM2.Sum(), weather.Own.Weather.GlobalWhPerM2.Sum(), 1);
    }

    [Fact]
    public void A_horizon_costs_sun_and_the_azimuth_of_a_row_is_kept()
    {
        var open = PlaneOf("", "");
        var hidden = PlaneOf("0:25 90:25 180:25 270:25", "");
        var turned = PlaneOf("", "90");
        Assert.InRange(hidden.WorstKWh / open.WorstKWh, 0.6, 0.95);
        Assert.Equal((0.0, 90.0), (open.Azimuth, turned.Azimuth));
        Assert.True(turned.WorstKWh < open.WorstKWh);
        Assert.InRange(hidden.HourlyKWh / open.HourlyKWh, 0.6, 0.95);
        Assert.Equal("0:25 90:25 180:25 270:25", hidden.Horizon);
    }

    // work shared between sites of one place must not be shared across a hill
    [Fact]
    public void Sites_of_one_place_keep_their_own_horizon_and_azimuth()
    {
        using var folder = new TenderFolder().WithSites("S11");
        var lines = File.ReadAllLines(folder.PathOf("sites.csv"));
        string Row(string id, string horizon, string azimuth) => lines[1].Replace("S11", id, StringComparison.Ordinal) + $",{horizon},{azimuth}";
        File.WriteAllLines(folder.PathOf("sites.csv"), [lines[0] + ",Horizon,Azimuth deg", Row("A1", "", ""), Row("A2", "0:25 180:25", ""), Row("A3", "0:5 180:5", ""), Row("A4", "", "90")]);
        var design = TenderDesigner.Run(TenderLoader.Load(folder.Tender).Inputs!, []);
        Assert.Equal(4, design.Sites.Length);
        Assert.Equal(4, design.Sites.Select(s => s.Climate.PlaneKWhPerM2.Sum()).Distinct().Count());
        Assert.Equal(4, design.Sites.Select(s => s.Energy.Simulated.MonthlySupplyWhPerDay.Sum() / s.Parts.ArrayWp).Distinct().Count());
    }

    [Fact]
    public void Horizons_may_stand_in_a_file()
    {
        using var folder = new TenderFolder().WithSites("S11").Change("tender.yaml", "\nlots:", "\nhorizons: hills.csv\nlots:");
        File.WriteAllText(folder.PathOf("hills.csv"), "site,azimuth,elevation\nS11,0,10\nS11,180,20\n");
        Assert.Equal("0:10 180:20", HorizonText.Of(Loaded(folder).Site.Horizon!));
    }

    private static (double WorstKWh, double HourlyKWh, double Azimuth, string? Horizon) PlaneOf(string horizon, string azimuth)
    {
        using var folder = new TenderFolder().WithSites("S11");
        var lines = File.ReadAllLines(folder.PathOf("sites.csv"));
        File.WriteAllLines(folder.PathOf("sites.csv"), [lines[0] + ",Horizon,Azimuth deg", lines[1] + $",{horizon},{azimuth}"]);
        var (site, inputs) = Loaded(folder);
        var weather = ClimateStage.Run(site, ClimateStage.ClimateOf(site, inputs), inputs);
        return (weather.Climate.PlaneKWhPerM2.Min(), weather.Plane.PlaneWhPerM2.Sum(), weather.Climate.Plane.AzimuthDegrees, site.Horizon is { } line ? HorizonText.Of(line) : null);
    }

    private static (Site Site, DesignInputs Inputs) Loaded(TenderFolder folder) => TenderLoader.Load(folder.Tender).Inputs is { } inputs ? (inputs.Sites[0], inputs) : throw new InvalidOperationException("the tender cannot run");

    private static TenderFolder WithClimate(string climate) =>
        new TenderFolder().WithSites("S11").Change("tender.yaml", "climate: { default: climate.csv }", $"climate:\n  {climate}");

    private static JsonNode Site(TenderFolder folder) => TenderFolder.BidJson(folder.Out)["sites"]![0]!;

    /// <summary>Hours in the layout of the NASA POWER service at 13.65 S 34.53 E, local time: half sines with a seeded change from day to day.</summary>
    private static string Hours(int years)
    {
        var random = new Random(3);
        var text = new StringBuilder("""
            -BEGIN HEADER-
            NASA/POWER Source Native Resolution Hourly Data
            Dates (month/day/year): 01/01/2001 through 12/31/2010 in LST
            Location: latitude  -13.65   longitude 34.53
            ALLSKY_SFC_SW_DWN     CERES SYN1deg All Sky Surface Shortwave Downward Irradiance (Wh/m^2)
            T2M         MERRA-2 Temperature at 2 Meters (C)
            -END HEADER-
            YEAR,MO,DY,HR,ALLSKY_SFC_SW_DWN,T2M

            """);
        for (var day = new DateTime(2001, 1, 1); day.Year <= 2000 + years; day = day.AddDays(1))
        {
            var peak = day is { Month: 6, Day: <= 10 } ? 250 : 650 + 250 * random.NextDouble();
            for (var h = 0; h < 24; h++)
                text.Append(CultureInfo.InvariantCulture, $"{day.Year},{day.Month},{day.Day},{h},{(h is < 6 or >= 18 ? 0 : peak * Math.Sin(Math.PI * (h - 5.5) / 12)):0.#},{20 + (h is > 9 and < 17 ? 6 : 0)}\n");
        }

        return text.ToString();
    }
}
