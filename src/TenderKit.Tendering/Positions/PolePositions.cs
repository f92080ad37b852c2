using System.Collections.Immutable;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Tendering.Positions;

/// <summary>How poles stand along a line.</summary>
/// <param name="Poles">Number of poles on both sides together.</param>
/// <param name="OffsetM">Distance of the pole axes from the line drawn, which is taken as the middle of the road, m.</param>
/// <param name="JunctionClearanceM">No pole stands nearer to a junction along the line, m.</param>
/// <param name="Junctions">Distances along the line of the junctions, m.</param>
/// <param name="FirstSide">Side of a single row, and of the first pole of a staggered one.</param>
public sealed record LinePlan(
    int Poles, Arrangement Arrangement, double OffsetM, double JunctionClearanceM, ImmutableArray<double> Junctions, PoleSide FirstSide = PoleSide.Left)
{
    /// <summary>Distances along the line of the poles of one side, of both for a staggered row, where they are not even: a pole at each bend. Empty for even bays.</summary>
    public ImmutableArray<double> PlacesM { get; init; } = [];
}

/// <summary>Places poles on the ground as the light calculation has them: even bays, the first pole half a bay from the end.</summary>
public static class PolePositions
{
    /// <summary>A line that turns by more than this makes a bend worth looking at, degrees. Common practice, no source.</summary>
    public const double BendDegrees = 30;

    /// <summary>Poles along a line of one part or several, which are taken as one after the other.</summary>
    public static ImmutableArray<PolePosition> Along(ImmutableArray<ImmutableArray<GeoPoint>> line, LinePlan plan)
    {
        var lengthM = line.Sum(p => MapMeasure.LengthM(p));
        var places = Places(plan, lengthM).Select(p => (p.Side, Free(p.AlongM, plan, lengthM), p.AlongM)).OrderBy(p => p.Item2).ThenBy(p => p.Side);
        return [.. places.Select(p => At(line, plan, p.Side, p.Item2, Math.Abs(p.Item2 - p.AlongM)))];
    }

    /// <summary>Poles along the long sides of the smallest rectangle around an area.</summary>
    /// <param name="ring">The area.</param>
    /// <param name="polesPerSide">Poles on each lit side.</param>
    /// <param name="bothSides">Whether both long sides are lit.</param>
    /// <param name="setbackM">Distance of the pole axes outside the sides, m.</param>
    public static ImmutableArray<PolePosition> Around(ImmutableArray<GeoPoint> ring, int polesPerSide, bool bothSides, double setbackM)
    {
        var box = MapMeasure.Rectangle(ring);
        var sides = bothSides ? new[] { PoleSide.FirstLongSide, PoleSide.SecondLongSide } : [PoleSide.FirstLongSide];
        return [.. sides.SelectMany(side => Enumerable.Range(0, polesPerSide).Select(i => OnSide(ring, box, side, (i + 0.5) * box.LongSideM / polesPerSide, setbackM)))];
    }

    /// <summary>Bends of a line: distance along it, m, and the angle turned, degrees, positive to the right.</summary>
    public static ImmutableArray<(double AlongM, double TurnDegrees)> Bends(ImmutableArray<GeoPoint> line)
    {
        var (bends, along) = (new List<(double, double)>(), 0.0);
        for (var i = 1; i + 1 < line.Length; i++)
        {
            var (before, after) = (Geodesic.Between(line[i - 1], line[i]), Geodesic.Between(line[i], line[i + 1]));
            along += before.LengthM;
            var turn = Math.IEEERemainder(after.AzimuthDegrees - before.AzimuthDegrees, 360);
            if (Math.Abs(turn) > BendDegrees) bends.Add((along, turn));
        }

        return [.. bends];
    }

    private static IEnumerable<(PoleSide Side, double AlongM)> Places(LinePlan plan, double lengthM)
    {
        var (first, second) = (plan.FirstSide, plan.FirstSide == PoleSide.Left ? PoleSide.Right : PoleSide.Left);
        var bays = plan.Arrangement == Arrangement.Opposite ? Math.Max(1, plan.Poles / 2) : plan.Poles;
        var uneven = plan.PlacesM.Length == bays;
        for (var i = 0; i < bays; i++)
        {
            var along = uneven ? plan.PlacesM[i] : (i + 0.5) * lengthM / bays;
            yield return (plan.Arrangement == Arrangement.Staggered && i % 2 == 1 ? second : first, along);
            if (plan.Arrangement == Arrangement.Opposite) yield return (second, along);
        }
    }

    /// <summary>The place nearest to one wanted that keeps clear of every junction; the place wanted where there is none.</summary>
    private static double Free(double alongM, LinePlan plan, double lengthM)
    {
        bool IsClear(double at) => at >= 0 && at <= lengthM && plan.Junctions.All(j => Math.Abs(j - at) >= plan.JunctionClearanceM - 1e-9);
        if (IsClear(alongM)) return alongM;
        var clear = plan.Junctions.SelectMany(j => new[] { j - plan.JunctionClearanceM, j + plan.JunctionClearanceM }).Where(IsClear).OrderBy(at => Math.Abs(at - alongM)).ToList();
        return clear.Count == 0 ? alongM : clear[0];
    }

    private static PolePosition At(ImmutableArray<ImmutableArray<GeoPoint>> line, LinePlan plan, PoleSide side, double alongM, double movedM)
    {
        var left = alongM;
        var part = line[0];
        foreach (var candidate in line)
        {
            part = candidate;
            var length = MapMeasure.LengthM(candidate);
            if (left <= length) break;
            if (candidate != line[^1]) left -= length;
        }

        var (point, azimuth, widening) = Across(part, left);
        var outwards = azimuth + (side == PoleSide.Left ? -90 : 90);
        var pole = Geodesic.Along(point, outwards, plan.OffsetM * widening);
        return new(pole, Angle.Normalised(outwards + 180), alongM, side, Remark(line, pole, movedM, plan.OffsetM));
    }

    private static string Remark(ImmutableArray<ImmutableArray<GeoPoint>> line, GeoPoint pole, double movedM, double offsetM)
    {
        if (movedM > 0.005) return FormattableString.Invariant($"moved {movedM:0.0} m along the road to keep clear of a junction");
        const double tooNear = 0.9;
        return line.Min(p => MapMeasure.DistanceM(p, pole)) < tooNear * offsetM ? "stands too near the road beyond the bend: move it outwards" : "";
    }

    /// <summary>
    /// The point at a distance along a line, the direction of the line there and by how much farther a pole stands from it: at a bend the
    /// direction halfway between both legs, and one over the cosine of half the turn, at most 2, so that the pole keeps its distance from both.
    /// Check: a turn of 90 degrees gives 1.414.
    /// </summary>
    private static (GeoPoint Point, double AzimuthDegrees, double Widening) Across(ImmutableArray<GeoPoint> line, double distanceM)
    {
        const double atBendM = 0.05;
        var along = 0.0;
        for (var i = 1; i + 1 < line.Length; i++)
        {
            var before = Geodesic.Between(line[i - 1], line[i]);
            along += before.LengthM;
            if (Math.Abs(along - distanceM) > atBendM) continue;
            var turn = Math.IEEERemainder(Geodesic.Between(line[i], line[i + 1]).AzimuthDegrees - before.AzimuthDegrees, 360);
            return (line[i], before.AzimuthDegrees + (turn / 2), 1 / Math.Max(0.5, Angle.CosDegrees(turn / 2)));
        }

        var (point, azimuth) = MapMeasure.PointAt(line, distanceM);
        return (point, azimuth, 1);
    }

    private static PolePosition OnSide(ImmutableArray<GeoPoint> ring, BoundingRectangle box, PoleSide side, double alongM, double setbackM)
    {
        var isFirst = side == PoleSide.FirstLongSide;
        var foot = Geodesic.Along(box.Corner, box.LongAzimuthDegrees, alongM);
        var point = Geodesic.Along(foot, box.ShortAzimuthDegrees, isFirst ? -setbackM : box.ShortSideM + setbackM);
        var isOutside = !MapMeasure.Holds(ring, point, setbackM + 1);
        return new(point, Angle.Normalised(box.ShortAzimuthDegrees + (isFirst ? 0 : 180)), alongM, side, isOutside ? "stands away from the area drawn" : "");
    }
}
