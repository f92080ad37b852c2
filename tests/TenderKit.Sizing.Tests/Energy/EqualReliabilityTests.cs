using CsCheck;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class EqualReliabilityTests
{
    private static readonly PlaneYears Tropics = Systems.Weather(9, 0.52, 8);
    private static readonly LampHours Lamp = Systems.AllNight(9);
    private static readonly SizeSteps Steps = new(1, 12.8);
    private static readonly DarkNightTarget OneNight = new(1);
    private static readonly PowerSystem Template = new(Systems.Array(100), Systems.Lithium(640), Systems.Tracking, 20);

    [Theory]
    [InlineData(110)]
    [InlineData(150)]
    [InlineData(250)]
    public void The_smallest_battery_keeps_the_target_and_one_step_less_does_not(double arrayWp)
    {
        var point = EqualReliability.SmallestBattery(Tropics, Lamp, Template, OneNight, Steps, arrayWp)!;
        Assert.True(point.Result.DarkNightsPerYear <= 1);
        Assert.Equal(arrayWp, point.ArrayWp);
        Assert.Equal(0, Math.IEEERemainder(point.BatteryWh, 12.8), 1e-9);
        Assert.False(OneNight.KeptBy(EnergyBalance.Run(Tropics, Lamp, EqualReliability.Sized(Template, arrayWp, point.BatteryWh - 12.8))));
        Assert.False(OneNight.KeptBy(EnergyBalance.Run(Tropics, Lamp, EqualReliability.Sized(Template, arrayWp, point.BatteryWh * 0.85))));
    }

    [Fact]
    public void The_smallest_array_keeps_the_target_and_one_step_less_does_not()
    {
        var point = EqualReliability.SmallestArray(Tropics, Lamp, Template, OneNight, Steps, 640)!;
        Assert.True(point.Result.DarkNightsPerYear <= 1);
        Assert.Equal(640, point.BatteryWh);
        Assert.False(OneNight.KeptBy(EnergyBalance.Run(Tropics, Lamp, EqualReliability.Sized(Template, point.ArrayWp - 1, 640))));
    }

    // agrees with curves of equal reliability: more array, less battery (Egido and Lorenzo 1992, from memory); one step for the rounding and the hysteresis
    [Fact]
    public void More_array_needs_no_more_battery()
    {
        var curve = EqualReliability.Curve(Tropics, Lamp, Template, OneNight, Steps);
        Assert.True(curve.Length >= 10);
        Assert.All(curve, p => Assert.True(OneNight.KeptBy(p.Result)));
        Assert.All(curve.Zip(curve.Skip(1)), p => Assert.True(p.First.ArrayWp < p.Second.ArrayWp && p.Second.BatteryWh <= p.First.BatteryWh + 12.8));
    }

    [Fact]
    public void Dear_batteries_move_the_choice_towards_more_array()
    {
        var curve = EqualReliability.Curve(Tropics, Lamp, Template, OneNight, Steps);
        var even = EqualReliability.LeastCost(curve, 0.5, 0.25)!;
        var dear = EqualReliability.LeastCost(curve, 0.5, 1)!;
        Assert.True(dear.ArrayWp > even.ArrayWp && dear.BatteryWh < even.BatteryWh);
        Assert.All(curve, p => Assert.True(p.Price(0.5, 0.25) >= even.Price(0.5, 0.25)));
        Assert.Equal(even.ArrayWp * 0.5 + even.BatteryWh * 0.25, even.Price(0.5, 0.25), 1e-9);
    }

    [Fact]
    public void A_target_on_the_upper_bound_asks_for_more()
    {
        var mean = EqualReliability.SmallestBattery(Tropics, Lamp, Template, OneNight, Steps, 150)!;
        var bound = EqualReliability.SmallestBattery(Tropics, Lamp, Template, OneNight with { ByUpperBound = true }, Steps, 150)!;
        Assert.True(bound.BatteryWh > mean.BatteryWh);
        Assert.True(bound.Result.DarkNightsUpperBound <= 1);
    }

    [Fact]
    public void An_array_short_of_the_load_finds_no_battery() =>
        Assert.Null(EqualReliability.SmallestBattery(Tropics, Lamp, Template, OneNight, Steps, 40));

    [Fact]
    public void A_battery_short_of_a_night_finds_no_array() =>
        Assert.Null(EqualReliability.SmallestArray(Tropics, Lamp, Template, OneNight, Steps, 100));

    // constant weather with an array of the load and a battery of one night keeps every night lit (derived): 20 Wh a night, no losses, all of it usable
    [Fact]
    public void Constant_weather_needs_one_night()
    {
        var template = new PowerSystem(Systems.IdealArray(100), Systems.Ideal(100), Systems.IdealControl, 20);
        var point = EqualReliability.SmallestBattery(Systems.NoonSun(3, _ => 1), Systems.OneHour, template, new DarkNightTarget(0), new SizeSteps(1, 1), 20)!;
        Assert.Equal(20, point.BatteryWh);
        Assert.Equal(20, EqualReliability.SmallestArray(Systems.NoonSun(3, _ => 1), Systems.OneHour, template, new DarkNightTarget(0), new SizeSteps(1, 1), 20)!.ArrayWp);
    }

    [Fact]
    public void Scaling_keeps_the_voltage_and_lets_currents_follow() =>
        Gen.Select(Gen.Double[1, 2000], Gen.Double[10, 9000]).Sample((wp, wh) =>
        {
            var sized = EqualReliability.Sized(Template, wp, wh);
            return Math.Abs(sized.Array.MaximumPowerCurrentA * sized.Array.MaximumPowerVoltageV - wp) < 1e-9 * wp
                && Math.Abs(sized.Control.ChargeCurrentA / wp - Template.Control.ChargeCurrentA / 100) < 1e-12
                && sized.Battery.RatedWh == wh && sized.Battery.NominalVoltageV == Template.Battery.NominalVoltageV;
        });

    [Fact]
    public void A_larger_array_or_battery_never_leaves_more_unserved_with_hysteresis_off() =>
        Gen.Select(Gen.Double[40, 200], Gen.Double[150, 1500], Gen.Double[1, 2], Gen.Double[1, 2]).Sample(
            (wp, wh, moreArray, moreBattery) =>
            {
                // own use and self-discharge take from the store itself, which grows with the battery: off
                var template = Template with
                {
                    Control = Template.Control with { ReconnectFraction = 0, OwnUseW = 0 },
                    Battery = Template.Battery with { SelfDischargePerMonthFraction = 0, PeukertExponent = 1 },
                };
                double Unserved(double array, double battery) => EnergyBalance.Run(Tropics, Lamp, EqualReliability.Sized(template, array, battery)).Ledger.UnservedWh;
                var less = Unserved(wp, wh);
                return Unserved(wp * moreArray, wh) <= less + 1e-6 && Unserved(wp, wh * moreBattery) <= less + 1e-6;
            },
            iter: 25);
}
