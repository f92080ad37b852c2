using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>Illuminance over the field of a grid, for drawing only: linear between points, constant from the outer points to the edge.</summary>
internal sealed class LightField
{
    public LightField(LightResult result)
    {
        Result = result;
        Xs = Edged(Along(result));
        Ys = Edged(Across(result));
    }

    public LightResult Result { get; }

    /// <summary>Places along: near edge, points, far edge, m.</summary>
    public ImmutableArray<double> Xs { get; }

    /// <summary>Places across: near edge, points, far edge, m.</summary>
    public ImmutableArray<double> Ys { get; }

    /// <summary>Whether the points form a full grid of at least two by two, row by row, both ways ascending.</summary>
    public static bool CanDraw(LightResult result) =>
        result.PointsAlong > 1 && result.PointsAcross > 1 && result.Points.Length == result.PointsAlong * result.PointsAcross
        && Ascends(Along(result)) && Ascends(Across(result));

    public double ValueLx(int i, int j) => Result.Points[(Inner(j, Ys.Length) * Result.PointsAlong) + Inner(i, Xs.Length)].IlluminanceLx;

    /// <summary>The light at the four triangles of every cell: corners with their values, the middle taking the mean.</summary>
    public IEnumerable<ImmutableArray<LightPoint>> Triangles()
    {
        for (var i = 0; i + 1 < Xs.Length; i++)
        {
            for (var j = 0; j + 1 < Ys.Length; j++)
            {
                LightPoint a = Corner(i, j), b = Corner(i + 1, j), c = Corner(i + 1, j + 1), d = Corner(i, j + 1);
                var middle = new LightPoint((a.XM + c.XM) / 2, (a.YM + c.YM) / 2, (a.IlluminanceLx + b.IlluminanceLx + c.IlluminanceLx + d.IlluminanceLx) / 4);
                yield return [a, b, middle];
                yield return [b, c, middle];
                yield return [c, d, middle];
                yield return [d, a, middle];
            }
        }
    }

    private LightPoint Corner(int i, int j) => new(Xs[i], Ys[j], ValueLx(i, j));

    private static int Inner(int index, int length) => Math.Clamp(index, 1, length - 2) - 1;

    private static ImmutableArray<double> Along(LightResult result) => [.. result.Points.Take(result.PointsAlong).Select(p => p.XM)];

    private static ImmutableArray<double> Across(LightResult result) => [.. result.Points.Where((_, n) => n % result.PointsAlong == 0).Select(p => p.YM)];

    private static bool Ascends(ImmutableArray<double> places) => places.Zip(places.Skip(1)).All(p => p.First < p.Second);

    private static ImmutableArray<double> Edged(ImmutableArray<double> points) =>
        [points[0] - ((points[1] - points[0]) / 2), .. points, points[^1] + ((points[^1] - points[^2]) / 2)];
}
