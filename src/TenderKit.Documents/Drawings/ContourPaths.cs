using PdfSharp.Drawing;

namespace TenderKit.Documents.Drawings;

/// <summary>Joins pieces of a contour end to end into lines.</summary>
internal static class ContourPaths
{
    public static List<List<XPoint>> Join(IReadOnlyList<Segment> segments)
    {
        var ends = new Dictionary<(long, long), List<int>>();
        for (var i = 0; i < segments.Count; i++)
        {
            Note(ends, Key(segments[i].X1M, segments[i].Y1M), i);
            Note(ends, Key(segments[i].X2M, segments[i].Y2M), i);
        }

        var used = new bool[segments.Count];
        var lines = new List<List<XPoint>>();
        for (var i = 0; i < segments.Count; i++)
        {
            if (used[i]) continue;
            used[i] = true;
            var line = new List<XPoint> { new(segments[i].X1M, segments[i].Y1M), new(segments[i].X2M, segments[i].Y2M) };
            Extend(line, segments, ends, used);
            line.Reverse();
            Extend(line, segments, ends, used);
            lines.Add(line);
        }

        return lines;
    }

    private static void Extend(List<XPoint> line, IReadOnlyList<Segment> segments, Dictionary<(long, long), List<int>> ends, bool[] used)
    {
        while (true)
        {
            var key = Key(line[^1].X, line[^1].Y);
            var next = ends[key].FindIndex(i => !used[i]);
            if (next < 0) return;
            var index = ends[key][next];
            used[index] = true;
            var s = segments[index];
            line.Add(Key(s.X1M, s.Y1M) == key ? new XPoint(s.X2M, s.Y2M) : new XPoint(s.X1M, s.Y1M));
        }
    }

    private static void Note(Dictionary<(long, long), List<int>> ends, (long, long) key, int index)
    {
        if (!ends.TryGetValue(key, out var list)) ends[key] = list = [];
        list.Add(index);
    }

    private static (long, long) Key(double x, double y) => ((long)Math.Round(x * 1e6), (long)Math.Round(y * 1e6));
}
