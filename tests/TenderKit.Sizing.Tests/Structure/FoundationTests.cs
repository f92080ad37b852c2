using CsCheck;
using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class FoundationTests
{
    private const double PoundN = 4.4482216;
    private const double FootM = 0.3048;
    private const double PsfPerFtKPaPerM = 0.04788026 / 0.3048;

    // Statics by hand: 1.2 m cube of 24 kN/m3 weighs 41.472 kN, with 1.5 kN of pole 42.972 kN; 42.972 x 0.6 over 10 + 2 x 1.2.
    [Fact]
    public void Block_by_hand()
    {
        var result = Foundation.Block(new(1.2, 1.2, 1.2), 2000, 10_000, 1500, 24);
        Assert.Equal(42.972 * 0.6 / 12.4, result.OverturningSafetyFactor, 1e-9);
        Assert.Equal(2 * 42.972 / (3 * 1.2 * (0.6 - 12.4 / 42.972)), result.GroundPressureKPa, 1e-9);
        Assert.Equal(1.728, result.ConcreteM3, 1e-9);
        Assert.Equal(1.728, result.ExcavationM3, 1e-9);
    }

    // Statics: without moment the pressure is N / A, at the edge of the kern twice that.
    [Fact]
    public void Ground_pressure_inside_the_kern()
    {
        const double weight = 1.0 * 1.0 * 1.0 * 24;
        Assert.Equal(weight, Foundation.Block(new(1, 1, 1), 0, 0, 0, 24).GroundPressureKPa, 1e-9);
        Assert.Equal(2 * weight, Foundation.Block(new(1, 1, 1), 0, weight * 1000 / 6, 0, 24).GroundPressureKPa, 1e-6);
        Assert.True(double.IsPositiveInfinity(Foundation.Block(new(1, 1, 1), 0, weight * 1000 / 2, 0, 24).GroundPressureKPa));
    }

    [Fact]
    public void The_shorter_side_governs() =>
        Assert.Equal(
            Foundation.Block(new(1.5, 1.0, 1), 1000, 6000, 1500, 24).OverturningSafetyFactor,
            Foundation.Block(new(1.0, 1.5, 1), 1000, 6000, 1500, 24).OverturningSafetyFactor);

    [Fact]
    public void A_submerged_block_is_lighter()
    {
        var dry = Foundation.Block(new(1.2, 1.2, 1.2), 2000, 10_000, 0, 24);
        var wet = Foundation.Block(new(1.2, 1.2, 1.2), 2000, 10_000, 0, 24, submerged: true);
        Assert.Equal(dry.OverturningSafetyFactor * (24 - 9.81) / 24, wet.OverturningSafetyFactor, 1e-9);
    }

    // Christy, Engineering with the Spreadsheet (ASCE 2006), read; recomputed 5.016 and 3.194 ft.
    [Fact]
    public void Embedded_pole_of_a_handbook()
    {
        const double force = 510 * PoundN;
        Assert.Equal(5.02, Foundation.EmbeddedDepthM(force, 4 * FootM, FootM, 266 * PsfPerFtKPaPerM) / FootM, 0.005);
        Assert.Equal(3.19, Foundation.ConstrainedDepthM(force, 4 * FootM, FootM, 266 * PsfPerFtKPaPerM) / FootM, 0.005);
    }

    // Published example, read: 30 000 lbf, 3 ft, 4.5 ft wide, 350 pcf doubled, constrained: S3 166.0 kPa, d 1.509 m.
    [Fact]
    public void Constrained_pole_of_a_published_example()
    {
        const double bearing = 2 * 350 * PsfPerFtKPaPerM;
        var depth = Foundation.ConstrainedDepthM(30_000 * PoundN, 3 * FootM, 4.5 * FootM, bearing);
        Assert.Equal(1.509, depth, 0.0005);
        Assert.Equal(166.0, bearing * depth, 0.1);
    }

    // Recomputed: 650 lb, 24 ft, 2 ft: nonconstrained at 200 and 400 psf/ft, constrained at 200.
    [Fact]
    public void Embedded_pole_recomputed()
    {
        const double force = 650 * PoundN;
        Assert.Equal(7.250, Foundation.EmbeddedDepthM(force, 24 * FootM, 2 * FootM, 200 * PsfPerFtKPaPerM) / FootM, 0.0005);
        Assert.Equal(5.662, Foundation.EmbeddedDepthM(force, 24 * FootM, 2 * FootM, 400 * PsfPerFtKPaPerM) / FootM, 0.0005);
        Assert.Equal(5.493, Foundation.ConstrainedDepthM(force, 24 * FootM, 2 * FootM, 200 * PsfPerFtKPaPerM) / FootM, 0.0005);
    }

    // IBC 1807.3.2: bearing grows no further than at 12 ft, so beyond it the depth grows faster than the cube root of the load.
    [Fact]
    public void Bearing_stops_growing_at_twelve_feet()
    {
        var shallow = Foundation.ConstrainedDepthM(50_000, 10, 1, 15.7);
        var deep = Foundation.ConstrainedDepthM(500_000, 10, 1, 15.7);
        Assert.True(deep > Foundation.DeepestBearingM && deep > shallow * Math.Cbrt(10));
    }

    // Relation: at the depth found, the formula gives that depth back; more force or weaker soil goes deeper, a constrained pole less deep.
    [Fact]
    public void Embedded_depth_is_a_fixed_point() =>
        Gen.Select(Gen.Double[100, 20_000], Gen.Double[0.5, 8], Gen.Double[0.2, 1], Gen.Double[10, 40]).Sample((force, h, b, bearing) =>
        {
            var d = Foundation.EmbeddedDepthM(force, h, b, bearing);
            var a = 2.34 * force / (bearing * 1000 * Math.Min(d, Foundation.DeepestBearingM) / 3 * b);
            return Math.Abs(d - a / 2 * (1 + Math.Sqrt(1 + 4.36 * h / a))) < 1e-6
                && Foundation.EmbeddedDepthM(force * 1.1, h, b, bearing) > d
                && Foundation.EmbeddedDepthM(force, h, b, bearing * 1.1) < d
                && Foundation.ConstrainedDepthM(force, h, b, bearing) < d;
        });

    // EN 40-2 planting depths (from memory, to be confirmed).
    [Theory]
    [InlineData(3, 0.6)]
    [InlineData(4, 0.8)]
    [InlineData(5, 0.8)]
    [InlineData(6, 1.0)]
    [InlineData(8, 1.2)]
    [InlineData(10, 1.5)]
    [InlineData(12, 1.7)]
    public void Planting_depth(double heightM, double expectedM) => Assert.Equal(expectedM, Foundation.PlantingDepthM(heightM));

    // IBC table 1806.2 classes 3, 4, 5 (from memory): psf and psf/ft in SI.
    [Theory]
    [InlineData("dense", 200, 3000)]
    [InlineData("Medium", 150, 2000)]
    [InlineData("soft", 100, 1500)]
    [InlineData("", 100, 1500)]
    public void Soil_classes(string name, double psfPerFt, double psf)
    {
        var soil = SoilClasses.Find(name);
        Assert.NotNull(soil);
        Assert.Equal(psfPerFt * PsfPerFtKPaPerM, soil.LateralBearingKPaPerM, 0.05);
        Assert.Equal(psf * 0.04788026, soil.BearingKPa, 0.05);
    }

    [Fact]
    public void Unknown_soil_name_is_not_guessed() => Assert.Null(SoilClasses.Find("rocky"));
}
