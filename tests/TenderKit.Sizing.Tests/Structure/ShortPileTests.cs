using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class ShortPileTests
{
    // Broms (1964), recomputed: cu 50 kPa, D 0.5 m, L 2.0 m, e 6 m.
    [Fact]
    public void In_clay()
    {
        var result = ShortPile.InClay(50, 0.5, 2, 6);
        Assert.Equal(11_900, result.UltimateForceN, 5.0);
        Assert.Equal(0.053, result.ZeroShearDepthM, 0.0005);
        Assert.Equal(80_600, result.GreatestMomentNm, 50.0);
    }

    // Broms (1964), recomputed: 18 kN/m3, D 0.5 m, L 2 m, e 6 m, 30 degrees.
    [Fact]
    public void In_sand() => Assert.Equal(13_500, ShortPile.InSandN(18, 30, 0.5, 2, 6), 5.0);

    // Relation: the moment balance of the method holds at its own solution.
    [Fact]
    public void Moment_balance_in_clay()
    {
        var r = ShortPile.InClay(80, 0.4, 1.8, 5);
        var g = 1.8 - 1.5 * 0.4 - r.ZeroShearDepthM;
        Assert.Equal(2.25 * 80_000 * 0.4 * g * g, r.GreatestMomentNm, 1e-3);
    }
}
