using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class CoarseCurveTests
{
    private static readonly TenderKit.Sizing.Climate.PlaneYears Tropics = Systems.Weather(9, 0.52, 6);
    private static readonly LampHours Lamp = Systems.AllNight(9);
    private static readonly DarkNightTarget OneNight = new(1);
    private static readonly PowerSystem Template = new(Systems.Array(150), Systems.Lithium(640), Systems.Tracking, 20);

    // hysteresis must not fool the curve: every point was run as given and keeps the target, and a battery one step smaller does not, with hysteresis or without
    [Fact]
    public void Every_point_keeps_the_target_and_a_step_less_does_not()
    {
        var curve = CoarseCurve.Of(Tropics, Lamp, Template, OneNight);
        Assert.InRange(curve.Length, 6, 8);
        Assert.Contains(curve, p => p.ArrayWp == 150);
        foreach (var point in curve)
        {
            Assert.True(OneNight.KeptBy(EnergyBalance.Run(Tropics, Lamp, EqualReliability.Sized(Template, point.ArrayWp, point.BatteryWh))));
            Assert.False(OneNight.KeptBy(EnergyBalance.Run(Tropics, Lamp, Smaller(point, withHysteresis: true))) && OneNight.KeptBy(EnergyBalance.Run(Tropics, Lamp, Smaller(point, withHysteresis: false))));
        }

        Assert.All(curve.Zip(curve.Skip(1)), p => Assert.True(p.First.ArrayWp < p.Second.ArrayWp && p.Second.BatteryWh <= p.First.BatteryWh * 1.04));
    }

    /// <summary>The system of a point with a battery one step of 3 % smaller.</summary>
    private static PowerSystem Smaller(CurvePoint point, bool withHysteresis)
    {
        var system = EqualReliability.Sized(Template, point.ArrayWp, point.BatteryWh / 1.031);
        return withHysteresis ? system : system with { Control = system.Control with { ReconnectFraction = 0 } };
    }

    [Fact]
    public void Arrays_no_battery_serves_are_left_out() =>
        Assert.Empty(CoarseCurve.Of(Systems.NoonSun(2, _ => 0), Lamp, Template, OneNight));

    // constant weather, no losses: an array above the load needs one night, the search stops within 2 % above it (derived)
    [Fact]
    public void Constant_weather_needs_one_night()
    {
        var template = new PowerSystem(Systems.IdealArray(25), Systems.Ideal(60), Systems.IdealControl, 20);
        var curve = CoarseCurve.Of(Systems.NoonSun(2, _ => 1), Systems.OneHour, template, new DarkNightTarget(0));
        Assert.True(curve.Length >= 6);
        Assert.All(curve, p => Assert.InRange(p.BatteryWh, 20, 20.4 + 1e-9));
    }
}
