using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class SwayTests
{
    // EN 40-3-1:2013, steel, read within 2 %.
    [Theory]
    [InlineData(0.13, 1.086)]
    [InlineData(0.20, 1.14)]
    [InlineData(0.54, 1.307)]
    public void Dynamic_factor(double periodS, double expected) => Assert.Equal(expected, Sway.DynamicFactor(periodS), 0.02 * expected);

    [Fact]
    public void A_slower_pole_never_has_a_smaller_factor()
    {
        for (var t = 0.0; t < 3; t += 0.05) Assert.True(Sway.DynamicFactor(t + 0.05) >= Sway.DynamicFactor(t));
    }

    // Closed form: a straight cantilever of its own mass sways with 2 pi / 1.875^2 sqrt(m H^4 / (E I)), m per metre; Rayleigh's quotient is within 2 %.
    [Fact]
    public void Straight_tube_alone()
    {
        var tube = new PoleShaft(6, 120, 120, 4, 235);
        var stiffness = Tube.SteelElasticityMPa * Tube.SecondMomentMm4(120, 4) * 1e-6;
        var exact = 2 * Math.PI / (1.8751 * 1.8751) * Math.Sqrt(Tube.ShaftKg(tube) / 6 * Math.Pow(6, 4) / stiffness);
        Assert.Equal(exact, Sway.PeriodS(tube, 0), 0.02 * exact);
    }

    // Closed form: a heavy head on a light straight tube, 2 pi sqrt(m H^3 / (3 E I)).
    [Fact]
    public void Heavy_head()
    {
        var tube = new PoleShaft(6, 120, 120, 4, 235);
        var stiffness = Tube.SteelElasticityMPa * Tube.SecondMomentMm4(120, 4) * 1e-6;
        Assert.Equal(2 * Math.PI * Math.Sqrt(1000 * 216 / (3 * stiffness)), Sway.PeriodS(tube, 1000), 0.01 * Sway.PeriodS(tube, 1000));
    }

    [Fact]
    public void A_heavier_head_sways_slower() => Assert.True(Sway.PeriodS(new(8, 160, 60, 4, 235), 30) > Sway.PeriodS(new(8, 160, 60, 4, 235), 20));
}
