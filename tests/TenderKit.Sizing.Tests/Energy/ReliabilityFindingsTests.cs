using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

/// <summary>Recovery, worst days and loss of load by month, on weather laid out by hand.</summary>
public sealed class ReliabilityFindingsTests
{
    private const int Dull = 200; // 20 July, index 199

    // one hour of sun a day, twice the load, one hour of lamp, battery of 3 nights without losses: full every noon. Three days without sun
    // after day 199's noon: nights 199, 200, 201 empty it (3, 2, 1 -> 0), the night of 202 is dark.
    private static readonly EnergyResult Spell = Ideal(Systems.NoonSun(2, d => d is >= Dull and < Dull + 3 ? 0 : 2), 3);

    [Fact]
    public void One_dark_night_after_three_dull_days()
    {
        Assert.Equal([1, 0], Spell.DarkNightsByYear.AsEnumerable());
        Assert.Equal(1, Spell.Ledger.UnservedWh / 100, 1e-9);
        Assert.Equal(1.0 / 62, Spell.LossOfLoadByMonth[6], 1e-9); // July of two years, 62 nights
        Assert.Equal(0, Spell.LossOfLoadByMonth.Sum() - Spell.LossOfLoadByMonth[6]);
    }

    // by hand: the store is at its lowest, 0, until the morning of day index 203; two nights' energy come in at that noon, one is used, and two more
    // fill it at the noon of 204: one day from the last lowest day to full charge
    [Fact]
    public void Recovery_runs_from_the_lowest_to_full()
    {
        Assert.Equal(new RecoveryTimes(1, 1, 1), Spell.Recovery);
        Assert.Equal(RecoveryTimes.None, Ideal(Systems.NoonSun(1, _ => 2), 3).Recovery);
    }

    // by hand: array of 1.1 times the load, no losses: the store gains a tenth of a night a day; from empty, the noon of day n stands at 1.0 + 0.1 n nights,
    // which is 99.5 % of three on day 20
    [Fact]
    public void Recovery_at_a_ratio_of_1_1_is_slow()
    {
        var result = Ideal(Systems.NoonSun(2, d => d is >= Dull and < Dull + 4 ? 0 : 1.1), 3, reconnect: 0);
        Assert.Equal(1, result.Recovery.Count);
        Assert.InRange(result.Recovery.LongestDays, 19, 20);
    }

    // half the sun the load needs: the ring begins on 1 January (the first of equal months); one night is kept, dark from the first nights on, never full again
    [Fact]
    public void A_battery_that_never_recovers_shows_all_the_days()
    {
        var result = Ideal(Systems.NoonSun(1, _ => 0.5), 2);
        Assert.True(result.Recovery.IsUnfinished);
        Assert.InRange(result.Recovery.LongestDays, 360, 365);
        Assert.False(Spell.Recovery.IsUnfinished);
    }

    [Fact]
    public void The_worst_thirty_days_hold_the_dark_night_and_the_levels()
    {
        var spell = Spell.WorstSpell;
        Assert.Equal(720, spell.States.Length);
        Assert.Equal(1, spell.Year);
        Assert.InRange(Dull + 3, spell.FirstDayOfYear, spell.FirstDayOfYear + 29);
        Assert.Equal(0, spell.States.Min(), 1e-12);
        Assert.All(spell.DisconnectByDay, l => Assert.Equal(0, l, 1e-12));
        Assert.Equal(30, spell.ReconnectByDay.Length);
    }

    // the worst 30 days of long synthetic years: no other 30 days miss more light, and with cold the disconnect rises
    [Fact]
    public void No_other_thirty_days_are_worse()
    {
        var weather = Systems.Weather(45, 0.45, 3);
        var system = new PowerSystem(Systems.Array(150), Systems.Gel(1500), Systems.Tracking, 20);
        var lamp = Systems.AllNight(45);
        var result = EnergyBalance.Run(weather, lamp, system);
        var plain = PlainBalance.Run(weather, lamp, system);
        Assert.True(result.Ledger.UnservedWh > 0);
        var start = (result.WorstSpell.Year - 1) * 365 + result.WorstSpell.FirstDayOfYear - 1;
        var mostDark = Enumerable.Range(0, 3 * 365 - 30).Max(d => Dark(plain, d));
        Assert.InRange(Dark(plain, start), mostDark - 3, mostDark);
        Assert.All(result.WorstSpell.DisconnectByDay.Zip(result.WorstSpell.ReconnectByDay), l => Assert.True(l.First >= 0.5 - 1e-12 && l.Second > l.First));
        Assert.Equal(result.LossOfLoadFraction, result.LossOfLoadByMonth.Zip(MonthlyLampWh(result, system)).Sum(m => m.First * m.Second) / MonthlyLampWh(result, system).Sum(), 1e-9);
    }

    // one year is a ring of one year: the range is the Poisson range of one year, never narrower than what one year can prove
    [Fact]
    public void One_year_alone_gives_an_honest_range()
    {
        var none = Ideal(Systems.NoonSun(1, _ => 2), 3);
        Assert.Equal((1, 0.0), (none.YearCount, none.DarkNightRange.LowPerYear));
        Assert.Equal(3 * 2.996, none.DarkNightRange.HighPerYear, 0.001); // -ln 0.05 events (standard Poisson limit, from memory), runs of three nights assumed
        var one = Ideal(Systems.NoonSun(1, d => d is >= Dull and < Dull + 3 ? 0 : 2), 3);
        Assert.Equal(1, one.DarkNightsPerYear);
        Assert.Equal(0.0513, one.DarkNightRange.LowPerYear, 0.0001); // exact Poisson limits of one event: 0.0513 to 4.744 (standard tables, from memory)
        Assert.Equal(4.744, one.DarkNightRange.HighPerYear, 0.001);
        Assert.Equal(30 * 24, one.WorstSpell.States.Length);
    }

    private static int Dark(PlainBalance plain, int start) => Enumerable.Range(start, 30).Count(d => plain.DarkNights[d % plain.DarkNights.Length]);

    private static List<double> MonthlyLampWh(EnergyResult result, PowerSystem system) =>
        [.. result.MonthlyDemandWhPerDay.Select((wh, m) => (wh - 24 * system.Control.OwnUseW) * MonthDays.Count(m + 1))];

    private static EnergyResult Ideal(PlaneYears weather, double nights, double reconnect = 0.1) => EnergyBalance.Run(
        weather, Systems.OneHour, new PowerSystem(Systems.IdealArray(100), Systems.Ideal(100 * nights), Systems.IdealControl with { ReconnectFraction = reconnect }, 100));
}
