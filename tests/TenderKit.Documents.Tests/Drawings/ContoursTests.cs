using System.Collections.Immutable;
using CsCheck;
using TenderKit.Documents.Drawings;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Documents.Tests.Drawings;

public class ContoursTests
{
    [Fact]
    public void On_a_slope_a_contour_is_the_straight_line_at_its_level()
    {
        var field = new LightField(Grid(10, 4, (x, _) => x));

        Assert.All(Contours.Lines(field, 3.25), s => Assert.True(Math.Abs(s.X1M - 3.25) < 1e-9 && Math.Abs(s.X2M - 3.25) < 1e-9));
        var path = Assert.Single(ContourPaths.Join([.. Contours.Lines(field, 3.25)]));
        Assert.Equal(4, path.Max(p => p.Y) - path.Min(p => p.Y), 9);
    }

    [Fact]
    public void The_bands_of_a_slope_cover_the_area_above_their_level()
    {
        var field = new LightField(Grid(10, 4, (x, _) => x));

        var area = field.Triangles().Select(t => Contours.Above(t, 3.25)).Where(c => c.Count >= 3).Sum(Area);
        Assert.Equal((10 - 3.25) * 4, area, 9);
    }

    [Fact]
    public void Around_a_peak_a_contour_closes()
    {
        var field = new LightField(Grid(11, 11, (x, y) => 10 - Math.Abs(x - 5.5) - Math.Abs(y - 5.5)));
        var path = Assert.Single(ContourPaths.Join([.. Contours.Lines(field, 7.3)]));

        Assert.Equal(path[0].X, path[^1].X, 9);
        Assert.Equal(path[0].Y, path[^1].Y, 9);
    }

    [Fact]
    public void Every_piece_of_a_contour_lies_at_its_level_and_all_are_joined() =>
        Gen.Double[0.5, 20].Array[24].Select(Gen.Double[1, 19]).Sample((values, level) =>
        {
            var field = new LightField(Grid(6, 4, (x, y) => values[((int)y * 6) + (int)x]));
            var pieces = Contours.Lines(field, level).ToList();
            Assert.Equal(pieces.Count, ContourPaths.Join(pieces).Sum(p => p.Count - 1));
            Assert.Equal(24.0, field.Triangles().Select(t => Contours.Above(t, 0)).Sum(Area), 9);
        }, iter: 200);

    [Theory]
    [InlineData(0.8, 0.2)]
    [InlineData(7, 2)]
    [InlineData(430, 200)]
    [InlineData(1900, 500)]
    public void Scales_take_round_steps(double range, double step) => Assert.Equal(step, Pencil.NiceStep(range, 4), 9);

    [Fact]
    public void A_grid_that_is_not_full_is_not_drawn()
    {
        var full = Grid(10, 4, (x, _) => x);

        Assert.True(LightField.CanDraw(full));
        Assert.False(LightField.CanDraw(full with { Points = full.Points.RemoveAt(3) }));
        Assert.False(LightField.CanDraw(Grid(10, 1, (x, _) => x)));
    }

    private static LightResult Grid(int along, int across, Func<double, double, double> light)
    {
        var points = (from j in Enumerable.Range(0, across) from i in Enumerable.Range(0, along) select new LightPoint(i + 0.5, j + 0.5, light(i + 0.5, j + 0.5))).ToImmutableArray();
        return new LightResult(points.Average(p => p.IlluminanceLx), points.Min(p => p.IlluminanceLx), points.Max(p => p.IlluminanceLx), along, across, points);
    }

    private static double Area(List<LightPoint> corners)
    {
        double twice = 0;
        for (var i = 0; i < corners.Count; i++)
        {
            var (p, q) = (corners[i], corners[(i + 1) % corners.Count]);
            twice += (p.XM * q.YM) - (q.XM * p.YM);
        }

        return Math.Abs(twice) / 2;
    }
}
