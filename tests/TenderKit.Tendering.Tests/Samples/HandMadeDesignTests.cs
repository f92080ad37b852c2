using Xunit;

namespace TenderKit.Tendering.Tests.Samples;

public class HandMadeDesignTests
{
    [Fact]
    public void The_small_tender_holds_three_sites_two_kits_and_two_lots()
    {
        var design = HandMadeDesign.Small();

        Assert.Equal(3, design.Sites.Length);
        Assert.Equal(2, design.Kits.Length);
        Assert.Equal(2, design.Sites.Select(s => s.Site.Lot).Distinct().Count());
        Assert.Equal(19, design.PoleCount);
        Assert.All(design.Sites.SelectMany(s => s.Checks), check => Assert.True(check.Complies, check.Id));
    }

    [Fact]
    public void Many_sites_spread_over_twelve_kits()
    {
        var design = HandMadeDesign.Many(1000);

        Assert.Equal(1000, design.Sites.Length);
        Assert.Equal(12, design.Kits.Select(k => k.Parts.Key).Distinct().Count());
        Assert.Equal(design.PoleCount, design.Kits.Sum(k => k.Poles));
    }
}
