using System.Collections.Immutable;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class HandMethodTests
{
    private static readonly HandInputs Plain = new(
        240, Year(5), Year(240), 1, 1, 1, 1, 1, 1, 1, 1, 10);

    // 30 W x 8 h, 3.42 h of sun, derating 0.7: 100.25 W. The page it comes from prints 102.4, a slip of arithmetic (trap; read)
    [Fact]
    public void Panel_of_a_simple_formula() =>
        Assert.Equal(100.25, HandMethod.Size(Plain with { MonthlyPlaneKWhPerM2 = Year(3.42), ArrayDeratingFactor = 0.7 }).ArrayRatioWp, 0.01);

    // 11 Wh a day (2 W x 3 h + 10 W x 0.5 h), 4 days, 50 % depth: 88 Wh, 7.33 Ah at 12 V; read
    [Fact]
    public void Battery_of_a_small_kit()
    {
        var result = HandMethod.Size(Plain with { NightlyWh = 2 * 3 + 10 * 0.5, AutonomyNights = 4, UsableDepthFraction = 0.5 });
        Assert.Equal(88, result.BatteryRatedWh, 0.01);
        Assert.Equal(7.33, result.BatteryRatedWh / 12, 0.01);
    }

    // 1920 Wh x 1.3 / 5 h of sun: 499.2 W, two modules of 250 W; read
    [Fact]
    public void Array_by_ratio()
    {
        var result = HandMethod.Size(Plain with { MonthlyDemandWh = Year(1920), ArrayToLoadRatio = 1.3 });
        Assert.Equal(499.2, result.ArrayRatioWp, 0.1);
        Assert.Equal(2, Math.Ceiling(result.ArrayRatioWp / 250));
    }

    // Deep recovery: days = battery / (array - load), 200 Ah with a surplus of 10 Ah a day: 20 days (derived); turned round
    [Fact]
    public void Array_by_recovery()
    {
        var result = HandMethod.Size(Plain with { NightlyWh = 100, AutonomyNights = 2, MonthlyDemandWh = Year(100), MonthlyPlaneKWhPerM2 = Year(1), RecoveryDays = 20 });
        Assert.Equal(110, result.ArrayRecoveryWp, 1e-9);
        Assert.Equal(result.ArrayRecoveryWp, result.ArrayWp);
    }

    // 3 nights of storage at a ratio of 1.1 need 30 days to recover, in 10 days 1.3 (arithmetic of the definition)
    [Theory]
    [InlineData(30, 1.1)]
    [InlineData(10, 1.3)]
    public void Recovery_days_and_ratio(double days, double ratio)
    {
        var result = HandMethod.Size(Plain with { AutonomyNights = 3, RecoveryDays = days, ArrayToLoadRatio = ratio });
        Assert.Equal(result.ArrayRatioWp, result.ArrayRecoveryWp, 1e-9);
    }

    // Amp-hour method of SAND87-7023 (structure from memory): wire 0.98 x battery 0.9, then / 0.9 for the module
    [Fact]
    public void Every_loss_enters_once()
    {
        var result = HandMethod.Size(Plain with
        {
            ArrayDeratingFactor = 0.9 * 0.98,
            ChargeEfficiency = 0.9,
            DischargeEfficiency = 0.95,
            EndOfLifeFraction = 0.8,
            TemperatureFactor = 0.9,
            UsableDepthFraction = 0.5,
            AutonomyNights = 3,
        });
        Assert.Equal(240 / 5.0 / (0.9 * 0.98 * 0.9 * 0.95), result.ArrayRatioWp, 1e-9);
        Assert.Equal(3 * 240 / (0.8 * 0.9 * 0.5 * 0.95), result.BatteryRatedWh, 1e-9);
    }

    [Fact]
    public void The_design_month_has_the_least_sun_per_demand()
    {
        var sun = Year(5).SetItem(6, 4).SetItem(0, 4.2);
        Assert.Equal(7, HandMethod.Size(Plain with { MonthlyPlaneKWhPerM2 = sun }).DesignMonth);
        Assert.Equal(1, HandMethod.Size(Plain with { MonthlyPlaneKWhPerM2 = sun, MonthlyDemandWh = Year(240).SetItem(0, 300) }).DesignMonth);
    }

    private static ImmutableArray<double> Year(double value) => [.. Enumerable.Repeat(value, 12)];
}
