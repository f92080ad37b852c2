using TenderKit.Tendering.Commissioning;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Commissioning;

public class KitSetterTests
{
    // EN 13201-4: what a meter reads when new is the maintained level over the maintenance factor: 5 lx at 0.80 is 6.25 lx (derived).
    [Fact]
    public void Light_when_new_is_the_maintained_light_over_the_factor()
    {
        var design = HandMadeDesign.Small();
        var settings = KitSetter.Of(design, design.Kits[0]);
        foreach (var row in settings.Sites)
        {
            var site = design.Sites.Single(s => s.Site.Id == row.SiteId);
            Assert.Equal(site.Site.Target.AverageLx / site.MaintenanceFactor, row.RequiredNewLx!.Value, 1e-9);
            Assert.Equal(site.Light.Result.AverageLx, row.ExpectedNewLx * row.MaintenanceFactor, 1e-9);
            Assert.True(row.RequiredNewLx > site.Site.Target.AverageLx);
            Assert.Contains("points over", row.Grid, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_order_begins_with_earth_and_battery_and_each_step_has_its_reason()
    {
        var design = HandMadeDesign.Small();
        var order = PoleWork.Order(design.Kits[0].Parts);
        Assert.Equal(Enumerable.Range(1, order.Length), order.Select(s => s.Number));
        Assert.Contains("earth", order[0].What, StringComparison.Ordinal);
        Assert.Contains("Battery", order[1].What, StringComparison.Ordinal);
        Assert.True(order.ToList().FindIndex(s => s.What.StartsWith("Modules", StringComparison.Ordinal)) > 1);
        Assert.All(order, s => Assert.NotEmpty(s.Reason));
    }

    [Fact]
    public void Set_points_span_the_cold_and_the_hot_of_the_kits_sites()
    {
        var design = HandMadeDesign.Small();
        foreach (var settings in design.Kits.Select(k => KitSetter.Of(design, k)))
        {
            Assert.Equal(Math.Round(settings.ColdC), settings.Controller.ByTemperature[0].BatteryC);
            Assert.Equal(Math.Round(settings.HotC), settings.Controller.ByTemperature[^1].BatteryC);
            Assert.InRange(settings.Controller.DisconnectV, 0.85 * settings.SystemVoltageV, settings.Controller.ReconnectV);
        }
    }
}
