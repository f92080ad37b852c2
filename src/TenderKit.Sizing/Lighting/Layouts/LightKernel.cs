using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Light of one luminaire on many points, four points a step. Each point's sum grows luminaire by luminaire in the order of the calls and
/// never mixes with its neighbours', so it does not depend on how many points are done at once, nor on the machine's vector width.
/// </summary>
internal static class LightKernel
{
    public const int Lanes = 4;

    private const double Whole = 4503599627370496; // 2^52: added to a whole number it leaves that number in the low bits

    /// <summary>Smallest multiple of the lanes that holds so many points.</summary>
    public static int Padded(int points) => (points + Lanes - 1) & -Lanes;

    /// <summary>Adds the horizontal illuminance of a luminaire to each sum, lx. All spans equally long, a multiple of the lanes.</summary>
    public static void Add(
        LightDistribution distribution, in Mounting mounting, double footXM, double footYM, ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Span<double> sums)
    {
        var frame = new Frame(mounting);
        var table = distribution.Table;
        for (var i = 0; i < sums.Length; i += Lanes)
        {
            var dx = Load(xs, i) - Vector256.Create(footXM);
            var dy = Load(ys, i) - Vector256.Create(footYM);
            (Load(sums, i) + IlluminanceLx(distribution, table, frame, dx, dy)).CopyTo(sums[i..]);
        }
    }

    /// <summary>The same only where first &lt;= number &lt;= last, for one luminaire of an endless row.</summary>
    public static void AddWithin(
        LightDistribution distribution, in Mounting mounting, double footXM, double footYM, in PointSet points, double number)
    {
        var frame = new Frame(mounting);
        var table = distribution.Table;
        for (var i = 0; i < points.Sums.Length; i += Lanes)
        {
            var at = Vector256.Create(number);
            var within = Vector256.LessThanOrEqual(Load(points.Firsts, i), at) & Vector256.LessThanOrEqual(at, Load(points.Lasts, i));
            if (within == Vector256<double>.Zero) continue;
            var dx = Load(points.Xs, i) - Vector256.Create(footXM);
            var dy = Load(points.Ys, i) - Vector256.Create(footYM);
            (Load(points.Sums, i) + (IlluminanceLx(distribution, table, frame, dx, dy) & within)).CopyTo(points.Sums[i..]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(ReadOnlySpan<double> values, int at) => Vector256.Create(values.Slice(at, Lanes));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> IlluminanceLx(
        LightDistribution distribution, IntensityTable? table, in Frame frame, Vector256<double> dx, Vector256<double> dy)
    {
        var along = (dx * frame.AlongX) + (dy * frame.AlongY);
        var street = (dx * frame.StreetX) + (dy * frame.StreetY) - frame.StreetH;
        var down = (dx * frame.DownX) + (dy * frame.DownY) - frame.DownH;
        var squared = (dx * dx) + (dy * dy) + frame.HeightSquared;
        var aside = Vector256.Sqrt((along * along) + (street * street));
        var planeRad = LaneAngles.FullTurn(along, street);
        var gammaRad = LaneAngles.HalfTurn(down, aside);
        var intensity = table is null ? FromAxes(distribution, planeRad, gammaRad) : FromTable(table, planeRad, gammaRad);
        return intensity * frame.Height / (squared * Vector256.Sqrt(squared));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> FromTable(IntensityTable table, Vector256<double> planeRad, Vector256<double> gammaRad)
    {
        var planes = planeRad * table.PlaneCellsPerRad;
        var gammas = gammaRad * table.GammaCellsPerRad;
        var beyond = Vector256.GreaterThan(gammas, Vector256.Create(table.Gammas - 1.0));
        var plane = Vector256.Min(Vector256.Floor(planes), Vector256.Create(table.Planes - 2.0));
        var gamma = Vector256.Min(Vector256.Floor(gammas), Vector256.Create(table.Gammas - 2.0));
        var cells = ((plane * table.Gammas) + gamma + Vector256.Create(Whole)).AsInt64() ^ Vector256.Create(Whole).AsInt64();
        Corners(table.Values, cells, out var near, out var nearNext);
        Corners(table.Values, cells + Vector256.Create((long)table.Gammas), out var far, out var farNext);
        var (u, v) = (planes - plane, gammas - gamma);
        var atNear = near + (v * (nearNext - near));
        var atFar = far + (v * (farNext - far));
        return Vector256.AndNot(atNear + (u * (atFar - atNear)), beyond);
    }

    /// <summary>The value at each cell and the one after it: two loads a lane, then a transposition.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Corners(double[] values, Vector256<long> cells, out Vector256<double> first, out Vector256<double> second)
    {
        var (a, b) = (Pair(values, cells.GetElement(0)), Pair(values, cells.GetElement(1)));
        var (c, d) = (Pair(values, cells.GetElement(2)), Pair(values, cells.GetElement(3)));
        if (Avx.IsSupported)
        {
            var (even, odd) = (Vector256.Create(a, c), Vector256.Create(b, d));
            first = Avx.UnpackLow(even, odd);
            second = Avx.UnpackHigh(even, odd);
            return;
        }

        first = Vector256.Create(a.GetElement(0), b.GetElement(0), c.GetElement(0), d.GetElement(0));
        second = Vector256.Create(a.GetElement(1), b.GetElement(1), c.GetElement(1), d.GetElement(1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<double> Pair(double[] values, long at) => Vector128.Create(MemoryMarshal.CreateReadOnlySpan(ref values[at], 2));

    private static Vector256<double> FromAxes(LightDistribution distribution, Vector256<double> planeRad, Vector256<double> gammaRad)
    {
        var planes = planeRad * (180 / Math.PI);
        var gammas = gammaRad * (180 / Math.PI);
        return Vector256.Create(
            distribution.IntensityCd(planes.GetElement(0), gammas.GetElement(0)),
            distribution.IntensityCd(planes.GetElement(1), gammas.GetElement(1)),
            distribution.IntensityCd(planes.GetElement(2), gammas.GetElement(2)),
            distribution.IntensityCd(planes.GetElement(3), gammas.GetElement(3)));
    }

    /// <summary>Points of a grid with the luminaires of a row that reach each of them.</summary>
    internal readonly ref struct PointSet
    {
        public required ReadOnlySpan<double> Xs { get; init; }

        public required ReadOnlySpan<double> Ys { get; init; }

        public required ReadOnlySpan<double> Firsts { get; init; }

        public required ReadOnlySpan<double> Lasts { get; init; }

        public required Span<double> Sums { get; init; }
    }

    /// <summary>A mounting spread over the lanes.</summary>
    private readonly struct Frame(in Mounting mounting)
    {
        public readonly Vector256<double> AlongX = Vector256.Create(mounting.AlongX);
        public readonly Vector256<double> AlongY = Vector256.Create(mounting.AlongY);
        public readonly Vector256<double> StreetX = Vector256.Create(mounting.StreetX);
        public readonly Vector256<double> StreetY = Vector256.Create(mounting.StreetY);
        public readonly Vector256<double> StreetH = Vector256.Create(mounting.HeightM * mounting.StreetZ);
        public readonly Vector256<double> DownX = Vector256.Create(mounting.DownX);
        public readonly Vector256<double> DownY = Vector256.Create(mounting.DownY);
        public readonly Vector256<double> DownH = Vector256.Create(mounting.HeightM * mounting.DownZ);
        public readonly Vector256<double> Height = Vector256.Create(mounting.HeightM);
        public readonly Vector256<double> HeightSquared = Vector256.Create(mounting.HeightM * mounting.HeightM);
    }
}
