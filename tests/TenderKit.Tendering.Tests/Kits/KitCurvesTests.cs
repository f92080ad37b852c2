using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Kits;

public sealed class KitCurvesTests
{
    [Fact]
    public void The_hardest_site_is_the_one_behind_the_least_margin_of_energy()
    {
        var design = HandMadeDesign.Small();
        var kit = design.Kits[0];
        var check = new Check("energy.dark_nights", "Energy", "dark nights", Comparison.AtMost, 1, 0.999, "nights", "test");
        var hard = kit with { Checks = [check], CheckSites = [kit.SiteIds[^1]] };
        Assert.Equal(kit.SiteIds[^1], KitCurves.HardestSite(design.Sites, hard).Site.Id);
        Assert.Equal(kit.SiteIds[0], KitCurves.HardestSite(design.Sites, kit with { Checks = [], CheckSites = [] }).Site.Id);
    }

    [Fact]
    public void The_smallest_battery_stands_at_the_kits_own_array()
    {
        var curve = HandMadeDesign.Small().Curves[0];
        Assert.Equal(curve.Points.Single(p => p.ArrayWp == curve.Chosen.ArrayWp).BatteryWh, curve.SmallestBatteryWh);
        Assert.Null((curve with { Points = [] }).SmallestBatteryWh);
    }
}
