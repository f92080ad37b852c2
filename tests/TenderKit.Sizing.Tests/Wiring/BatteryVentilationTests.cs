using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Sizing.Tests.Wiring;

public class BatteryVentilationTests
{
    // IEC 62485-2, recomputed: 6 cells, 100 Ah, 8 mA/Ah: 0.240 m3/h, 6.72 cm2.
    [Fact]
    public void Six_cells_of_a_hundred_ampere_hours()
    {
        var flow = BatteryVentilation.FlowM3PerH(6, BatteryVentilation.ValveRegulatedBoostMAPerAh, 100);
        Assert.Equal(0.240, flow, 0.0005);
        Assert.Equal(6.72, BatteryVentilation.FreeAreaCm2(flow), 0.005);
    }

    // Relation: a vented bank needs more air than a sealed one of its size.
    [Fact]
    public void Vented_cells_need_more_air() =>
        Assert.True(
            BatteryVentilation.FlowM3PerH(6, BatteryVentilation.VentedBoostMAPerAh, 100)
            > BatteryVentilation.FlowM3PerH(6, BatteryVentilation.ValveRegulatedBoostMAPerAh, 100));
}
