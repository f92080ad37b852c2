using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class AnchorBoltsTests
{
    // ISO 898-1 nominal stress areas (from memory), against pi / 4 (d - 0.9382 p)^2 with the coarse pitch of ISO 261.
    [Theory]
    [InlineData(12, 1.75)]
    [InlineData(16, 2)]
    [InlineData(20, 2.5)]
    [InlineData(24, 3)]
    [InlineData(27, 3)]
    [InlineData(30, 3.5)]
    [InlineData(36, 4)]
    public void Stress_area(double diameterMm, double pitchMm) =>
        Assert.Equal(Math.PI / 4 * Math.Pow(diameterMm - 0.9382 * pitchMm, 2), AnchorBolts.TensileAreaMm2(diameterMm), 0.6);

    // Statics by hand: four bolts on a 283 mm circle, wind along the diagonal: 10 kNm / 0.283 m less a quarter of the weight.
    [Fact]
    public void Tension_on_the_diagonal() =>
        Assert.Equal(10_000 / 0.283 - 400, AnchorBolts.TensionN(10_000, 1600, 4, 283), 1e-6);

    [Fact]
    public void Weight_alone_pulls_no_bolt() => Assert.Equal(0, AnchorBolts.TensionN(0, 1600, 4, 283));

    // EN 1993-1-8 by hand (from memory): M20 of 4.6, 30 kN and 1 kN, 1.25: tension 30 / 70.56 = 0.425; shear 1 / 28.85 + 0.425 / 1.4 = 0.338.
    [Fact]
    public void Use_of_a_bolt()
    {
        Assert.Equal(30_000 / (0.9 * 400 * 245 / 1.25), AnchorBolts.UseFraction(30_000, 1000, 20, 400, 240, 1.25), 1e-9);
        Assert.Equal((10_000 / ((0.44 - 0.072) * 400 * 245 / 1.25)) + (30_000 / (0.9 * 400 * 245 / 1.25) / 1.4), AnchorBolts.UseFraction(30_000, 10_000, 20, 400, 240, 1.25), 1e-9);
    }

    // By hand: 25 kN over pi x 20 mm x 1.2 MPa; sqrt(3 x 25 kN x 1.1 / 235 MPa).
    [Fact]
    public void Bond_and_plate()
    {
        Assert.Equal(25_000 / (Math.PI * 20 * 1.2) / 1000, AnchorBolts.BondLengthM(25_000, 20, 1.2), 1e-12);
        Assert.Equal(18.7, AnchorBolts.PlateMm(25_000, 235, 1.1), 0.05);
    }

    [Fact]
    public void Unknown_bolt_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => AnchorBolts.TensileAreaMm2(17));
}
