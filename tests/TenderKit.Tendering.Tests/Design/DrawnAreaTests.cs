using System.Text;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Positions;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>Yards drawn on a map, designed on their own outline.</summary>
public sealed class DrawnAreaTests
{
    /// <summary>An L of 60 x 20 and 25 x 30 m, 1950 m2, at 0.35 north; 111319.5 and 110574.3 m a degree there (derived from WGS84).</summary>
    private static readonly string Corner = Ring((0, 0), (60, 0), (60, 20), (25, 20), (25, 50), (0, 50), (0, 0));

    private static readonly DesignInputs Inputs = StarterTender.Inputs with
    {
        Rules = new RuleSet([.. StarterTender.Inputs.Rules.Rules.Select(r => r.Id == "climate.years" ? r with { Value = 2 } : r)]),
        Catalog = StarterTender.Inputs.Catalog with
        {
            Luminaires = [.. StarterTender.Inputs.Catalog.Luminaires.Where(l => l.FluxLm > 2500).Take(1)],
            IntegratedUnits = [],
            Poles = [.. StarterTender.Inputs.Catalog.Poles.Where(p => p.HeightM == 6)],
        },
        Tender = StarterTender.Inputs.Tender with { Reliability = new ReliabilityTarget(20, 2) },
        Shared = new SharedWork(),
    };

    [Fact]
    public void A_concave_yard_gets_its_poles_on_its_own_edge_and_meets_its_class()
    {
        var site = Drawn($"[{Corner}]").Sites[0];
        Assert.Equal(1950, site.Geometry!.Lit!.Area.AreaM2, 1);
        var design = TenderDesigner.Run(Inputs with { Sites = [site] }, []);
        Assert.Empty(design.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Message));
        var lit = Assert.Single(design.Sites);
        Assert.Equal(lit.Poles, lit.Light.Area!.Luminaires.Length);
        Assert.True(lit.Light.Result.AverageLx >= site.Target.AverageLx && lit.Light.Result.MinimumLx >= site.Target.MinimumLx);
        Assert.All(lit.Light.Result.Points, p => Assert.True(lit.Light.Area.Area.Contains(p.XM, p.YM)));

        var poles = PolePlacing.Of(design);
        Assert.Equal(lit.Poles, poles.Poles.Length);
        var reachM = lit.Light.Area.ReachM;
        foreach (var (pole, lamp) in poles.Poles.Zip(lit.Light.Area.Luminaires))
        {
            // the lamp hangs the arm's reach ahead of the pole, in the direction the schedule says
            var ahead = site.Geometry.Lit.Frame.ToPlan(Geodesic.Along(pole.Position.Point, pole.Position.FacingDegrees, reachM));
            Assert.Equal(lamp.XM, ahead.XM, 0.02);
            Assert.Equal(lamp.YM, ahead.YM, 0.02);
        }

        Assert.Equal(design.PoleCount, poles.Poles.Length); // what is billed is what is placed
    }

    [Fact]
    public void A_yard_nothing_lights_names_the_nearest_miss()
    {
        var weak = Inputs with { Catalog = Inputs.Catalog with { Luminaires = [Inputs.Catalog.Luminaires.MinBy(l => l.FluxLm)!] }, Sites = [Drawn($"[{Corner}]").Sites[0] with { Target = new LightTarget("own", 300, null, null, null, "test") }] };
        var design = TenderDesigner.Run(weak, []);
        Assert.Empty(design.Sites);
        Assert.Contains(design.Diagnostics, d => d is { Code: "TK230" } && d.Message.Contains("300", StringComparison.Ordinal));
    }

    [Fact]
    public void Openings_are_left_out_and_said()
    {
        var reading = Drawn($"[{Ring((0, 0), (50, 0), (50, 40), (0, 40), (0, 0))},{Ring((15, 12), (15, 28), (35, 28), (35, 12), (15, 12))}]");
        Assert.Equal(1680, reading.Sites[0].Geometry!.Lit!.Area.AreaM2, 1);
        Assert.Contains(reading.Diagnostics, d => d is { Code: "TK170", Severity: Severity.Note } && d.Message.Contains("shadow", StringComparison.Ordinal));
    }

    [Fact]
    public void An_outline_that_crosses_itself_is_lit_as_its_rectangle_with_a_warning()
    {
        var reading = Drawn($"[{Ring((0, 0), (50, 40), (50, 0), (0, 40), (0, 0))}]");
        Assert.Null(reading.Sites[0].Geometry!.Lit);
        Assert.Contains(reading.Diagnostics, d => d is { Code: "TK170", Severity: Severity.Warning } && d.Message.Contains("crosses itself", StringComparison.Ordinal));
    }

    [Fact]
    public void Poles_drawn_on_the_map_are_lit_where_they_stand()
    {
        var points = string.Join(',', new[] { (0.0, 0.0), (60, 0), (0, 50) }.Select(p =>
            "{\"type\":\"Feature\",\"properties\":{\"type\":\"pole\"},\"geometry\":{\"type\":\"Point\",\"coordinates\":" + Ring(p)[1..^1] + "}}"));
        var site = Drawn($"[{Corner}]", points).Sites[0];
        Assert.Equal(3, site.FixedPoles);
        var shape = new PoleShape(6, 1, 5);
        var light = SiteLighting.Of(Inputs.Light.Values.First(), site, shape, 0.8, new SpacingBounds(0.5, 1, 8, 0.1), Inputs);
        var feet = light.Area!.Luminaires.Select(light.Area.FootOf).Select(f => (Math.Round(f.XM - light.Area.Area.LeftM), Math.Round(f.YM - light.Area.Area.BottomM)));
        Assert.Equal([(0.0, 0.0), (60.0, 0.0), (0.0, 50.0)], feet);
    }

    private static string Ring(params (double East, double North)[] points) =>
        "[" + string.Join(',', points.Select(p => FormattableString.Invariant($"[{32.6 + (p.East / 111319.5)},{0.35 + (p.North / 110574.3)}]"))) + "]";

    private static SiteListReading Drawn(string rings, string more = "")
    {
        var yard = "{\"type\":\"Feature\",\"properties\":{\"id\":\"Y1\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":" + rings + "}}";
        var text = "{\"type\":\"FeatureCollection\",\"features\":[" + yard + (more.Length > 0 ? "," + more : "") + "]}";
        var site = StarterTender.Inputs.Sites[0];
        var defaults = new SiteDefaults(
            LightClasses.Find("P4"), site.Schedule.Name, System.Collections.Immutable.ImmutableSortedDictionary<string, Sizing.Energy.LightingSchedule>.Empty.Add(site.Schedule.Name, site.Schedule),
            [6], 5, Arrangement.SingleSided, 0, 24, site.Terrain, site.Soil, true, System.Collections.Immutable.ImmutableSortedDictionary<string, string>.Empty);
        return DrawnSites.Read(MapReader.Read(Encoding.UTF8.GetBytes(text), "a.geojson").Value!, defaults, TenderClasses.Find, TenderClasses.Names);
    }
}
