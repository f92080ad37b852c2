using System.Collections.Immutable;
using System.Text;
using TenderKit.Intake.Maps;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

public sealed class DrawnSitesTests
{
    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, 7.5, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    private const string Road = """{"type":"Feature","properties":{"name":"Market road","width_m":6},"geometry":{"type":"LineString","coordinates":[[-4.25,14.25],[-4.25,14.251],[-4.249,14.251]]}}""";
    private const string Yard = """{"type":"Feature","properties":{"id":"Y1","nom":"Bus yard"},"geometry":{"type":"Polygon","coordinates":[[[-4.26,14.26],[-4.2594,14.26],[-4.2594,14.2604],[-4.26,14.2604],[-4.26,14.26]]]}}""";

    [Fact]
    public void LinesAreRoadsAndAreasAreYards()
    {
        var reading = Read(Road, Yard);
        Assert.False(reading.HasErrors);
        var (road, yard) = (reading.Sites[0], reading.Sites[1]);
        Assert.Equal(("1", "Market road", SiteKind.Road, 6.0), (road.Id, road.Name, road.Kind, road.WidthM));
        Assert.Equal(218.6, road.LengthM, 0.051); // 110.6426 + 107.9189 m by geographiclib 2.0, recomputed; written to a decimetre
        Assert.Equal(MapShape.Line, road.Geometry!.Shape);
        Assert.Equal(14.251, road.LatitudeDegrees, 1e-4);
        Assert.Equal(("Y1", "Bus yard", SiteKind.Yard), (yard.Id, yard.Name, yard.Kind));
        Assert.Equal((64.7, 44.3), (Math.Round(yard.LengthM, 1), Math.Round(yard.WidthM, 1))); // 0.0006 degrees of longitude, 0.0004 of latitude at 14.26: recomputed with geographiclib 2.0
        Assert.InRange(yard.LatitudeDegrees, 14.26, 14.2604);
    }

    [Fact]
    public void PointsWithALengthAreSitesAndPolesAreGivenToTheirRoad()
    {
        const string point = """{"type":"Feature","properties":{"id":"S9","length":"120 m"},"geometry":{"type":"Point","coordinates":[-4.3,14.3]}}""";
        const string poles = """{"type":"Feature","properties":{"type":"pole"},"geometry":{"type":"MultiPoint","coordinates":[[-4.25003,14.2502],[-4.25003,14.2506],[-4.4,14.4]]}}""";
        var reading = Read(Road, point, poles);
        Assert.Equal(2, reading.Sites.Length);
        Assert.Equal((120.0, (int?)null), (reading.Sites[1].LengthM, reading.Sites[1].FixedPoles));
        Assert.Null(reading.Sites[1].Geometry);
        Assert.Equal(2, reading.Sites[0].FixedPoles);
        Assert.Equal(2, reading.Sites[0].Geometry!.Poles.Length);
        Assert.Equal([Severity.Note, Severity.Warning], reading.Diagnostics.Where(d => d.Code == "TK170").Select(d => d.Severity));
    }

    [Fact]
    public void StatedLengthIsHeldAgainstTheDrawnOne()
    {
        var reading = Read(Road.Replace("\"width_m\":6", "\"length_m\":300", StringComparison.Ordinal));
        Assert.Equal(300, reading.Sites[0].LengthM);
        Assert.Contains(reading.Diagnostics, d => d is { Code: "TK170", Severity: Severity.Warning } && d.Message.Contains("218.6 m long", StringComparison.Ordinal));
        Assert.DoesNotContain(Read(Road.Replace("\"width_m\":6", "\"length_m\":220", StringComparison.Ordinal)).Diagnostics, d => d.Code == "TK170");
    }

    [Fact]
    public void OddAreasAreSaid()
    {
        const string triangle = """{"type":"Feature","properties":{"id":"T"},"geometry":{"type":"Polygon","coordinates":[[[-4.26,14.26],[-4.259,14.26],[-4.26,14.261],[-4.26,14.26]]]}}""";
        Assert.Contains(Read(triangle).Diagnostics, d => d is { Code: "TK170", Severity: Severity.Note });
        const string two = """{"type":"Feature","properties":{"id":"T"},"geometry":{"type":"MultiPolygon","coordinates":[[[[-4.26,14.26],[-4.259,14.26],[-4.259,14.261],[-4.26,14.261],[-4.26,14.26]]],[[[-4.28,14.28],[-4.2799,14.28],[-4.2799,14.2801],[-4.28,14.28]]]]}}""";
        var reading = Read(two);
        Assert.Contains(reading.Diagnostics, d => d is { Code: "TK170", Severity: Severity.Warning });
        Assert.InRange(Assert.Single(reading.Sites).LengthM, 100, 115);
    }

    [Fact]
    public void A_drawn_road_runs_from_its_first_to_its_last_point_unless_a_bearing_is_stated()
    {
        var reading = Read(Road, Road.Replace("\"width_m\":6", "\"bearing_deg\":30", StringComparison.Ordinal), Yard);
        Assert.False(reading.HasErrors);
        // 110.6 m north and 107.9 m east by the degrees at 14.25 north on WGS84: 44.3 degrees (derived)
        Assert.Equal(44.3, reading.Sites[0].BearingDegrees!.Value, 0.1);
        Assert.Equal(30, reading.Sites[1].BearingDegrees);
        Assert.Null(reading.Sites[2].BearingDegrees);
    }

    private static SiteListReading Read(params string[] features) => DrawnSites.Read(
        MapReader.Read(Encoding.UTF8.GetBytes($"{{\"type\":\"FeatureCollection\",\"features\":[{string.Join(',', features)}]}}"), "a.geojson").Value!,
        Defaults, n => n == "P4" ? Defaults.Target : null, ["P4"]);
}
