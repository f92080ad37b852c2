using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class DragCoefficientsTests
{
    // AASHTO LTS (from memory).
    [Theory]
    [InlineData(1, 1.12)]
    [InlineData(2, 1.19)]
    [InlineData(5, 1.20)]
    public void Flat_panel(double aspect, double expected) => Assert.Equal(expected, DragCoefficients.FlatPanel(aspect), 1e-12);

    // AASHTO LTS (from memory): 1.10 subcritical, 0.45 supercritical, and no jump between the branches beyond the table's rounding.
    [Fact]
    public void Smooth_round_pole()
    {
        Assert.Equal(1.10, DragCoefficients.SmoothRoundPole(0.1, 30));
        Assert.Equal(0.45, DragCoefficients.SmoothRoundPole(0.3, 50));
        Assert.Equal(1.10, DragCoefficients.SmoothRoundPole(1, 5.3301), 0.005);
        Assert.Equal(0.45, DragCoefficients.SmoothRoundPole(1, 10.6599), 0.005);
    }

    // EN 1991-1-4 figure 7.28 (from memory): Re 3.7e5 on k / b of 0.0014; recomputed by hand 0.798.
    [Fact]
    public void Galvanised_cylinder()
    {
        Assert.Equal(0.798, DragCoefficients.GalvanisedCylinder(0.14, 40), 0.002);
        Assert.Equal(1.2, DragCoefficients.GalvanisedCylinder(0.06, 20), 1e-12);
    }

    // EN 1991-1-4 table 7.6 without obstruction (from memory) times the sine of the tilt; a module on edge is a flat plate.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(15, 0.2847)]
    [InlineData(30, 0.9)]
    [InlineData(90, 1.2)]
    public void Tilted_module(double tilt, double expected) => Assert.Equal(expected, DragCoefficients.TiltedModule(tilt), 0.0005);

    [Fact]
    public void Tilted_module_never_falls_with_the_tilt()
    {
        for (var tilt = 0; tilt < 90; tilt++)
            Assert.True(DragCoefficients.TiltedModule(tilt + 1) >= DragCoefficients.TiltedModule(tilt));
    }
}
