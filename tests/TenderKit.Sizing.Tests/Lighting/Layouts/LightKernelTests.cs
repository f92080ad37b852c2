using System.Collections.Immutable;
using CsCheck;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class LightKernelTests
{
    private static readonly Gen<LuminairePosition> Luminaires =
        Gen.Select(Gen.Double[-30, 30], Gen.Double[-30, 30], Gen.Double[2, 12], Gen.Double[-360, 720], Gen.Double[0, 40]).Select(
            (x, y, h, facing, tilt) => new LuminairePosition(x, y, h, facing, tilt));

    private static readonly Gen<LightPoint> Points = Gen.Select(Gen.Double[-60, 60], Gen.Double[-60, 60]).Select((x, y) => new LightPoint(x, y, 0));

    public static TheoryData<string> Tables => ["even", "uneven with a common step", "no common step", "full sphere", "two planes"];

    private static LightDistribution Table(string name) => name switch
    {
        "even" => Smooth(90, 5, 2.5),
        "uneven with a common step" => Uneven([0, 10, 15, 40, 90, 100, 180, 260, 300, 360], [0, 2.5, 5, 20, 45, 60, 62.5, 65, 80, 90]),
        "no common step" => Uneven([0, 10.0000123, 90, 200, 360], [0, 33.3333333333, 66.6666666666, 90 - 1e-6, 90]),
        "full sphere" => Smooth(180, 15, 7.5),
        _ => Uneven([0, 360], [0, 45, 90]),
    };

    /// <summary>One value straight down, whatever the plane: there a plane means nothing, and rounding would choose it.</summary>
    private static LightDistribution Smooth(double lastGamma, double planeStep, double gammaStep) => Distributions.Of(
        lastGamma, (c, g) => 200 + g + (100 * Math.Sin(g * Math.PI / 180) * Math.Sin((c + 20) * Math.PI / 180)), planeStep, gammaStep);

    private static LightDistribution Uneven(ImmutableArray<double> planes, ImmutableArray<double> gammas)
    {
        // any values will do, one for straight down and zero at the last gamma so that no jump lies within rounding of a point
        var values = planes.SelectMany((_, i) => gammas.Select((g, j) => g is 0 ? 60 : g >= 90 ? 0 : 50.0 + (37 * ((i * 7 % 5) + (j * 3 % 4))))).ToArray();
        values.AsSpan(0, gammas.Length).CopyTo(values.AsSpan(values.Length - gammas.Length));
        return new LightDistribution(planes, gammas, [.. values], null, null);
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Equals_the_plain_sum(string name)
    {
        var d = Table(name);
        Gen.Select(Luminaires.Array[1, 6], Points.Array[1, 300]).Sample(
            (luminaires, points) =>
            {
                var expected = ScalarLight.At(d, luminaires, points, 0.8);
                var lit = Illuminance.AtPoints(d, luminaires, points, 0.8);
                return points.Select((_, i) => i).All(i => Math.Abs(lit[i].IlluminanceLx - expected[i]) <= 1e-9 * Math.Max(expected[i], 1e-3));
            },
            iter: 20);
    }

    [Fact]
    public void Road_equals_the_plain_sum() =>
        Gen.Select(Gen.Double[3, 12], Gen.Double[5, 60], Gen.Double[2, 14], Gen.Double[-2, 2], Gen.Double[0, 20], Gen.Enum<Arrangement>()).Sample(
            (h, s, w, overhang, tilt, arrangement) =>
            {
                var d = Distributions.Skewed(3000, 0.5, 0.3);
                var road = new RoadLayout(w, s, h, overhang, tilt, arrangement);
                var result = Illuminance.OnRoad(d, road, 0.9);
                var expected = ScalarLight.OnRoad(d, road, result.Points, 0.9);
                return Enumerable.Range(0, expected.Length).All(i => Math.Abs(result.Points[i].IlluminanceLx - expected[i]) <= 1e-9 * expected[i]);
            },
            iter: 60);

    [Fact]
    public void A_point_does_not_depend_on_its_neighbours() => Gen.Select(Luminaires.Array[1, 5], Points.Array[1, 30]).Sample((luminaires, points) =>
    {
        var d = Smooth(90, 5, 2.5);
        var together = Illuminance.AtPoints(d, luminaires, points, 0.8);
        return points.Select((p, i) => Illuminance.AtPoints(d, luminaires, [p], 0.8)[0] == together[i]).All(same => same);
    });

    [Fact]
    public void No_points_no_light_no_luminaires_dark()
    {
        var d = Distributions.Lambertian(1000);
        Assert.Empty(Illuminance.AtPoints(d, [new LuminairePosition(0, 0, 5, 90, 0)], [], 1));
        Assert.Equal(0, Illuminance.AtPoints(d, [], [new LightPoint(1, 1, 7)], 1)[0].IlluminanceLx);
    }

    [Fact]
    public void Straight_below_and_level_with_the_axes()
    {
        // where one or both components of the direction are exactly zero
        var d = Smooth(90, 5, 2.5);
        LightPoint[] points = [new(0, 0, 0), new(5, 0, 0), new(-5, 0, 0), new(0, 5, 0), new(0, -5, 0), new(5, 5, 0), new(-5, -5, 0)];
        LuminairePosition[] luminaires = [new(0, 0, 5, 90, 0)];
        var expected = ScalarLight.At(d, luminaires, points, 1);
        var lit = Illuminance.AtPoints(d, luminaires, points, 1);
        for (var i = 0; i < points.Length; i++) Assert.Equal(expected[i], lit[i].IlluminanceLx, 1e-9 * expected[i]);
    }

    [Fact]
    public void Bits_are_those_of_any_machine()
    {
        // fixed on one machine and compared on every other: the lanes use only operations whose bits IEEE 754 fixes; facing 0, no tilt and
        // a table without trigonometry keep the standard library's sines out of it
        var d = Distributions.Of(90, (c, g) => 90 - g + (c < 180 ? c : 360 - c), 30, 10);
        LightPoint[] points = [new(1, 2, 0), new(7, -3, 0), new(-4, 11, 0), new(-20, -0.5, 0), new(13, 13, 0)];
        var bits = Illuminance.AtPoints(d, [new LuminairePosition(0, 0, 6, 0, 0)], points, 1).Select(p => BitConverter.DoubleToInt64Bits(p.IlluminanceLx));
        Assert.Equal(KnownBits, bits);
    }

    private static readonly long[] KnownBits =
        [4617424164548328061, 4604403646498705381, 4602561757395447172, 4589659016859659271, 4593743075402303871];
}
