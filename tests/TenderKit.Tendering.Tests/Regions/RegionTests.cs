using System.Collections.Immutable;
using TenderKit.Intake.Climate;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Regions;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Tests.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Regions;

public sealed class RegionTests
{
    private static readonly SiteDefaults Defaults = new(
        LightClasses.Find("P5"), StarterTender.Inputs.Sites[0].Schedule.Name,
        ImmutableSortedDictionary<string, Sizing.Energy.LightingSchedule>.Empty.Add(StarterTender.Inputs.Sites[0].Schedule.Name, StarterTender.Inputs.Sites[0].Schedule),
        [5], 4, Arrangement.SingleSided, 0, 24, Sizing.Structure.Terrain.II, Sizing.Structure.SoilClasses.Medium, true, ImmutableSortedDictionary<string, string>.Empty);

    private static readonly RegionAsk Ask = new("Two ends", SiteKind.Road, 40, null, null, [new("South", new GeoPoint(-13.7, 34.5), null), new("North", new GeoPoint(31, 31.2), null)], null);

    [Fact]
    public void The_duller_place_governs_and_the_kit_serves_both()
    {
        var design = RegionDesigner.Run(Inputs(Ask), []);
        var region = design.Region!;
        Assert.Equal("North", region.Governing.Name); // winter nights of 14 h under 3 kWh/m2 a day against 13 h under 4.9
        Assert.Empty(region.Unserved);
        var site = Assert.Single(design.Sites);
        Assert.Equal((40, 40), (site.Poles, design.PoleCount));
        Assert.Equal(40 * site.Light.SpacingM, site.Site.LengthM, 1e-6);
        Assert.Contains("North", site.Site.Name, StringComparison.Ordinal);
        Assert.All(region.Places, p => Assert.True(p.DarkNightsPerYear <= design.Tender.Reliability.DarkNightsPerYear && p.AutonomyNights >= design.Tender.Reliability.AutonomyNights));
        Assert.All(region.Places, p => Assert.True(p.OwnCost <= p.CommonCost)); // the cheapest for a place alone is never dearer than the common kit
        Assert.Contains(region.Governs, g => g is { Item: "Array", Places: ["North"] });
        Assert.Contains(region.Governs, g => g.Property.StartsWith("maintained average", StringComparison.Ordinal) && g.Places.IsEmpty);
        Assert.Equal(["TK350", "TK351"], design.Diagnostics.Select(d => d.Code).Where(c => c.StartsWith("TK35", StringComparison.Ordinal)).Order());
    }

    [Fact]
    public void A_place_the_kit_does_not_serve_is_named()
    {
        var beyond = Ask with { Places = [Ask.Places[0], new("Far north", new GeoPoint(69.6, 19), null)] }; // two months without sun
        var design = RegionDesigner.Run(Inputs(beyond), []);
        Assert.Contains(design.Diagnostics, d => d is { Code: "TK352", Severity: Severity.Error } && d.Message.Contains("Far north", StringComparison.Ordinal));
        Assert.Equal("Far north", Assert.Single(design.Region!.Unserved));
    }

    [Fact]
    public void A_box_is_sampled_at_its_corners_and_in_steps()
    {
        var box = Ask with { Places = [], Box = new RegionBox(0, 2, 30, 31, 112) };
        var sites = RegionSites.Of(box, Defaults, []);
        // two degrees of 111.2 km in two steps, one degree in one
        Assert.Equal(6, sites.Length);
        Assert.Equal([(0.0, 30.0), (0, 31), (1, 30), (1, 31), (2, 30), (2, 31)], sites.Select(s => (s.LatitudeDegrees, s.LongitudeDegrees)));
        Assert.All(sites, s => Assert.Equal("estimate", s.ClimateFile));
        Assert.True(RegionSites.Of(box, Defaults, ReferenceStations.Load()).Length >= sites.Length);
    }

    [Fact]
    public void Poles_with_a_spacing_are_a_length()
    {
        var site = RegionSites.Of(Ask with { SpacingM = 25 }, Defaults, [])[0];
        Assert.Equal((1000.0, (int?)40), (site.LengthM, site.FixedPoles));
        Assert.Equal(500, RegionSites.Of(Ask with { SpacingM = 25 }, Defaults with { Arrangement = Arrangement.Opposite }, [])[0].LengthM);
    }

    [Theory]
    [InlineData("region: { name: N, poles: 5, places: [ { name: A, latitude: 1, longitude: 2 } ] }", null)]
    [InlineData("region: { name: N, length_m: 5 km, kind: path, box: { latitude: -2 to 3, longitude: 30 to 34, step_km: 50 } }", null)]
    [InlineData("region: { name: N, places: [ { name: A, latitude: 1, longitude: 2 } ] }", "no quantity")]
    [InlineData("region: { name: N, poles: 5 }", "names no place")]
    [InlineData("region: { name: N, poles: 5, length_m: 100, places: [ { name: A, latitude: 1, longitude: 2 } ] }", "keep one of them")]
    [InlineData("region: { name: N, poles: 5, box: { latitude: 3, longitude: 30 to 34 } }", "write two numbers")]
    [InlineData("region: { name: N, poles: 5, plases: [] }", "did you mean 'places'?")]
    [InlineData("region: { name: N, poles: 5, places: [ { name: A, latitude: 100, longitude: 2 } ] }", "outside -90 to 90")]
    [InlineData("region: { name: N, poles: 5, kind: yard, places: [ { name: A, latitude: 1, longitude: 2 } ] }", "write road or path")]
    [InlineData("sites: a.csv\nregion: { name: N, poles: 5, places: [ { name: A, latitude: 1, longitude: 2 } ] }", "side by side")]
    [InlineData("region: { name: N, poles: 5, places: [ { name: A, latitude: 1, longitude: 2 } ] }\nparts_stated: [ { text: 75 Wp } ]", "does not state")]
    public void The_sections_say_what_is_wrong(string section, string? words)
    {
        var text = string.Join('\n', File.ReadAllLines(Path.Combine(StarterTender.Inputs.Tender.Folder, "tender.yaml")).Where(l => !l.StartsWith("sites:", StringComparison.Ordinal))) + "\n" + section + "\n";
        var problems = new List<Diagnostic>();
        var content = TenderFile.Read(text, "tender.yaml", "", problems);
        if (words is null) Assert.Empty(problems);
        else Assert.Contains(problems, p => p.Message.Contains(words, StringComparison.Ordinal));
        Assert.NotNull(content!.Tender.Region);
    }

    private static DesignInputs Inputs(RegionAsk ask)
    {
        var start = StarterTender.Inputs;
        return start with
        {
            Rules = new RuleSet([.. start.Rules.Rules.Select(r => r.Id == "climate.years" ? r with { Value = 2 } : r)]),
            Sites = RegionSites.Of(ask, Defaults, start.Stations),
            Catalog = start.Catalog with { Luminaires = [.. start.Catalog.Luminaires.OrderBy(l => l.InputPowerW).Skip(4).Take(2)], IntegratedUnits = [] },
            Tender = start.Tender with { Region = ask, Reliability = new ReliabilityTarget(20, 2) },
            Shared = new SharedWork(),
        };
    }
}
