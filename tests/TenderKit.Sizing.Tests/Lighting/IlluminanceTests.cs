using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class IlluminanceTests
{
    private static double AtOnePoint(LightDistribution distribution, double heightM, double asideM) => Illuminance.AtPoints(
        distribution, [new LuminairePosition(0, 0, heightM, 90, 0)], [new LightPoint(asideM, 0, 0)], 1)[0].IlluminanceLx;

    [Theory]
    [InlineData(25, 10)] // grid rules of EN 13201-3, from memory
    [InlineData(30, 10)]
    [InlineData(40, 14)]
    [InlineData(30.5, 11)]
    public void Points_along(double spacingM, int expected) => Assert.Equal(expected, RoadGrid.PointsAlong(spacingM));

    [Theory]
    [InlineData(3, 3)] // grid rules of EN 13201-3, from memory
    [InlineData(8, 6)]
    [InlineData(4.5, 3)]
    [InlineData(6, 4)]
    public void Points_across(double widthM, int expected) => Assert.Equal(expected, RoadGrid.PointsAcross(widthM));

    [Fact]
    public void First_point_lies_half_a_step_in()
    {
        var result = Illuminance.OnRoad(Distributions.Lambertian(1000), new RoadLayout(8, 25, 8, 0, 0, Arrangement.SingleSided), 1);
        Assert.Equal(1.25, result.Points[0].XM, 1e-12);
        Assert.Equal(8 / 12.0, result.Points[0].YM, 1e-12);
        Assert.Equal(60, result.Points.Length);
        Assert.Equal(result.Points[0].YM, result.Points[9].YM);
    }

    [Theory]
    [InlineData(5.4, 0.60, 0, 15.0, 0.01)] // school photometry exercise, read: 15 lx at 0.60 m, I 5.4 cd
    [InlineData(5.4, 0.60, 0.80, 3.24, 0.01)] // the same, 0.80 m aside
    [InlineData(40, 1, 1, 14.14, 0.005)] // school photometry exercise, read: 40 lx at 1 m
    [InlineData(100, 4, 3, 3.20, 0.005)] // read with a wrong print of 2.55 lx; 100 x 4 / 5^3 is 3.20
    public void Point_source_by_hand(double intensityCd, double heightM, double asideM, double expectedLx, double tolerance) =>
        Assert.Equal(expectedLx, AtOnePoint(Distributions.Isotropic(4 * Math.PI * intensityCd), heightM, asideM), tolerance);

    [Theory]
    [InlineData(0, 88.42)] // CIE 171:2006 style case, recomputed; one print gives 75.45, 52.15, 31.83, 11.68 for some of them
    [InlineData(1, 75.49)]
    [InlineData(2, 50.93)]
    [InlineData(3, 31.26)]
    [InlineData(4, 19.10)]
    [InlineData(5, 12.04)]
    public void Isotropic_source_at_three_metres(double asideM, double expectedLx) =>
        Assert.Equal(expectedLx, AtOnePoint(Distributions.Isotropic(10_000), 3, asideM), 0.005);

    [Fact]
    public void Lambertian_source() =>
        // recomputed: I0 = flux / pi, 1500 lm, 4 m up, 2 m aside
        Assert.Equal(19.10, AtOnePoint(Distributions.Lambertian(1500), 4, 2), 0.01);

    [Theory]
    [InlineData(false, 3000, 5.627, 1.920, 14.27, 0.341)] // recomputed independently: EN grid, 5 H cut, bilinear
    [InlineData(true, 5000, 3.195, 1.656, 6.285, 0.518)]
    public void Whole_road(bool isotropic, double fluxLm, double averageLx, double minimumLx, double maximumLx, double uniformity)
    {
        var d = isotropic ? Distributions.Isotropic(fluxLm) : Distributions.Lambertian(fluxLm);
        var result = Illuminance.OnRoad(d, new RoadLayout(7, 25, 8, 0, 0, Arrangement.SingleSided), 1);
        Assert.Equal(averageLx, result.AverageLx, 0.01 * averageLx);
        Assert.Equal(minimumLx, result.MinimumLx, 0.02 * minimumLx);
        Assert.Equal(maximumLx, result.MaximumLx, 0.02 * maximumLx);
        Assert.Equal(uniformity, result.OverallUniformity, 0.01);
    }

    [Fact]
    public void Opposite_is_twice_single_sided() => Gen.Select(Gen.Double[4, 12], Gen.Double[10, 60], Gen.Double[3, 12]).Sample((h, s, w) =>
    {
        var (single, both) = (Average(Arrangement.SingleSided, h, s, w), Average(Arrangement.Opposite, h, s, w));
        return Math.Abs(both - (2 * single)) < 1e-9 * both;
    });

    [Fact]
    public void Staggered_is_twice_single_sided_but_for_where_the_grid_samples() =>
        Gen.Select(Gen.Double[4, 12], Gen.Double[2, 4], Gen.Double[3, 12]).Sample((h, ratio, w) =>
        {
            var (single, both) = (Average(Arrangement.SingleSided, h, ratio * h, w), Average(Arrangement.Staggered, h, ratio * h, w));
            return Math.Abs(both - (2 * single)) < 0.01 * both;
        });

    [Fact]
    public void Linear_in_flux_and_maintenance() => Gen.Select(Gen.Double[0.1, 10], Gen.Double[0.3, 1], Gen.Double[0, 20]).Sample((k, mf, tilt) =>
    {
        var d = Distributions.Skewed(2000, 0.4, 0.2);
        var layout = new RoadLayout(6, 30, 7, 0.5, tilt, Arrangement.SingleSided);
        var one = Illuminance.OnRoad(d, layout, 1);
        var other = Illuminance.OnRoad(d.Scaled(k), layout, mf);
        return Math.Abs(other.AverageLx - (one.AverageLx * k * mf)) < 1e-9 * other.AverageLx
            && Math.Abs(other.MinimumLx - (one.MinimumLx * k * mf)) < 1e-9 * other.AverageLx;
    });

    [Fact]
    public void More_flux_is_never_less_light() => Gen.Select(Gen.Double[0, 90], Gen.Double[0, 360], Gen.Double[0, 500]).Sample((gamma, plane, extraCd) =>
    {
        var layout = new RoadLayout(6, 30, 7, 0.5, 10, Arrangement.Staggered);
        var plain = Illuminance.OnRoad(Distributions.Lambertian(2000), layout, 0.8);
        var more = Illuminance.OnRoad(
            Distributions.Of(90, (c, g) => (2000 / Math.PI * Math.Cos(g * Math.PI / 180)) + (Math.Abs(g - gamma) < 10 && Math.Abs(c - plane) < 20 ? extraCd : 0)),
            layout,
            0.8);
        return plain.Points.Zip(more.Points).All(p => p.Second.IlluminanceLx >= p.First.IlluminanceLx - 1e-9);
    });

    [Fact]
    public void Under_the_pole_light_falls_with_the_square_of_height() => Gen.Double[2, 20].Sample(h =>
        Math.Abs((AtOnePoint(Distributions.Lambertian(2000), h, 0) * h * h) - (2000 / Math.PI)) < 1e-6);

    [Fact]
    public void Tilt_turns_the_frame()
    {
        // a narrow beam straight down, tilted by 30 degrees, lands H tan 30 ahead; 20 degrees towards C 0 it would be elsewhere
        var beam = Distributions.Of(90, (_, g) => g <= 5 ? 1000 * (1 - (g / 5)) : 0);
        var ahead = 6 * Math.Tan(Math.PI / 6);
        var lit = Illuminance.AtPoints(
            beam, [new LuminairePosition(0, 0, 6, 90, 30)], [new LightPoint(0, ahead, 0), new LightPoint(0, 0, 0), new LightPoint(ahead, 0, 0)], 1);
        Assert.Equal(1000 * Math.Pow(Math.Cos(Math.PI / 6), 3) / 36, lit[0].IlluminanceLx, 1e-3);
        Assert.Equal(0, lit[1].IlluminanceLx);
        Assert.Equal(0, lit[2].IlluminanceLx);
    }

    [Theory]
    [InlineData(90, 0, 3)] // facing across: the street side lies towards +y
    [InlineData(270, 0, -3)]
    [InlineData(0, 3, 0)]
    [InlineData(180, -3, 0)]
    public void Street_side_is_where_the_luminaire_faces(double facing, double brightX, double brightY)
    {
        var d = Distributions.Skewed(1000, 0.8, 0);
        LuminairePosition[] at = [new(0, 0, 4, facing, 0)];
        var lit = Illuminance.AtPoints(d, at, [new LightPoint(brightX, brightY, 0), new LightPoint(-brightX, -brightY, 0)], 1);
        Assert.Equal(9, lit[0].IlluminanceLx / lit[1].IlluminanceLx, 1e-6); // (1 + 0.8) / (1 - 0.8)
    }

    [Fact]
    public void Yard_is_the_sum_of_its_luminaires()
    {
        var d = Distributions.Skewed(4000, 0.5, 0.1);
        var yard = new YardLayout(40, 20, 2, true, 8, 0.5, 5);
        var positions = Illuminance.PositionsOf(yard);
        Assert.Equal([10, 30, 10, 30], positions.Select(p => p.XM));
        Assert.Equal([0.5, 0.5, 19.5, 19.5], positions.Select(p => p.YM));
        var result = Illuminance.OnYard(d, yard, 0.8);
        var alone = positions.Select(p => Illuminance.AtPoints(d, [p], result.Points.AsSpan(), 0.8)).ToList();
        for (var i = 0; i < result.Points.Length; i++)
        {
            Assert.Equal(alone.Sum(a => a[i].IlluminanceLx), result.Points[i].IlluminanceLx, 1e-9);
        }

        // d 40 m: p = 0.2 x 5^(log10 40) = 2.63 m gives 16 along; across the road grid, 1.5 m, is the finer
        Assert.Equal((16, 14), (result.PointsAlong, result.PointsAcross));
    }

    [Fact]
    public void Long_yard_reaches_the_endless_road_in_its_middle()
    {
        var d = Distributions.Lambertian(3000);
        var yard = Illuminance.OnYard(d, new YardLayout(630, 7, 21, false, 8, 0, 0), 1);
        var road = Illuminance.OnRoad(d, new RoadLayout(7, 30, 8, 0, 0, Arrangement.SingleSided), 1);
        var middle = yard.Points.Where(p => p.XM is > 165 and < 465).ToList(); // ten whole bays: the grid of a yard does not divide one bay evenly
        Assert.Equal(road.AverageLx, middle.Average(p => p.IlluminanceLx), 0.01 * road.AverageLx);
    }

    [Theory]
    [InlineData(Arrangement.SingleSided, 20)]
    [InlineData(Arrangement.Opposite, 40)]
    [InlineData(Arrangement.Staggered, 40)]
    public void Line_reaches_the_endless_road_in_its_middle_and_is_darker_at_its_ends(Arrangement arrangement, int poles)
    {
        // 30 m apart on one side, 600 m long; at a free end the far corner, 13.5 m along and 4.75 m across from its pole, lacks the light of
        // the next pole 16.5 m along: by hand (1 + (240.8 / 330.8)^1.5)^-1 = 0.617 of the endless road, constant intensity to 75 degrees
        var d = Distributions.Of(90, (_, g) => g < 75 ? 500 : 0);
        var layout = new RoadLayout(6, 30, 6, 0.5, 0, arrangement);
        var road = Illuminance.OnRoad(d, layout, 1);
        var line = Illuminance.OnLine(d, layout, 600, poles, 1);
        var firstX = arrangement == Arrangement.Staggered ? 307.5 : 315;
        var middle = line.Points.Where(p => p.XM > firstX - 0.1 && p.XM < firstX + 29.9).ToList();
        Assert.Equal(road.Points.Length, middle.Count);
        Assert.Equal(road.AverageLx, middle.Average(p => p.IlluminanceLx), 0.01 * road.AverageLx);
        if (arrangement == Arrangement.SingleSided) Assert.Equal(0.617, line.MinimumLx / road.MinimumLx, 1e-3);
        Assert.True(line.MinimumLx < road.MinimumLx);
    }

    [Fact]
    public void One_pole_alone_is_its_own_light()
    {
        var d = Distributions.Skewed(3000, 0.4, 0);
        var line = Illuminance.OnLine(d, new RoadLayout(5, 30, 6, 0.5, 0, Arrangement.SingleSided), 30, 1, 1);
        var pole = Illuminance.AtPoints(d, [new LuminairePosition(15, 0.5, 6, 90, 0)], line.Points.AsSpan(), 1);
        Assert.Equal(pole.AsEnumerable(), line.Points);
    }

    [Fact]
    public void Impossible_layouts_are_the_callers_fault()
    {
        var d = Distributions.Lambertian(1000);
        Assert.Throws<ArgumentOutOfRangeException>(() => Illuminance.OnRoad(d, new RoadLayout(0, 25, 8, 0, 0, Arrangement.SingleSided), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Illuminance.OnRoad(d, new RoadLayout(5, double.NaN, 8, 0, 0, Arrangement.SingleSided), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Illuminance.OnRoad(d, new RoadLayout(5, 25, 8, 0, 0, Arrangement.SingleSided), 1.2));
    }

    private static double Average(Arrangement arrangement, double heightM, double spacingM, double widthM) =>
        Illuminance.OnRoad(Distributions.Skewed(2000, 0.4, 0), new RoadLayout(widthM, spacingM, heightM, 0.3, 5, arrangement), 1).AverageLx;
}
