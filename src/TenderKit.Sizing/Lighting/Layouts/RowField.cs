using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Grid points of one bay under endless rows of luminaires. One field serves a whole search: its memory is used again for each layout.
/// </summary>
internal sealed class RowField
{
    /// <summary>Luminaires counted lie within this many mounting heights of the point (EN 13201-3:2015, 7.1.4; rule from memory).</summary>
    private const double ReachInHeights = 5;

    private double[] xs = [];
    private double[] ys = [];
    private double[] firsts = [];
    private double[] lasts = [];
    private double[] sums = [];
    private double[] turned = [];
    private int padded;

    public int Along { get; private set; }

    public int Across { get; private set; }

    public int Count { get; private set; }

    /// <summary>Sums of the light so far, lx, new; the y index outer, the x index inner.</summary>
    public Span<double> SumsLx => sums.AsSpan(0, Count);

    /// <summary>Lays the grid of <see cref="RoadGrid"/> over a bay of a strip and clears the sums.</summary>
    public void Lay(double lengthM, double fromYM, double widthM)
    {
        (Along, Across) = (RoadGrid.PointsAlong(lengthM), RoadGrid.PointsAcross(widthM));
        Hold(Along * Across);
        for (var j = 0; j < Across; j++)
        {
            for (var i = 0; i < Along; i++)
            {
                xs[(j * Along) + i] = (i + 0.5) * lengthM / Along;
                ys[(j * Along) + i] = fromYM + ((j + 0.5) * widthM / Across);
            }
        }

        Pad();
    }

    /// <summary>Keeps only some points of the grid laid, in the order given, and clears the sums.</summary>
    public void Keep(ReadOnlySpan<int> indexes)
    {
        Span<double> x = stackalloc double[indexes.Length], y = stackalloc double[indexes.Length];
        for (var i = 0; i < indexes.Length; i++) (x[i], y[i]) = (xs[indexes[i]], ys[indexes[i]]);
        Hold(indexes.Length);
        x.CopyTo(xs);
        y.CopyTo(ys);
        Pad();
    }

    /// <summary>Adds one endless row: luminaires at <paramref name="offsetM"/> and every spacing from there, those within reach of each point.</summary>
    public void AddRow(LightDistribution distribution, in Mounting mounting, double rowYM, double offsetM, double spacingM)
    {
        Reach(ReachInHeights * mounting.HeightM, rowYM, offsetM, spacingM);
        var (least, greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < Count; i++) (least, greatest) = (Math.Min(least, firsts[i]), Math.Max(greatest, lasts[i]));
        var points = new LightKernel.PointSet
        {
            Xs = xs.AsSpan(0, padded),
            Ys = ys.AsSpan(0, padded),
            Firsts = firsts.AsSpan(0, padded),
            Lasts = lasts.AsSpan(0, padded),
            Sums = sums.AsSpan(0, padded),
        };
        for (var k = least; k <= greatest; k++) LightKernel.AddWithin(distribution, mounting, offsetM + (k * spacingM), rowYM, points, k);
    }

    /// <summary>
    /// Adds the row that faces back from the far edge, which is the row summed so far turned by half a turn about the middle of the road:
    /// point for point the same sums in another order.
    /// </summary>
    /// <param name="shiftPoints">How many points along the turned row is moved: 0 for opposite, half the points of a bay for staggered.</param>
    public void AddTurned(int shiftPoints)
    {
        for (var j = 0; j < Across; j++)
        {
            var (row, back) = (j * Along, (Across - 1 - j) * Along);
            for (var i = 0; i < Along; i++) turned[row + i] = sums[back + ((Along + shiftPoints - 1 - i) % Along)];
        }

        for (var i = 0; i < Count; i++) sums[i] += turned[i];
    }

    /// <summary>Average, least and greatest; the points are left out until <see cref="WithPoints"/>.</summary>
    public LightResult Summary(double maintenanceFactor)
    {
        double sum = 0, least = double.PositiveInfinity, greatest = 0;
        foreach (var newLx in SumsLx)
        {
            var lx = newLx * maintenanceFactor;
            sum += lx;
            least = Math.Min(least, lx);
            greatest = Math.Max(greatest, lx);
        }

        return new LightResult(sum / Count, least, greatest, Along, Across, []);
    }

    /// <summary>The summary with the points of this field, which must still be those it was made from.</summary>
    public LightResult WithPoints(LightResult summary, double maintenanceFactor)
    {
        var points = new LightPoint[Count];
        for (var i = 0; i < Count; i++) points[i] = new LightPoint(xs[i], ys[i], sums[i] * maintenanceFactor);
        return summary with { Points = ImmutableCollectionsMarshal.AsImmutableArray(points) };
    }

    private void Reach(double reachM, double rowYM, double offsetM, double spacingM)
    {
        var squared = Vector256.Create(reachM * reachM);
        var spacing = Vector256.Create(spacingM);
        for (var i = 0; i < padded; i += LightKernel.Lanes)
        {
            var dy = Vector256.Create(ys.AsSpan(i, LightKernel.Lanes)) - Vector256.Create(rowYM);
            var dx = Vector256.Create(xs.AsSpan(i, LightKernel.Lanes)) - Vector256.Create(offsetM);
            var left = squared - (dy * dy);
            var reached = Vector256.LessThanOrEqual(Vector256.Abs(dy), Vector256.Create(reachM));
            var along = Vector256.Sqrt(Vector256.Max(left, Vector256<double>.Zero));
            var first = Vector256.Ceiling((dx - along) / spacing);
            var last = Vector256.Floor((dx + along) / spacing);
            Vector256.ConditionalSelect(reached, first, Vector256.Create(double.PositiveInfinity)).CopyTo(firsts.AsSpan(i));
            Vector256.ConditionalSelect(reached, last, Vector256.Create(double.NegativeInfinity)).CopyTo(lasts.AsSpan(i));
        }
    }

    private void Hold(int count)
    {
        Count = count;
        padded = LightKernel.Padded(count);
        if (sums.Length >= padded) return;
        (xs, ys, sums) = (Grown(xs), Grown(ys), new double[padded]);
        (firsts, lasts, turned) = (new double[padded], new double[padded], new double[padded]);
    }

    private double[] Grown(double[] values)
    {
        Array.Resize(ref values, padded);
        return values;
    }

    private void Pad()
    {
        xs.AsSpan(Count, padded - Count).Fill(xs[Count - 1]);
        ys.AsSpan(Count, padded - Count).Fill(ys[Count - 1]);
        sums.AsSpan(0, padded).Clear();
    }
}
