using System.Collections.Immutable;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Positions;
using Xunit;

namespace TenderKit.Tendering.Tests.Positions;

/// <summary>Poles on a road of 100 m east and 100 m north, at the equator; by hand, in metres east and north of its start.</summary>
public sealed class BendTests
{
    private static readonly PlanFrame Frame = new([new GeoPoint(0, 30)]);

    private static readonly ImmutableArray<ImmutableArray<GeoPoint>> Road = [[Frame.ToGround(new(0, 0)), Frame.ToGround(new(100, 0)), Frame.ToGround(new(100, 100))]];

    [Theory]
    [InlineData(PoleSide.Right, 103, -3, 315)] // outside: three metres from both legs, looking north-west
    [InlineData(PoleSide.Left, 97, 3, 135)] // inside
    public void A_pole_at_a_bend_keeps_its_distance_from_both_legs(PoleSide side, double east, double north, double facing)
    {
        var pole = Placed(Arrangement.SingleSided, side)[1];
        Assert.Equal(east, Plan(pole).XM, 0.01);
        Assert.Equal(north, Plan(pole).YM, 0.01);
        Assert.Equal(facing, pole.FacingDegrees, 0.01);
        Assert.Equal("", pole.Remark);
    }

    [Fact]
    public void A_single_row_keeps_its_side()
    {
        var right = Placed(Arrangement.SingleSided, PoleSide.Right);
        Assert.Equal((50, -3, 103, 50), (Round(Plan(right[0]).XM), Round(Plan(right[0]).YM), Round(Plan(right[2]).XM), Round(Plan(right[2]).YM)));
        Assert.Equal([0, 315, 270], right.Select(p => Round(p.FacingDegrees) % 360));
    }

    [Fact]
    public void Staggered_poles_change_sides_and_opposite_ones_face_each_other()
    {
        Assert.Equal([PoleSide.Left, PoleSide.Right, PoleSide.Left], Placed(Arrangement.Staggered, PoleSide.Left).Select(p => p.Side));
        var pairs = Placed(Arrangement.Opposite, PoleSide.Left);
        Assert.Equal(6, pairs.Length);
        foreach (var pair in pairs.Chunk(2))
        {
            Assert.Equal(180, Math.Abs(pair[0].FacingDegrees - pair[1].FacingDegrees), 0.01);
            Assert.Equal(pair[0].AlongM, pair[1].AlongM);
        }

        // across the bend 3 m from both legs either way: twice the square root of two times 3 m apart
        Assert.Equal(2 * 3 * Math.Sqrt(2), Geodesic.Between(pairs[2].Point, pairs[3].Point).LengthM, 0.01);
    }

    [Fact]
    public void A_pole_that_would_stand_on_the_other_leg_is_said()
    {
        // even places: two metres before the bend on its inside the road beyond is one metre away from its edge
        var plan = new LinePlan(3, Arrangement.SingleSided, 3, 6, [], PoleSide.Left) { PlacesM = [50, 98, 150] };
        Assert.StartsWith("stands too near", PolePositions.Along(Road, plan)[1].Remark, StringComparison.Ordinal);
    }

    private static int Round(double value) => (int)Math.Round(value);

    private static PlanPoint Plan(PolePosition pole) => Frame.ToPlan(pole.Point);

    private static ImmutableArray<PolePosition> Placed(Arrangement arrangement, PoleSide side) =>
        PolePositions.Along(Road, new LinePlan(arrangement == Arrangement.Opposite ? 6 : 3, arrangement, 3, 6, [], side) { PlacesM = [50, 100, 150] });
}
