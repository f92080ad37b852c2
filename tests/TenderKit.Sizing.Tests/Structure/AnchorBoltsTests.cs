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

    [Fact]
    public void Unknown_bolt_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => AnchorBolts.TensileAreaMm2(17));
}
