using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>A piece of a contour, m.</summary>
internal readonly record struct Segment(double X1M, double Y1M, double X2M, double Y2M);

/// <summary>Contour lines and filled bands of a field cut into triangles, on which the light is linear.</summary>
internal static class Contours
{
    private static readonly ImmutableArray<double> _usualLevels = [0.2, 0.5, 1, 2, 3, 5, 7.5, 10, 15, 20, 30, 50, 75, 100, 150, 200];

    /// <summary>Levels to draw between the least and the greatest illuminance, at most seven.</summary>
    public static ImmutableArray<double> Levels(double minimumLx, double maximumLx)
    {
        var inside = _usualLevels.Where(l => l > minimumLx && l < maximumLx).ToImmutableArray();
        while (inside.Length > 7) inside = [.. inside.Where((_, i) => i % 2 == 0)];
        return inside;
    }

    public static IEnumerable<Segment> Lines(LightField field, double levelLx) =>
        from triangle in field.Triangles()
        let crossings = Crossings(triangle, levelLx)
        where crossings.Count == 2
        select new Segment(crossings[0].XM, crossings[0].YM, crossings[1].XM, crossings[1].YM);

    /// <summary>The part of a triangle at or above a level; fewer than three corners when there is none.</summary>
    public static List<LightPoint> Above(ImmutableArray<LightPoint> triangle, double levelLx)
    {
        var corners = new List<LightPoint>(4);
        for (var i = 0; i < 3; i++)
        {
            var (p, q) = (triangle[i], triangle[(i + 1) % 3]);
            if (p.IlluminanceLx >= levelLx) corners.Add(p);
            if (p.IlluminanceLx >= levelLx != q.IlluminanceLx >= levelLx) corners.Add(Between(p, q, levelLx));
        }

        return corners;
    }

    private static List<LightPoint> Crossings(ImmutableArray<LightPoint> triangle, double levelLx)
    {
        var crossings = new List<LightPoint>(2);
        for (var i = 0; i < 3; i++)
        {
            var (p, q) = (triangle[i], triangle[(i + 1) % 3]);
            if (p.IlluminanceLx >= levelLx != q.IlluminanceLx >= levelLx) crossings.Add(Between(p, q, levelLx));
        }

        return crossings;
    }

    private static LightPoint Between(LightPoint p, LightPoint q, double levelLx)
    {
        var t = (levelLx - p.IlluminanceLx) / (q.IlluminanceLx - p.IlluminanceLx);
        return new LightPoint(p.XM + (t * (q.XM - p.XM)), p.YM + (t * (q.YM - p.YM)), levelLx);
    }
}
