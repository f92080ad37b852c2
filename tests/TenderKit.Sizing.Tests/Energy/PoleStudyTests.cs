using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Tests.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class PoleStudyTests
{
    private static PoleYears Pole(double latitude, double tilt = 15, double lampW = 30, double factor = 0.9) => PoleStudy.YearsOf(new PoleInputs(
        Climates.Constant(latitude, 0.55), factor, new PlaneOrientation(tilt, latitude >= 0 ? 180 : 0), 0.2, 0, -0.833, LightingSchedule.DuskToDawn, new SequenceSettings(5, 3, 0.29, 0.08), lampW));

    // Longest night: 13.25 h in Florida, 14.5 h in New York, quoted in a lighting guide (read, coarse: within 0.5 h); here the mean of December
    [Theory]
    [InlineData(28, 13.25)]
    [InlineData(40.7, 14.5)]
    public void Longest_nights(double latitude, double hours) => Assert.Equal(hours, Pole(latitude).NightH.Max(), 0.5);

    [Fact]
    public void A_night_takes_the_lamps_power_times_its_hours()
    {
        var pole = Pole(9);
        for (var m = 0; m < 12; m++) Assert.Equal(30 * pole.NightH[m], pole.LoadWh[m], 1e-9);
    }

    // 24 hours less the day of the mean sun, 2 w / 15, and the sun's 0.833 degrees: a few minutes a night (derived)
    [Fact]
    public void Nights_of_the_equator_are_all_alike() => Assert.All(Pole(0).NightH, h => Assert.Equal(24 - 12 - 2 * 0.833 / 15, h, 0.02));

    // at zero tilt the plane receives the horizontal (derived); the hourly shares of the day are scaled to a whole day in both
    [Fact]
    public void A_flat_plane_gets_what_the_horizontal_gets()
    {
        var pole = Pole(9, tilt: 0, factor: 1);
        for (var m = 0; m < 12; m++)
        {
            Assert.Equal(1, pole.PlaneKWhPerM2[m] / pole.Inputs.Climate.IrradiationKWhPerM2[m], 1e-9);
            Assert.Equal(1, pole.SimulatedPlaneKWhPerM2[m] / pole.Inputs.Climate.IrradiationKWhPerM2[m], 0.005);
        }
    }

    [Fact]
    public void The_cautious_factor_lowers_what_is_simulated_and_not_what_was_given()
    {
        var pole = Pole(9, tilt: 0, factor: 0.8);
        Assert.Equal(0.8, pole.SimulatedPlaneKWhPerM2.Sum() / pole.Inputs.Climate.IrradiationKWhPerM2.Sum(), 0.01);
        Assert.Equal(Climates.Constant(9, 0.55).IrradiationKWhPerM2.AsEnumerable(), pole.Inputs.Climate.IrradiationKWhPerM2);
    }

    // by hand: 1000 Wh x 0.8 depth x 0.8 end of life x 0.97 discharge x (0.94 + 0.06 x 10 / 15 at 20 degC) over 12.4 h x 20 W + 24 h x 0.2 W
    [Fact]
    public void Autonomy_by_hand()
    {
        var pole = Pole(9, lampW: 20);
        var energy = PoleStudy.EnergyOf(pole, new PowerSystem(Systems.Array(120), Systems.Lithium(1000), Systems.Tracking, 20));
        var use = 20 * pole.Lamp.LongestMonthFullHours + 0.2 * 24;
        Assert.Equal(1000 * 0.8 * 0.8 * 0.97 * (0.94 + 0.06 * 10 / 15) / use, energy.AutonomyNights, 1e-9);
        Assert.InRange(energy.BalanceErrorFraction, 0, 1e-9);
    }
}
