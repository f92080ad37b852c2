using PdfSharp.Drawing;
using TenderKit.Documents.Drawings;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Drawings;

public class SiteMapTests
{
    private static readonly XRect _area = new(62, 61, 471, 600);

    [Theory]
    [InlineData(0, 10)]
    [InlineData(60, 25)]
    [InlineData(-35, 179.9)]
    public void Distances_on_the_map_are_those_on_the_ground_in_every_direction(double latitude, double longitude)
    {
        var places = new[] { (0.0, 0.0), (0.2, 0.0), (0.0, 0.2), (0.15, 0.17) }.Select(p => (Lat: latitude + p.Item1, Lon: Wrapped(longitude + p.Item2))).ToArray();
        var map = SiteMap.Of(At(places))!;
        var marks = map.MarksIn(_area).ToDictionary(m => m.Text, m => m.At);
        for (var i = 0; i < places.Length; i++)
        {
            for (var j = i + 1; j < places.Length; j++)
            {
                var (a, b) = (marks["P" + i], marks["P" + j]);
                var drawnKm = Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2)) / map.PtPerKm;
                var km = GreatCircle.DistanceKm(places[i].Lat, places[i].Lon, places[j].Lat, places[j].Lon);
                Assert.Equal(km, drawnKm, 0.01 * km);
            }
        }

        Assert.True(marks["P1"].Y < marks["P0"].Y && marks["P2"].X > marks["P0"].X, "north is up and east is right");
        Assert.All(marks.Values, m => Assert.True(m.X > _area.Left && m.X < _area.Right && m.Y > _area.Top && m.Y < _area.Top + map.HeightPt));
    }

    [Fact]
    public void Sites_of_one_place_share_a_mark_and_one_without_position_has_none()
    {
        var design = At([(0, 10), (0, 10), (0.1, 10.1)]);
        Assert.Equal(["P0, P1", "P2"], SiteMap.Of(design)!.MarksIn(_area).Select(m => m.Text));
        var lost = design with { Sites = [.. design.Sites.Select(s => s with { Site = s.Site with { IsPositionStated = false } })] };
        Assert.Null(SiteMap.Of(lost));
    }

    [Fact]
    public void A_crowd_of_sites_is_drawn_and_says_which_ids_had_no_room()
    {
        var design = At([.. Enumerable.Range(0, 300).Select(i => (0.00002 * i, 10 + (0.00003 * (i % 17))))]);
        var figure = SiteMap.Of(design)!.Figure();
        Assert.NotEmpty(SiteMap.Of(design)!.LeftOut);
        Assert.Contains("without an id", figure.Caption, StringComparison.Ordinal);
    }

    private static double Wrapped(double longitude) => longitude > 180 ? longitude - 360 : longitude;

    private static TenderDesign At((double Lat, double Lon)[] places)
    {
        var small = HandMadeDesign.Small();
        return small with
        {
            Sites = [.. places.Select((p, i) => small.Sites[0] with { Site = small.Sites[0].Site with { Id = "P" + i, Lot = "A", LatitudeDegrees = p.Lat, LongitudeDegrees = p.Lon, Geometry = null } })],
        };
    }
}
