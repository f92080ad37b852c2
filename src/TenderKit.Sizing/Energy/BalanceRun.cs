using System.Buffers;
using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>One run of <see cref="EnergyBalance"/>: its constants, its store, its counters.</summary>
internal sealed class BalanceRun
{
    /// <summary>State of charge taken as fully charged; lead-acid nears full without reaching it.</summary>
    private const double FullLeadAcidFraction = 0.98;
    private const double FullLithiumFraction = 0.995;
    private const double TaperFraction = 0.9;
    private const double VoltageReserveFactor = 1.2;
    private const double ShortFraction = 1e-9;

    /// <summary>Length of a run of dark nights where none was seen, nights: a dull spell, seen as 3 to 5 nights in long sequences.</summary>
    private const double AssumedRunNights = 3;

    private readonly PlaneYears years;
    private readonly LampHours lamp;
    private readonly PowerSystem system;
    private readonly int yearCount;
    private readonly int startDay;
    private readonly double fullWh;
    private readonly bool leadAcid;
    private readonly bool tracking;
    private readonly double cellRisePerWh;
    private readonly double powerPerWh;
    private readonly double currentPerWh;
    private readonly double emptyV;
    private readonly double riseVPerWh;
    private readonly double shortWh;
    private readonly double lampW;
    private readonly double ownW;
    private readonly double heatPerK;
    private readonly double maximumPowerV;
    private readonly double chargeA;
    private readonly double converterEfficiency;
    private readonly double chargeEfficiency;
    private readonly double dischargeEfficiency;
    private readonly double leastChargeAirC;
    private readonly bool reconnects;
    private readonly double taperWh;
    private readonly double taperStepWh;
    private readonly double absorptionH;

    // the store and what changes with the day
    private double storeWh;
    private bool connected = true;
    private double floorWh;
    private double reconnectWh;
    private double keepFactor = 1;
    private double dayBatteryC = double.NaN;

    // the ledger
    private double inWh;
    private double lampWh;
    private double ownWh;
    private double lossesWh;
    private double dumpedWh;
    private double drawnWh;
    private double demandWh;
    private double unservedWh;

    // findings by day, month and night
    private readonly double[] supply = new double[12];
    private readonly double[] demand = new double[12];
    private readonly double[] lowest = new double[12];
    private readonly double[] unservedByMonth;
    private readonly double[] lowestByMonth;
    private readonly bool[] darkNights;
    private int fullDays;
    private int withoutFull;
    private int longestWithoutFull;

    public BalanceRun(PlaneYears years, LampHours lamp, PowerSystem system)
    {
        (this.years, this.lamp, this.system) = (years, lamp, system);
        var (array, battery, control, _) = system;
        yearCount = years.Weather.YearCount;
        startDay = EnergyBalance.StartDay(years, lamp);
        fullWh = BatteryCapacity.EndOfLifeWh(battery, BatteryCapacity.DischargeHours(battery.RatedWh, LitMeanW()));
        leadAcid = battery.Chemistry != BatteryChemistry.LithiumIronPhosphate;
        tracking = control.Kind == ControlKind.Tracking;
        cellRisePerWh = (array.NoctC - 20) / 800;
        powerPerWh = array.ArrayWp / 1000 * array.DeratingFactor;
        currentPerWh = array.MaximumPowerCurrentA / 1000 * array.DeratingFactor;
        var (empty, rise) = ChargeVoltage.Line(battery.Chemistry);
        emptyV = empty * battery.NominalVoltageV;
        riseVPerWh = rise * battery.NominalVoltageV / fullWh;
        shortWh = ShortFraction * Math.Max(system.LampInputW, 1e-3);
        (lampW, ownW) = (system.LampInputW, control.OwnUseW);
        (heatPerK, maximumPowerV) = (array.PowerCoefficientPerK, array.MaximumPowerVoltageV);
        (chargeA, converterEfficiency, reconnects) = (control.ChargeCurrentA, control.Efficiency, control.ReconnectFraction > 0);
        (chargeEfficiency, dischargeEfficiency) = (battery.ChargeEfficiency, battery.DischargeEfficiency);
        leastChargeAirC = battery.LeastChargeC - battery.EnclosureRiseK;
        absorptionH = battery.AbsorptionTimeH;
        taperWh = TaperFraction * fullWh;
        taperStepWh = (fullWh - taperWh) / absorptionH;
        unservedByMonth = new double[yearCount * 12];
        lowestByMonth = new double[yearCount * 12];
        darkNights = new bool[yearCount * MonthDays.DaysCount];
    }

    public EnergyResult Result()
    {
        var states = ArrayPool<double>.Shared.Rent(yearCount * MonthDays.HoursCount);
        try
        {
            RunAll(states);
            return Sum(states);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(states);
        }
    }

    /// <summary>Mean draw while the lamp burns, W.</summary>
    private double LitMeanW()
    {
        var (hours, lit) = (0.0, 0.0);
        foreach (var f in lamp.HourFraction)
        {
            hours += f;
            if (f > 0) lit++;
        }

        return (lit > 0 ? system.LampInputW * hours / lit : 0) + system.Control.OwnUseW;
    }

    private void RunAll(double[] states)
    {
        Array.Fill(lowest, 1.0);
        Array.Fill(lowestByMonth, 1.0);
        storeWh = fullWh;
        var days = darkNights.Length;
        for (var step = 0; step < days; step++)
        {
            var day = startDay + step;
            RunDay(day < days ? day : day - days, states);
        }
    }

    private void RunDay(int day, double[] states)
    {
        var dayOfYear = day % MonthDays.DaysCount;
        var air = years.Weather.AirC.AsSpan(day * 24, 24);
        var plane = years.PlaneWhPerM2.AsSpan(day * 24, 24);
        var burning = lamp.HourFraction.AsSpan(dayOfYear * 24, 24);
        var state = states.AsSpan(day * 24, 24);
        SetDay(air);
        var (daySupply, dayDemand, unserved, least, most) = (0.0, 0.0, 0.0, storeWh, 0.0);
        var (darkMorning, darkEvening) = (false, false);
        for (var h = 0; h < 24; h++)
        {
            var asked = lampW * burning[h];
            var supplied = plane[h] > 0 ? ArrayWh(plane[h], air[h]) : 0;
            var served = Step(supplied, asked, air[h]);
            if (asked - served > shortWh)
            {
                unserved += asked - served;
                if (h < 12) darkMorning = true;
                else darkEvening = true;
            }

            daySupply += supplied;
            dayDemand += asked;
            lampWh += served;
            if (storeWh < least) least = storeWh;
            if (storeWh > most) most = storeWh;
            state[h] = storeWh / fullWh;
        }

        if (darkMorning) darkNights[day == 0 ? darkNights.Length - 1 : day - 1] = true;
        if (darkEvening) darkNights[day] = true;
        CloseDay(day, daySupply, dayDemand, unserved, least / fullWh, most / fullWh);
    }

    private void SetDay(ReadOnlySpan<double> air)
    {
        var sum = 0.0;
        foreach (var c in air) sum += c;
        var batteryC = sum / 24 + system.Battery.EnclosureRiseK;
        if (batteryC == dayBatteryC) return;
        dayBatteryC = batteryC;
        var battery = system.Battery;
        var usableWh = fullWh * battery.UsableDepthFraction * BatteryCapacity.TemperatureFactor(battery.Chemistry, batteryC);
        floorWh = fullWh - usableWh;
        reconnectWh = floorWh + system.Control.ReconnectFraction * usableWh;
        keepFactor = 1 - BatteryCapacity.SelfDischargePerHourFraction(battery.SelfDischargePerMonthFraction, batteryC);
    }

    /// <summary>Energy of one hour at the controller's output, Wh; books what enters, the conversion loss and what the current limit refuses.</summary>
    private double ArrayWh(double planeWhPerM2, double airC)
    {
        var heat = 1 + heatPerK * (airC + cellRisePerWh * planeWhPerM2 - 25);
        var greatest = Math.Max(0, powerPerWh * planeWhPerM2 * heat);
        var batteryV = emptyV + riseVPerWh * storeWh;
        var limit = chargeA * batteryV;
        if (!tracking) greatest = Math.Min(greatest, currentPerWh * planeWhPerM2 * batteryV * VoltageMatch(maximumPowerV * heat, batteryV));
        inWh += greatest;
        var converted = greatest * converterEfficiency;
        lossesWh += greatest - converted;
        if (converted <= limit) return converted;
        dumpedWh += converted - limit;
        return limit;
    }

    /// <summary>Share of the current left when the battery's voltage is above the array's Vmp, fraction.</summary>
    private static double VoltageMatch(double maximumPowerV, double batteryV) => batteryV <= maximumPowerV
        ? 1
        : Math.Max(0, (VoltageReserveFactor * maximumPowerV - batteryV) / ((VoltageReserveFactor - 1) * maximumPowerV));

    /// <summary>One hour of use and charge; returns what the lamp got, Wh.</summary>
    private double Step(double supplied, double asked, double airC)
    {
        var kept = storeWh * keepFactor;
        lossesWh += storeWh - kept;
        storeWh = kept;
        if (!connected && storeWh >= reconnectWh) connected = true;
        var lampNeed = connected ? asked : 0;
        if (supplied < ownW + lampNeed) return Discharge(supplied, lampNeed);
        ownWh += ownW;
        Charge(supplied - ownW - lampNeed, airC);
        return lampNeed;
    }

    private double Discharge(double supplied, double lampNeed)
    {
        var efficiency = dischargeEfficiency;
        var ownDirect = Math.Min(ownW, supplied);
        var lampDirect = Math.Min(lampNeed, supplied - ownDirect);
        var ownDrawn = Math.Min(ownW - ownDirect, storeWh * efficiency);
        Draw(ownDrawn / efficiency, ownDrawn);
        ownWh += ownDirect + ownDrawn;
        var lampDeficit = lampNeed - lampDirect;
        if (lampDeficit <= 0) return lampNeed;
        var lampDrawn = Math.Min(lampDeficit, Math.Max(0, storeWh - floorWh) * efficiency);
        Draw(lampDrawn / efficiency, lampDrawn);
        if (lampDrawn < lampDeficit && reconnects) connected = false;
        return lampDirect + lampDrawn;
    }

    private void Draw(double fromStoreWh, double deliveredWh)
    {
        storeWh = Math.Max(0, storeWh - fromStoreWh);
        drawnWh += fromStoreWh;
        lossesWh += fromStoreWh - deliveredWh;
    }

    private void Charge(double surplus, double airC)
    {
        if (surplus <= 0) return;
        var room = airC < leastChargeAirC ? 0 : Room();
        var offered = surplus * chargeEfficiency;
        var stored = Math.Min(offered, room);
        var taken = offered <= room ? surplus : room / chargeEfficiency;
        storeWh += stored;
        lossesWh += taken - stored;
        dumpedWh += surplus - taken;
    }

    /// <summary>Most the store can take in this hour, Wh.</summary>
    private double Room()
    {
        if (!leadAcid) return Math.Max(0, fullWh - storeWh);
        return storeWh < taperWh ? taperWh - storeWh + taperStepWh : (fullWh - storeWh) / absorptionH;
    }

    private void CloseDay(int day, double daySupply, double dayDemand, double unserved, double least, double most)
    {
        var month = MonthDays.MonthOf(day % MonthDays.DaysCount) - 1;
        supply[month] += daySupply;
        demand[month] += dayDemand + 24 * ownW;
        demandWh += dayDemand;
        if (least < lowest[month]) lowest[month] = least;
        var slot = day / MonthDays.DaysCount * 12 + month;
        unservedByMonth[slot] += unserved;
        unservedWh += unserved;
        if (least < lowestByMonth[slot]) lowestByMonth[slot] = least;
        if (most >= (leadAcid ? FullLeadAcidFraction : FullLithiumFraction))
        {
            fullDays++;
            withoutFull = 0;
        }
        else
        {
            withoutFull++;
            longestWithoutFull = Math.Max(longestWithoutFull, withoutFull);
        }
    }

    private EnergyResult Sum(double[] states)
    {
        var perYear = new int[yearCount];
        for (var n = 0; n < darkNights.Length; n++) if (darkNights[n]) perYear[n / MonthDays.DaysCount]++;
        var worst = WorstSlot();
        var (worstYear, worstMonth) = (worst / 12, worst % 12 + 1);
        var from = (worstYear * MonthDays.DaysCount + MonthDays.FirstDayIndex(worstMonth)) * 24;
        var nightsPerRun = NightsPerRun();
        ImmutableArray<double> PerDay(double[] sums) => [.. sums.Select((s, m) => s / yearCount / MonthDays.Count(m + 1))];
        return new EnergyResult(
            yearCount,
            demandWh > 0 ? unservedWh / demandWh : 0,
            (double)perYear.Sum() / yearCount,
            DarkNightBound.UpperNinety(perYear, nightsPerRun),
            perYear.Max(),
            LongestRun(),
            [.. lowest],
            (double)fullDays / darkNights.Length,
            longestWithoutFull,
            drawnWh / fullWh / yearCount,
            PerDay(supply),
            PerDay(demand),
            [.. states.AsSpan(from, MonthDays.Count(worstMonth) * 24)],
            worstMonth,
            worstYear + 1,
            new EnergyLedger(inWh, lampWh, ownWh, lossesWh, dumpedWh, storeWh - fullWh, demandWh, unservedWh))
        {
            DarkNightRange = DarkNightBound.TwoSidedNinety(perYear, nightsPerRun),
        };
    }

    /// <summary>The month of the sequence with the most unserved energy; with none, the one with the lowest state of charge; the first of equals.</summary>
    private int WorstSlot()
    {
        var worst = 0;
        for (var i = 1; i < unservedByMonth.Length; i++)
        {
            if (unservedByMonth[i] > unservedByMonth[worst]
                || (unservedByMonth[i] == unservedByMonth[worst] && lowestByMonth[i] < lowestByMonth[worst]))
            {
                worst = i;
            }
        }

        return worst;
    }

    /// <summary>Mean length of the runs of dark nights; with none, the length assumed.</summary>
    private double NightsPerRun()
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
