using CsCheck;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

/// <summary>The fast balance against a plain one, and four candidates together against one alone.</summary>
public sealed class BalanceKernelTests
{
    private static readonly PlaneYears Tropics = Systems.Weather(-13.5, 0.5, 2);
    private static readonly PlaneYears North = Frosty(Systems.Weather(48, 0.42, 2));
    private static readonly LampHours AllNight = Systems.AllNight(-13.5);
    private static readonly LampHours Parts = ScheduleHours.For(
        new LightingSchedule("parts", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 1), new SchedulePart(NightAnchor.Dawn, -2, NightAnchor.Dawn, 0, 0.7, 0.5)], 0),
        NightCalendar.ForLatitude(48, -0.833));

    private static readonly Gen<(PlaneYears, LampHours)> AnyWeather =
        Gen.Int[0, 2].Select(i => i switch { 0 => (Tropics, AllNight), 1 => (North, Parts), _ => (North, AllNight) });

    private static readonly Gen<BatteryModel> AnyBattery =
        from chemistry in Gen.Enum<BatteryChemistry>()
        from wh in Gen.Double[60, 3000]
        from depth in Gen.Double[0.3, 1]
        from charge in Gen.Double[0.7, 1]
        from discharge in Gen.Double[0.8, 1]
        from self in Gen.Double[0, 0.2]
        from least in Gen.Double[-20, 5]
        from absorption in Gen.Double[1, 6]
        select new BatteryModel(
            chemistry, wh, chemistry == BatteryChemistry.LithiumIronPhosphate ? 12.8 : 12, 10, 1.1, depth, 0.8, charge, discharge, self, 8, least, absorption);

    private static readonly Gen<PowerSystem> AnySystem =
        from wp in Gen.Double[10, 500]
        from vmp in Gen.Double[10, 36]
        from battery in AnyBattery
        from pulse in Gen.Bool
        from amps in Gen.Double[2, 30]
        from own in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 4])
        from reconnect in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 0.8]) // a reconnect level of 1e-30 asks whether the store equals its floor to the last bit, which two sums of the same energies need not agree on
        from lamp in Gen.Double[2, 80]
        select new PowerSystem(
            new ArrayModel(wp, vmp, wp / vmp, -0.004, 46, 0.85), battery,
            new ControlModel(pulse ? ControlKind.PulseWidth : ControlKind.Tracking, amps, pulse ? 1 : 0.94, own, reconnect), lamp);

    [Fact]
    public void The_fast_balance_is_the_plain_one() =>
        Gen.Select(AnyWeather, AnySystem).Sample(
            (weather, system) =>
            {
                var (years, lamp) = weather;
                var plain = PlainBalance.Run(years, lamp, system);
                var fast = EnergyBalance.Run(years, lamp, system);
                var ledger = fast.Ledger;
                var scale = Math.Max(1, plain.InWh);
                Near(plain.InWh, ledger.InWh, scale);
                Near(plain.LampWh, ledger.LampWh, scale);
                Near(plain.OwnWh, ledger.OwnUseWh, scale);
                Near(plain.LossesWh, ledger.LossesWh, scale);
                Near(plain.DumpedWh, ledger.DumpedWh, scale);
                Near(plain.StoreChangeWh, ledger.StoreChangeWh, scale);
                Near(plain.DemandWh, ledger.DemandWh, scale);
                Near(plain.UnservedWh, ledger.UnservedWh, scale);
                Assert.Equal(Enumerable.Range(0, 2).Select(y => plain.DarkNights.Skip(y * 365).Take(365).Count(d => d)), fast.DarkNightsByYear);
                Assert.Equal((double)plain.FullDays / 730, fast.FullChargeDaysFraction, 1e-12);
                Assert.Equal(plain.LongestWithoutFull, fast.LongestWithoutFullDays);
                States(plain, fast.WorstMonthStates, fast.WorstMonthYear, MonthDays.FirstDayIndex(fast.WorstMonth));
                States(plain, fast.WorstSpell.States, fast.WorstSpell.Year, fast.WorstSpell.FirstDayOfYear - 1);
            },
            iter: 60);

    [Fact]
    public void Four_together_are_each_alone_to_the_last_bit() =>
        Gen.Select(AnyWeather, AnySystem.Array[1, 6]).Sample(
            (weather, systems) =>
            {
                var (years, lamp) = weather;
                var together = EnergyBalance.RunMany(years, lamp, systems);
                Assert.Equal(systems.Length, together.Length);
                foreach (var (system, result) in systems.Zip(together)) Same(EnergyBalance.Run(years, lamp, system), result);
            },
            iter: 25);

    [Fact]
    public void No_candidate_gives_no_result() => Assert.Empty(EnergyBalance.RunMany(Tropics, AllNight, []));

    [Fact]
    public void Less_load_never_leaves_more_unserved_with_hysteresis_off() =>
        Gen.Select(AnySystem, Gen.Double[0.3, 1]).Sample(
            (any, share) =>
            {
                var system = any with { Control = any.Control with { ReconnectFraction = 0, Kind = ControlKind.Tracking }, Battery = any.Battery with { PeukertExponent = 1 } };
                var results = EnergyBalance.RunMany(Tropics, AllNight, [system, system with { LampInputW = system.LampInputW * share }]);
                return results[1].Ledger.UnservedWh <= results[0].Ledger.UnservedWh + 1e-6;
            },
            iter: 40);

    private static void Near(double expected, double actual, double scale) => Assert.Equal(expected, actual, 1e-9 * scale);

    private static void States(PlainBalance plain, IReadOnlyList<double> states, int year, int firstDay)
    {
        var start = ((year - 1) * 365 + firstDay) * 24;
        for (var i = 0; i < states.Count; i++) Assert.Equal(plain.States[(start + i) % plain.States.Length], states[i], 1e-9);
    }

    private static void Same(EnergyResult expected, EnergyResult actual)
    {
        Assert.Equal(expected.Ledger, actual.Ledger);
        Assert.Equal(expected.LowestStateByMonth.AsEnumerable(), actual.LowestStateByMonth);
        Assert.Equal(expected.DarkNightsByYear.AsEnumerable(), actual.DarkNightsByYear);
        Assert.Equal(expected.MonthlySupplyWhPerDay.AsEnumerable(), actual.MonthlySupplyWhPerDay);
        Assert.Equal(expected.WorstMonthStates.AsEnumerable(), actual.WorstMonthStates);
        Assert.Equal(expected.WorstSpell.States.AsEnumerable(), actual.WorstSpell.States);
        Assert.Equal(expected.WorstSpell.DisconnectByDay.AsEnumerable(), actual.WorstSpell.DisconnectByDay);
        Assert.Equal(expected.Recovery, actual.Recovery);
        Assert.Equal(expected.DarkNightRange, actual.DarkNightRange);
        Assert.Equal(expected.EquivalentFullCyclesPerYear, actual.EquivalentFullCyclesPerYear);
        Assert.Equal(expected.FullChargeDaysFraction, actual.FullChargeDaysFraction);
    }

    /// <summary>The same sun in air from -24 to +26 degC over the year.</summary>
    private static PlaneYears Frosty(PlaneYears years)
    {
        var hours = years.Weather.AirC.Length;
        return years with
        {
            Weather = years.Weather with { AirC = [.. Enumerable.Range(0, hours).Select(i => 1 - 20 * Math.Cos(2 * Math.PI * (i / 24 % 365) / 365) + 5 * Math.Sin(2 * Math.PI * i / 24))] },
        };
    }
}
