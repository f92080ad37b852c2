using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>Illuminance over the field of a grid, for drawing only: linear between points, constant from the outer points to the edge.</summary>
internal sealed class LightField
{
    private readonly double[,] _valuesLx;

    public LightField(LightResult result)
    {
        Result = result;
        Xs = Edged([.. result.Points.Select(p => p.XM).Distinct().Order()]);
        Ys = Edged([.. result.Points.Select(p => p.YM).Distinct().Order()]);
        var byPlace = result.Points.ToDictionary(p => (p.XM, p.YM), p => p.IlluminanceLx);
        _valuesLx = new double[Xs.Length, Ys.Length];
        for (var i = 0; i < Xs.Length; i++)
        {
            for (var j = 0; j < Ys.Length; j++) _valuesLx[i, j] = byPlace[(Xs[Inner(i, Xs.Length)], Ys[Inner(j, Ys.Length)])];
        }
    }

    public LightResult Result { get; }

    /// <summary>Places along: near edge, points, far edge, m.</summary>
    public ImmutableArray<double> Xs { get; }

    /// <summary>Places across: near edge, points, far edge, m.</summary>
    public ImmutableArray<double> Ys { get; }

    /// <summary>Whether the points form a full grid of at least two by two.</summary>
    public static bool CanDraw(LightResult result) =>
        result.PointsAlong > 1 && result.PointsAcross > 1 && result.Points.Length == result.PointsAlong * result.PointsAcross
        && result.Points.Select(p => p.XM).Distinct().Count() == result.PointsAlong
        && result.Points.Select(p => p.YM).Distinct().Count() == result.PointsAcross;

    public double ValueLx(int i, int j) => _valuesLx[i, j];

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

    private LightPoint Corner(int i, int j) => new(Xs[i], Ys[j], _valuesLx[i, j]);

    private static int Inner(int index, int length) => Math.Clamp(index, 1, length - 2);

    private static ImmutableArray<double> Edged(ImmutableArray<double> points) =>
        [points[0] - ((points[1] - points[0]) / 2), .. points, points[^1] + ((points[^1] - points[^2]) / 2)];
}
