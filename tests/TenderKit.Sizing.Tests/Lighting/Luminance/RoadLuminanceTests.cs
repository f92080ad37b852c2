using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

public class RoadLuminanceTests
{
    /// <summary>Poles so far apart that a point sees one luminaire: 1000 cd all round, 8 m up, on one lane of 4 m.</summary>
    private static Field OnePole(double rowYM)
    {
        var section = new RoadSection(4, 1, 120, [new LuminaireRow(rowYM, 8, 90, 0, 0)], null, [], []);
        var observer = Roads.Quality(Distributions.Isotropic(4000 * Math.PI), section, 1).Carriageway.Luminance!.Observers[0];
        return new(observer);
    }

    [Fact]
    public void One_luminaire_straight_ahead_by_hand() =>
        // tan 58.5/8 = 7.3125, beta 0: r = 95 - 0.625 x 8 = 90 (x 10^-4); 1000 x 0.0090 / 64
        Assert.Equal(0.140625, OnePole(2).At(61.5, 2), 1e-9);

    [Fact]
    public void One_luminaire_to_the_side_by_hand() =>
        // 1.5 m on, 4 m aside: tan 0.53400, beta 69.444 degrees: r = 215.64 (x 10^-4); 1000 x 0.021564 / 64
        Assert.Equal(0.33694, OnePole(-2).At(118.5, 2), 2e-5);

    [Fact]
    public void Luminaires_count_twelve_heights_ahead_and_five_behind()
    {
        var pole = OnePole(2);
        Assert.Equal(Alone(97.5, 22.5), pole.At(22.5, 2), 1e-12); // 97.5 m to the next (past 96 m), 22.5 m behind
        Assert.Equal(Alone(null, 34.5) + Alone(85.5, null), pole.At(34.5, 2), 1e-9); // both
        Assert.Equal(Alone(70.5, null), pole.At(49.5, 2), 1e-9); // 49.5 m behind is past 40 m
    }

    [Fact]
    public void Diffuse_surface_is_its_coefficient_times_the_illuminance()
    {
        var section = Roads.Section(30, arrangement: Arrangement.Opposite);
        var quality = RoadEvaluation.Of(Distributions.Lambertian(5000), section, RoadSurfaceTests.Diffuse(0.08), 0.8).Carriageway;
        Assert.All(quality.Luminance!.Observers, o => Assert.Equal(0.08 * quality.Illuminance.AverageLx, o.AverageCdM2, 0.01 * o.AverageCdM2));
        Assert.Equal(quality.Luminance.Observers[0].AverageCdM2, quality.Luminance.Observers[1].AverageCdM2, 1e-12);
    }

    [Fact]
    public void Observers_stand_in_each_lane_and_the_worst_counts()
    {
        var luminance = Roads.Quality(Roads.Beams(6000), Roads.Section(30, lanes: 3)).Carriageway.Luminance!;
        Assert.Equal([1, 2, 3], luminance.Observers.Select(o => o.Lane));
        Assert.All(luminance.Observers, o => Assert.Equal(90, o.Points.Length));
        Assert.Equal(luminance.Observers.Min(o => o.AverageCdM2), luminance.AverageCdM2);
        Assert.Equal(luminance.Observers.Min(o => o.MinimumCdM2 / o.AverageCdM2), luminance.OverallUniformity);
        Assert.Equal(luminance.Observers.Min(o => o.LongitudinalUniformity), luminance.LongitudinalUniformity);
        Assert.True(luminance.Observers.Select(o => o.AverageCdM2).Distinct().Count() == 3);
    }

    [Fact]
    public void Longitudinal_uniformity_is_of_the_centre_line()
    {
        var observer = Roads.Quality(Roads.Beams(6000), Roads.Section(36)).Carriageway.Luminance!.Observers[1];
        var centre = observer.Points.Where(p => Math.Abs(p.YM - 5.25) < 1e-9).Select(p => p.LuminanceCdM2).ToList();
        Assert.Equal(12, centre.Count);
        Assert.Equal(centre.Min() / centre.Max(), observer.LongitudinalUniformity, 1e-12);
    }

    [Fact]
    public void Linear_in_flux_and_maintenance()
    {
        var section = Roads.Section(28);
        var one = Roads.Quality(Roads.Beams(4000), section, 1).Carriageway.Luminance!;
        var scaled = Roads.Quality(Roads.Beams(8000), section, 0.7).Carriageway.Luminance!;
        Assert.Equal(1.4 * one.AverageCdM2, scaled.AverageCdM2, 1e-9);
        Assert.Equal(one.OverallUniformity, scaled.OverallUniformity, 1e-9);
        Assert.Equal(one.LongitudinalUniformity, scaled.LongitudinalUniformity, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void A_mirrored_road_gives_mirrored_results(double ahead)
    {
        var near = Roads.Section(33, lanes: 3) with { NearSidewalks = [new Sidewalk("footway", 2, null)] };
        var far = near with
        {
            Rows = [near.Rows[0] with { YM = near.WidthM - near.Rows[0].YM, FacingDegrees = 270 }],
            NearSidewalks = [],
            FarSidewalks = near.NearSidewalks,
        };
        var a = Roads.Quality(Roads.Beams(6000, ahead), near);
        var b = Roads.Quality(Roads.Reversed(6000, ahead), far);
        for (var lane = 0; lane < 3; lane++)
        {
            var (left, right) = (a.Carriageway.Luminance!.Observers[lane], b.Carriageway.Luminance!.Observers[2 - lane]);
            Assert.Equal(left.AverageCdM2, right.AverageCdM2, 1e-9);
            Assert.Equal(left.OverallUniformity, right.OverallUniformity, 1e-9);
            Assert.Equal(left.LongitudinalUniformity, right.LongitudinalUniformity, 1e-9);
        }

        Assert.Equal(a.Carriageway.Glare!.IncrementFraction, b.Carriageway.Glare!.IncrementFraction, 1e-9);
        Assert.Equal(a.Carriageway.EdgeRatio!.Value, b.Carriageway.EdgeRatio!.Value, 1e-9);
        Assert.Equal(a.Sidewalks[0].Illuminance.AverageLx, b.Sidewalks[0].Illuminance.AverageLx, 1e-9);
        Assert.Equal(a.Sidewalks[0].Spatial.MinimumSemicylindricalLx, b.Sidewalks[0].Spatial.MinimumSemicylindricalLx, 1e-9);
        Assert.Equal(a.Sidewalks[0].Glare!.IncrementFraction, b.Sidewalks[0].Glare!.IncrementFraction, 1e-9);
    }

    [Theory]
    [InlineData(Arrangement.SingleSided)]
    [InlineData(Arrangement.Staggered)]
    public void Against_the_road_is_along_it_with_the_luminaire_reversed(Arrangement arrangement)
    {
        var section = Roads.Section(33, arrangement: arrangement) with { BothDirections = true };
        // in a staggered layout the far row is turned by 180 degrees, so its beams swap as well
        var a = Roads.Quality(Roads.Beams(6000, 0.3), section).Carriageway;
        var b = Roads.Quality(Roads.Reversed(6000, 0.3), section).Carriageway;
        foreach (var against in a.Luminance!.Observers.Where(o => o.Against))
        {
            var along = b.Luminance!.Observers.Single(o => !o.Against && o.Lane == against.Lane);
            Assert.Equal(along.AverageCdM2, against.AverageCdM2, 1e-9);
            Assert.Equal(along.LongitudinalUniformity, against.LongitudinalUniformity, 1e-9);
        }

        Assert.Equal(a.Glare!.IncrementFraction, b.Glare!.IncrementFraction, 1e-9);
    }

    [Fact]
    public void Opposite_rows_serve_both_lanes_alike()
    {
        var luminance = Roads.Quality(Roads.Beams(6000), Roads.Section(30, arrangement: Arrangement.Opposite)).Carriageway.Luminance!;
        Assert.Equal(luminance.Observers[0].AverageCdM2, luminance.Observers[1].AverageCdM2, 1e-9);
        Assert.Equal(luminance.Observers[0].LongitudinalUniformity, luminance.Observers[1].LongitudinalUniformity, 1e-9);
    }

    [Fact]
    public void Illuminance_of_the_carriageway_is_that_of_the_road()
    {
        var layout = new RoadLayout(8, 40, 9, 1, 10, Arrangement.Staggered);
        var road = Illuminance.OnRoad(Roads.Beams(8000, 0.2), layout, 0.75);
        var strip = RoadEvaluation.Of(Roads.Beams(8000, 0.2), RoadSection.Of(layout, 2), null, 0.75).Carriageway;
        Assert.Equal(road.AverageLx, strip.Illuminance.AverageLx, 1e-9);
        Assert.Equal(road.MinimumLx, strip.Illuminance.MinimumLx, 1e-9);
        Assert.Equal(road.MaximumLx, strip.Illuminance.MaximumLx, 1e-9);
        Assert.Null(strip.Luminance);
        Assert.Null(strip.Glare);
    }

    [Fact]
    public void A_section_outside_its_ranges_is_refused()
    {
        var good = Roads.Section(30);
        var lamp = Distributions.Lambertian(1000);
        Assert.Throws<ArgumentOutOfRangeException>(() => Roads.Quality(lamp, good with { Lanes = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Roads.Quality(lamp, good with { Rows = [] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Roads.Quality(lamp, good, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Roads.Quality(lamp, good with { NearSidewalks = [new Sidewalk("verge", 0, null)] }));
    }

    /// <summary>Luminance by luminaires straight ahead and straight behind, 1000 cd, 8 m up.</summary>
    private static double Alone(double? aheadM, double? behindM)
    {
        var ahead = aheadM is { } a and <= 96 ? RoadSurface.R3.Coefficient(a / 8, 0) : 0;
        var behind = behindM is { } b and <= 40 ? RoadSurface.R3.Coefficient(b / 8, 180) : 0;
        return 1000 * (ahead + behind) / 64;
    }

    private sealed record Field(ObserverLuminance Observer)
    {
        public double At(double xM, double yM) => Observer.Points.Single(p => Math.Abs(p.XM - xM) < 1e-9 && Math.Abs(p.YM - yM) < 1e-9).LuminanceCdM2;
    }
}
