using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Tests.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class HeadingsTests
{
    // by hand: looking north, poles on the left (west) reach to the right (east)
    [Theory]
    [InlineData(0, RoadSide.Left, new[] { 90.0 })]
    [InlineData(0, RoadSide.Right, new[] { 270.0 })]
    [InlineData(300, RoadSide.Left, new[] { 30.0 })]
    [InlineData(30, RoadSide.Both, new[] { 120.0, 300.0 })]
    public void Arms_reach_across_the_road(double bearing, RoadSide side, double[] headings) => Assert.Equal(headings, Headings.OfRoad(bearing, side));

    [Fact]
    public void Unknown_bearings_are_tried_all_round() => Assert.Equal([0.0, 45, 90, 135, 180, 225, 270, 315], Headings.OfRoad(null, RoadSide.Left).AsEnumerable());

    // by hand: tilts about one axis add up; leaning back over the pole turns the facing round
    [Theory]
    [InlineData(90, 5, 20, 15, 90)]
    [InlineData(90, 5, 0, 5, 270)]
    [InlineData(300, 10, -5, 15, 120)]
    [InlineData(45, 10, 10, 0, 45)]
    public void Planes(double heading, double arm, double module, double tilt, double azimuth) =>
        Assert.Equal(new PlaneOrientation(tilt, azimuth), Headings.PlaneOf(heading, arm, module));

    [Theory]
    [InlineData(35, 180)]
    [InlineData(-35, 0)]
    public void Outside_the_tropics_the_best_heading_is_to_the_equator_and_the_worst_away_from_it(double latitude, double equator)
    {
        var study = Study(latitude, 25);
        Assert.Equal(8, study.Headings.Length);
        Assert.Equal(equator, study.Headings.MinBy(h => h.Result.LossOfLoadFraction)!.Plane.AzimuthDegrees);
        Assert.Equal(180 - equator, study.Worst.Plane.AzimuthDegrees);
        Assert.All(study.Headings, h => Assert.True(h.Result.LossOfLoadFraction <= study.Worst.Result.LossOfLoadFraction));
    }

    [Fact]
    public void A_flat_module_faces_nowhere()
    {
        var study = Study(20, 0);
        Assert.All(study.Headings, h => Assert.Equal(study.Worst.Result.Ledger.InWh, h.Result.Ledger.InWh, 1e-6 * h.Result.Ledger.InWh));
    }

    [Fact]
    public void No_plane_is_a_mistake() => Assert.Throws<ArgumentException>(() =>
        HeadingStudy.Run(Systems.NoonSun(1, _ => 1).Weather, Systems.OneHour, new PowerSystem(Systems.Array(50), Systems.Lithium(300), Systems.Tracking, 10), []));

    private static HeadingStudy Study(double latitude, double tilt)
    {
        var hours = SyntheticYears.Generate(Climates.Constant(latitude, 0.5), new SequenceSettings(2, 1, 0.29, 0.08), 1);
        var system = new PowerSystem(Systems.Array(90), Systems.Lithium(500), Systems.Tracking, 15);
        return HeadingStudy.Run(hours, Systems.AllNight(latitude), system, Headings.PlanesOf(null, RoadSide.Both, 0, tilt));
    }
}
