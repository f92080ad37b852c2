using TenderKit.Sizing.Energy;
using TenderKit.Tendering.PartsStated;
using Xunit;

namespace TenderKit.Tendering.Tests.PartsStated;

public sealed class PartsTextTests
{
    [Theory]
    [InlineData("75 Wp, 12 V 75 Ah, 12 W LED", 75, 12, 75, 12, null)]
    [InlineData("Solar panel 2 x 80Wp; battery 12V/100AH gel; 20-watt lamp, 10A PWM", 160, 12, 100, 20, 10.0)]
    [InlineData("module: 120 W peak, LiFePO4 12,8 V 40 Ah, luminaire 20 W 2600 lm (130 lm/W), MPPT 15 A", 120, 12.8, 40, 20, 15.0)]
    [InlineData("12W LED with 75Wp panel and 12VDC 2 nos 75Ah tubular batteries", 75, 12, 150, 12, null)]
    public void Ratings_are_read(string text, double wp, double volts, double hours, double watts, double? amps)
    {
        var read = PartsText.Read(text);
        Assert.Equal((wp, volts, hours, watts, amps), (read.ModuleWp, read.BatteryV, read.BatteryAh, read.LampW, read.ControllerA));
    }

    [Fact]
    public void Kinds_hours_and_days_are_read()
    {
        Assert.Equal(BatteryChemistry.LithiumIronPhosphate, PartsText.Read("LiFePO4 battery").Chemistry);
        Assert.Equal(BatteryChemistry.GelLeadAcid, PartsText.Read("GEL VRLA").Chemistry);
        Assert.Equal(ControlKind.Tracking, PartsText.Read("MPPT controller").Control);
        var duty = PartsText.Read("12 hours per night with 3 days autonomy");
        Assert.Equal((12.0, 3.0), (duty.Hours, duty.Nights));
        Assert.Equal((5.0, (double?)null), (PartsText.Read("5 heures par nuit").Hours, PartsText.Read("75 Ah").Hours));
        Assert.Null(PartsText.Read("battery 75 Ah at 10 hours rate").Hours);
    }

    [Fact]
    public void Nothing_stated_is_nothing_read() => Assert.Equal(new PartsText(null, null, null, null, null, null, null, null, null, null, null), PartsText.Read("as per drawing"));
}
