using System.Collections.Immutable;
using CsCheck;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Positions;
using Xunit;

namespace TenderKit.Tendering.Tests.Positions;

public sealed class PolePositionsTests
{
    // 1105.74 m to the north, then 1101 m to the east
    private static readonly ImmutableArray<ImmutableArray<GeoPoint>> Line = [[new(0, 38), new(0.01, 38), new(0.01, 38.0099)]];

    private static readonly ImmutableArray<GeoPoint> Square = [new(9.0, 38.0), new(9.0, 38.002), new(9.001, 38.002), new(9.001, 38.0)];

    [Fact]
    public void SingleRowStandsHalfABayFromTheEndsOnTheLeft()
    {
        var lengthM = MapMeasure.LengthM(Line[0]);
        var poles = PolePositions.Along(Line, Plan(10, Arrangement.SingleSided));
        Assert.Equal(10, poles.Length);
        Assert.Equal(lengthM / 20, poles[0].AlongM, 1e-6);
        Assert.All(poles.Zip(poles.Skip(1)), p => Assert.Equal(lengthM / 10, p.Second.AlongM - p.First.AlongM, 1e-6));
        Assert.All(poles, p => Assert.Equal(PoleSide.Left, p.Side));
        // northwards: left is west, 4 m off, facing east; eastwards: left is north, facing south
        Assert.True(poles[0].Point.LongitudeDegrees < 38);
        Assert.Equal(90, poles[0].FacingDegrees, 0.01);
        Assert.True(poles[^1].Point.LatitudeDegrees > 0.01);
        Assert.Equal(180, poles[^1].FacingDegrees, 0.01);
    }

    [Fact]
    public void StaggeredPolesAlternateAndOppositePolesFaceEachOther()
    {
        var staggered = PolePositions.Along(Line, Plan(10, Arrangement.Staggered));
        Assert.Equal([PoleSide.Left, PoleSide.Right, PoleSide.Left, PoleSide.Right], staggered.Take(4).Select(p => p.Side));
        var opposite = PolePositions.Along(Line, Plan(10, Arrangement.Opposite));
        Assert.Equal(10, opposite.Length);
        foreach (var pair in opposite.Chunk(2))
        {
            Assert.Equal(pair[0].AlongM, pair[1].AlongM, 1e-9);
            Assert.Equal(180, Math.Abs(pair[0].FacingDegrees - pair[1].FacingDegrees), 1e-6);
            Assert.Equal(8, Geodesic.Between(pair[0].Point, pair[1].Point).LengthM, 1e-3);
        }
    }

    [Fact]
    public void JunctionsAreKeptClear()
    {
        var lengthM = MapMeasure.LengthM(Line[0]);
        var at = lengthM * 0.05 + 1;
        var poles = PolePositions.Along(Line, Plan(10, Arrangement.SingleSided) with { Junctions = [at] });
        Assert.Equal(at - 6, poles[0].AlongM, 1e-6);
        Assert.Contains("5.0 m", poles[0].Remark, StringComparison.Ordinal);
        Assert.All(poles.Skip(1), p => Assert.Empty(p.Remark));
    }

    [Fact]
    public void EveryPoleStandsAtItsOffsetAndNoneNearAJunction() => Gen.Select(Gen.Int[1, 60], Gen.Enum<Arrangement>(), Gen.Double[0, 9], Gen.Double[0, 2200].Array[0, 3]).Sample((count, arrangement, offset, junctions) =>
    {
        if (arrangement == Arrangement.Opposite) count = Math.Max(2, count / 2 * 2);
        var placed = PolePositions.Along(Line, new LinePlan(count, arrangement, offset, 6, [.. junctions.Order()]));
        return placed.Length == count
            && placed.All(p => MapMeasure.DistanceM(Line[0], p.Point) <= offset + 0.01)
            && placed.All(p => Math.Abs(p.AlongM - 1105.7) < 12 || Math.Abs(MapMeasure.DistanceM(Line[0], p.Point) - offset) < 0.05)
            && placed.All(p => junctions.All(j => Math.Abs(j - p.AlongM) >= 6 - 1e-6));
    }, iter: 200);

    [Fact]
    public void PolesOfAnAreaStandOutsideItsLongSides()
    {
        var poles = PolePositions.Around(Square, 4, bothSides: true, 0.5);
        Assert.Equal(8, poles.Length);
        Assert.All(poles, p => Assert.False(MapMeasure.Holds(Square, p.Point)));
        Assert.All(poles, p => Assert.True(MapMeasure.Holds(Square, p.Point, 0.55)));
        Assert.All(poles, p => Assert.Empty(p.Remark));
        Assert.All(poles, p => Assert.True(MapMeasure.Holds(Square, Geodesic.Along(p.Point, p.FacingDegrees, 20))));
        Assert.Equal(4, PolePositions.Around(Square, 4, bothSides: false, 0.5).Length);
        ImmutableArray<GeoPoint> triangle = [new(9.0, 38.0), new(9.0, 38.002), new(9.001, 38.001)];
        Assert.Contains(PolePositions.Around(triangle, 4, bothSides: true, 0.5), p => p.Remark.Length > 0);
    }

    [Fact]
    public void BendsAreFound()
    {
        var bend = Assert.Single(PolePositions.Bends(Line[0]));
        Assert.Equal(1105.74, bend.AlongM, 0.01);
        Assert.Equal(90, bend.TurnDegrees, 0.01);
        Assert.Empty(PolePositions.Bends([new(0, 38), new(0.01, 38), new(0.02, 38.001)]));
    }

    private static LinePlan Plan(int poles, Arrangement arrangement) => new(poles, arrangement, 4, 6, []);
}
