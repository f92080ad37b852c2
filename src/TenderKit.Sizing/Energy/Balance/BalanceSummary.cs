using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy.Balance;

/// <summary>Draws the result of one candidate out of what the kernel kept of its days.</summary>
internal sealed class BalanceSummary<T, TMask>(BalanceKernel<T, TMask> kernel, int lane, int startDay, double storeAtEndWh)
    where T : struct, ILanes<T, TMask>
    where TMask : struct
{
    /// <summary>State of charge taken as fully charged; lead-acid nears full without reaching it.</summary>
    private const double FullLeadAcidFraction = 0.98;
    private const double FullLithiumFraction = 0.995;

    /// <summary>Length of a run of dark nights where none was seen, nights: a dull spell, seen as 3 to 5 nights in long sequences.</summary>
    private const double AssumedRunNights = 3;

    private readonly DayRecords<T, TMask> days = kernel.Days;
    private readonly PowerSystem system = kernel.SystemOf(lane);
    private readonly int dayCount = kernel.DayCount;
    private readonly int yearCount = kernel.DayCount / MonthDays.DaysCount;
    private readonly double fullWh = kernel.FullWhOf(lane);
    private readonly bool[] darkNights = new bool[kernel.DayCount];
    private readonly double[] supply = new double[12];
    private readonly double[] lampDemand = new double[12];
    private readonly double[] unserved = new double[12];
    private readonly double[] lowest = new double[12];
    private readonly double[] unservedBySlot = new double[kernel.DayCount / MonthDays.DaysCount * 12];
    private readonly double[] lowestBySlot = new double[kernel.DayCount / MonthDays.DaysCount * 12];
    private int fullDays;
    private int longestWithoutFull;

    public EnergyResult Result()
    {
        FindDarkNights();
        var recovery = new RecoveryClock();
        Array.Fill(lowest, 1.0);
        Array.Fill(lowestBySlot, 1.0);
        var withoutFull = 0;
        for (var step = 0; step < dayCount; step++)
        {
            var day = (startDay + step) % dayCount;
            AddToMonth(day);
            var isFull = IsFull(day);
            fullDays += isFull ? 1 : 0;
            withoutFull = isFull ? 0 : withoutFull + 1;
            longestWithoutFull = Math.Max(longestWithoutFull, withoutFull);
            recovery.Pass(days.LeastWh[day][lane], Has(days.DarkMorning[day]) || Has(days.DarkEvening[day]), isFull);
        }

        recovery.End();
        return Sum(recovery.Times);
    }

    private bool Has(TMask mask) => T.Has(mask, lane);

    private bool IsFull(int day) => days.MostWh[day][lane] >=
        (system.Battery.Chemistry == BatteryChemistry.LithiumIronPhosphate ? FullLithiumFraction : FullLeadAcidFraction) * fullWh;

    private void FindDarkNights()
    {
        for (var day = 0; day < dayCount; day++)
        {
            if (Has(days.DarkMorning[day])) darkNights[day == 0 ? dayCount - 1 : day - 1] = true;
            if (Has(days.DarkEvening[day])) darkNights[day] = true;
        }
    }

    private void AddToMonth(int day)
    {
        var dayOfYear = day % MonthDays.DaysCount;
        var month = MonthDays.MonthOf(dayOfYear) - 1;
        var slot = day / MonthDays.DaysCount * 12 + month;
        var least = days.LeastWh[day][lane] / fullWh;
        supply[month] += days.SupplyWh[day][lane];
        lampDemand[month] += system.LampInputW * kernel.DayFullHours[dayOfYear];
        unserved[month] += days.UnservedWh[day][lane];
        unservedBySlot[slot] += days.UnservedWh[day][lane];
        lowest[month] = Math.Min(lowest[month], least);
        lowestBySlot[slot] = Math.Min(lowestBySlot[slot], least);
    }

    private EnergyResult Sum(RecoveryTimes recovery)
    {
        var perYear = new int[yearCount];
        for (var n = 0; n < dayCount; n++) if (darkNights[n]) perYear[n / MonthDays.DaysCount]++;
        var (demandWh, unservedWh) = (lampDemand.Sum(), unserved.Sum());
        var worst = WorstSlot();
        var (worstYear, worstMonth) = (worst / 12, worst % 12 + 1);
        var meanRunNights = MeanRunNights();
        ImmutableArray<double> PerDay(IEnumerable<double> sums) => [.. sums.Select((s, m) => s / yearCount / MonthDays.Count(m + 1))];
        return new EnergyResult(
            yearCount,
            demandWh > 0 ? unservedWh / demandWh : 0,
            (double)perYear.Sum() / yearCount,
            DarkNightBound.UpperNinety(perYear, meanRunNights),
            perYear.Max(),
            LongestRun(),
            [.. lowest],
            (double)fullDays / dayCount,
            longestWithoutFull,
            kernel.Totals.DrawnWh[lane] / fullWh / yearCount,
            PerDay(supply),
            PerDay(lampDemand.Select((wh, m) => wh + 24 * system.Control.OwnUseW * yearCount * MonthDays.Count(m + 1))),
            [.. kernel.StatesOf(lane, worstYear * MonthDays.DaysCount + MonthDays.FirstDayIndex(worstMonth), MonthDays.Count(worstMonth))],
            worstMonth,
            worstYear + 1,
            kernel.Totals.Of(lane, system, storeAtEndWh - fullWh, demandWh, unservedWh))
        {
            DarkNightRange = DarkNightBound.TwoSidedNinety(perYear, meanRunNights),
            DarkNightsByYear = [.. perYear],
            MeanRunNights = meanRunNights,
            Recovery = recovery,
            LossOfLoadByMonth = [.. unserved.Select((wh, m) => lampDemand[m] > 0 ? wh / lampDemand[m] : 0)],
            WorstSpell = SpellAt(SpellSearch.WorstStep(dayCount, WorstSpell.DayCount, UnservedOn, LeastOn)),
        };

        double UnservedOn(int step) => days.UnservedWh[(startDay + step) % dayCount][lane];
        double LeastOn(int step) => days.LeastWh[(startDay + step) % dayCount][lane] / fullWh;
    }

    private WorstSpell SpellAt(int step)
    {
        var first = (startDay + step) % dayCount;
        var states = kernel.StatesOf(lane, first, WorstSpell.DayCount);
        var levels = Enumerable.Range(0, WorstSpell.DayCount).Select(i => kernel.LevelsOf(lane, (first + i) % dayCount)).ToList();
        return new WorstSpell(
            first % MonthDays.DaysCount + 1, first / MonthDays.DaysCount + 1, [.. states], [.. levels.Select(l => l.Disconnect)], [.. levels.Select(l => l.Reconnect)]);
    }

    /// <summary>The month of the sequence with the most unserved energy; with none, the one with the lowest state of charge; the first of equals.</summary>
    private int WorstSlot()
    {
        var worst = 0;
        for (var i = 1; i < unservedBySlot.Length; i++)
        {
            if (unservedBySlot[i] > unservedBySlot[worst]
                || (unservedBySlot[i] == unservedBySlot[worst] && lowestBySlot[i] < lowestBySlot[worst]))
            {
                worst = i;
            }
        }

        return worst;
    }

    /// <summary>Mean length of the runs of dark nights; with none, the length assumed.</summary>
    private double MeanRunNights()
    {
        var (nights, runs) = (0, 0);
        for (var n = 0; n < darkNights.Length; n++)
        {
            if (!darkNights[n]) continue;
            nights++;
            if (!darkNights[n == 0 ? darkNights.Length - 1 : n - 1]) runs++;
        }

        return runs == 0 ? AssumedRunNights : Math.Min((double)nights / runs, MonthDays.DaysCount);
    }

    private int LongestRun()
    {
        var (run, longest) = (0, 0);
        for (var step = 0; step < darkNights.Length; step++)
        {
            run = darkNights[(startDay + step) % darkNights.Length] ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
