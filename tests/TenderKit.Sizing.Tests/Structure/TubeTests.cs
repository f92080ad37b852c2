using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class TubeTests
{
    // Recomputed: tube 160 x 4 mm, W 74.6 cm3.
    [Fact]
    public void Section_modulus() => Assert.Equal(74.6e3, Tube.SectionModulusMm3(160, 4), 50.0);

    // EN 10210-2 circular hollow section 114.3 x 4.0 (from memory): I 211 cm4, W 36.9 cm3, 10.9 kg/m.
    [Fact]
    public void Hollow_section_of_the_tables()
    {
        Assert.Equal(211e4, Tube.SecondMomentMm4(114.3, 4), 0.5e4);
        Assert.Equal(36.9e3, Tube.SectionModulusMm3(114.3, 4), 50.0);
        Assert.Equal(10.9, Tube.ShaftKg(new(1, 114.3, 114.3, 4, 235)), 0.05);
    }

    // Derived: without an opening the thin ring is pi R^2 t; the half ring's centroid lies 2 R / pi from the diameter, its
    // I about it is t R^3 (pi / 2 - 4 / pi), and its far fibre is the cut edge, 2 R / pi away.
    [Fact]
    public void Door_section_has_the_right_limits()
    {
        Assert.Equal(Math.PI * 78 * 78 * 4, Tube.DoorSectionModulusMm3(160, 4, 0), 1.0);
        var halfRing = 4 * Math.Pow(78, 3) * (Math.PI / 2 - 2 / (Math.PI / 2)) / (78 * (2 / Math.PI));
        Assert.Equal(halfRing, Tube.DoorSectionModulusMm3(160, 4, 156), halfRing * 1e-9);
    }

    [Fact]
    public void A_wider_door_always_weakens()
    {
        for (var w = 0; w < 150; w += 10)
            Assert.True(Tube.DoorSectionModulusMm3(160, 4, w + 10) < Tube.DoorSectionModulusMm3(160, 4, w));
    }
}
