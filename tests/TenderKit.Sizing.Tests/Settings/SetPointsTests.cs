using CsCheck;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Settings;
using Xunit;

namespace TenderKit.Sizing.Tests.Settings;

public class SetPointsTests
{
    private static readonly BatteryChemistry[] Chemistries = Enum.GetValues<BatteryChemistry>();

    // Published set-points of controllers at 25 degC, read, within 0.3 V: sealed 14.3 and 13.6 V, flooded 14.8 and 13.6 V, twice that on 24 V.
    [Theory]
    [InlineData(BatteryChemistry.AgmLeadAcid, 12, 14.3, 13.6)]
    [InlineData(BatteryChemistry.GelLeadAcid, 12, 14.3, 13.6)]
    [InlineData(BatteryChemistry.FloodedLeadAcid, 12, 14.8, 13.6)]
    [InlineData(BatteryChemistry.FloodedLeadAcid, 24, 29.6, 27.2)]
    public void Published_set_points(BatteryChemistry chemistry, double systemV, double absorptionV, double floatV)
    {
        var points = SetPoints.Of(Inputs(chemistry, systemV)).At25C;
        Assert.Equal(absorptionV, points.AbsorptionV, 0.3 * systemV / 12);
        Assert.Equal(floatV, points.FloatV, 0.3 * systemV / 12);
    }

    // Float by type, read: gel 13.4, AGM 13.5, flooded 13.8 V, within 0.3 V.
    [Theory]
    [InlineData(BatteryChemistry.GelLeadAcid, 13.4)]
    [InlineData(BatteryChemistry.AgmLeadAcid, 13.5)]
    [InlineData(BatteryChemistry.FloodedLeadAcid, 13.8)]
    public void Published_floats(BatteryChemistry chemistry, double floatV) => Assert.Equal(floatV, SetPoints.Of(Inputs(chemistry, 12)).At25C.FloatV, 0.3);

    // Lithium iron phosphate, read: absorption 14.1, float 13.4, low cut-out 12.25 V, no compensation; common practice: reconnect 13.1 V.
    [Fact]
    public void Lithium_iron_phosphate()
    {
        var settings = SetPoints.Of(Inputs(BatteryChemistry.LithiumIronPhosphate, 12) with { DepthFraction = 0.9, NightHours = 40 });
        Assert.Equal(14.1, settings.At25C.AbsorptionV, 0.3);
        Assert.Equal(13.4, settings.At25C.FloatV, 0.05);
        Assert.Equal(12.25, settings.DisconnectV, 0.1);
        Assert.Equal(13.1, settings.ReconnectV, 0.05);
        Assert.Equal(0, settings.CompensationPerK);
        Assert.All(settings.ByTemperature, p => Assert.Equal(settings.At25C.AbsorptionV, p.AbsorptionV));
        Assert.Null(settings.At25C.EqualiseV);
    }

    // Common practice, no source: -27 mV/K at 12 V and -54 mV/K at 24 V; within -3 to -5 mV/K a cell.
    [Theory]
    [InlineData(12, -0.027)]
    [InlineData(24, -0.054)]
    public void Compensation_of_lead_acid(double systemV, double perK) => Assert.Equal(perK, SetPoints.Of(Inputs(BatteryChemistry.AgmLeadAcid, systemV)).CompensationPerK, 1e-9);

    // Derived: 14.4 V, -4 mV/K a cell: 14.04 V at 40 degC, 14.88 V at 5 degC.
    [Theory]
    [InlineData(40, 14.04)]
    [InlineData(5, 14.88)]
    public void Moved_by_temperature(double batteryC, double expectedV) =>
        Assert.Equal(expectedV, SetPoints.At(new ChargePoints(25, 14.4, 13.6, null), -0.004 * 6, batteryC).AbsorptionV, 0.005);

    // Common practice, no source: 50 % depth needs about 12.0 V; at C/60 11.4 V is 75 to 80 % depth already, so 80 % lies at or above it.
    [Fact]
    public void Disconnect_follows_from_depth_and_rate()
    {
        Assert.Equal(12.0, SetPoints.DisconnectPer12V(BatteryChemistry.AgmLeadAcid, 0.5, 60), 0.05);
        Assert.InRange(SetPoints.DisconnectPer12V(BatteryChemistry.AgmLeadAcid, 0.8, 60), 11.4, 11.6);
    }

    // Relations: deeper and faster is lower; the load comes back above where it goes; the float is no higher than the absorption; colder is higher.
    [Fact]
    public void The_order_of_the_set_points() =>
        Gen.Select(Gen.Int[0, Chemistries.Length - 1].Select(i => Chemistries[i]), Gen.Int[1, 4].Select(i => 12.0 * i), Gen.Double[0.2, 0.9], Gen.Double[6, 100], Gen.Double[-20, 20], Gen.Double[30, 60])
            .Sample((chemistry, systemV, depth, hours, coldC, hotC) =>
            {
                var settings = SetPoints.Of(new SettingInputs(chemistry, systemV, depth, hours, -0.0045, coldC, hotC));
                var table = settings.ByTemperature;
                return settings.ReconnectV > settings.DisconnectV
                    && settings.At25C.FloatV <= settings.At25C.AbsorptionV
                    && settings.ReconnectV < settings.At25C.AbsorptionV
                    && SetPoints.DisconnectPer12V(chemistry, depth, hours) >= SetPoints.DisconnectPer12V(chemistry, depth + 0.1, hours)
                    && SetPoints.DisconnectPer12V(chemistry, depth, hours) <= SetPoints.DisconnectPer12V(chemistry, depth, hours + 10)
                    && table[0].BatteryC == Math.Round(coldC) && table[^1].BatteryC == Math.Round(hotC)
                    && table.Zip(table.Skip(1)).All(p => p.First.BatteryC < p.Second.BatteryC && p.First.AbsorptionV >= p.Second.AbsorptionV);
            });

    [Fact]
    public void The_makers_prevail()
    {
        var maker = SetPoints.Of(Inputs(BatteryChemistry.AgmLeadAcid, 12) with { MakerAbsorptionV = 14.7 });
        Assert.Equal(14.7, maker.At25C.AbsorptionV);
        Assert.Contains(maker.Basis, b => b.Contains("as the maker", StringComparison.Ordinal));
        Assert.Equal(14.5, SetPoints.Of(Inputs(BatteryChemistry.AgmLeadAcid, 12) with { MakerAbsorptionV = 14.7, GreatestAbsorptionV = 14.5 }).At25C.AbsorptionV);
    }

    private static SettingInputs Inputs(BatteryChemistry chemistry, double systemV) => new(chemistry, systemV, 0.6, 60, -0.0045, 5, 50);
}
