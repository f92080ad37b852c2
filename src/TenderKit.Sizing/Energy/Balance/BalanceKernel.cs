using System.Runtime.CompilerServices;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy.Balance;

/// <summary>
/// The hours of the balance, for one candidate or several at once under the same weather and lamp hours. What it finds of each day is kept
/// in <see cref="Days"/>; sums over all days are in <see cref="Totals"/>. See <see cref="EnergyBalance"/> for the method.
/// </summary>
internal sealed class BalanceKernel<T, TMask>
    where T : struct, ILanes<T, TMask>
    where TMask : struct
{
    private const double TaperFraction = 0.9;
    private const double VoltageReserveFactor = 1.2;
    private const double ShortFraction = 1e-9;

    private readonly PlaneYears years;
    private readonly LampHours lamp;
    private readonly DayShapes shapes;
    private readonly PowerSystem[] systems;
    private readonly double[] fullWhByLane;
    private readonly bool anyPulseWidth;
    private readonly double warmestLeastAirC;
    private readonly TMask tracking;
    private readonly TMask reconnects;
    private readonly BatteryDays[] batteryDays;
    private readonly T usableAt25CWh;
    private readonly T selfDischargePerMonth;
    private readonly T reconnectFraction;
    private readonly T fullWh;
    private readonly T cellRisePerWh;
    private readonly T heatPerK;
    private readonly T powerPerWh;
    private readonly T currentPerWh;
    private readonly T maximumPowerV;
    private readonly T chargeA;
    private readonly T emptyV;
    private readonly T riseVPerWh;
    private readonly T lowLimitWh;
    private readonly T converterEfficiency;
    private readonly T chargeEfficiency;
    private readonly T dischargeEfficiency;
    private readonly T perDischargeEfficiency;
    private readonly T lampW;
    private readonly T ownW;
    private readonly T shortWh;
    private readonly T leastAirC;
    private readonly T taperWh;
    private readonly T taperStepWh;
    private readonly T perAbsorptionH;

    // what holds for a day
    private T floorWh;
    private T reconnectWh;
    private T keepFactor;

    public BalanceKernel(PlaneYears years, LampHours lamp, ReadOnlySpan<PowerSystem> candidates)
    {
        (this.years, this.lamp, shapes) = (years, lamp, DayShapes.Of(years));
        systems = candidates.ToArray();
        fullWhByLane = [.. systems.Select(s => FullWh(s, lamp))];
        anyPulseWidth = systems.Any(s => s.Control.Kind == ControlKind.PulseWidth);
        warmestLeastAirC = systems.Max(s => s.Battery.LeastChargeC - s.Battery.EnclosureRiseK);
        fullWh = T.Of(fullWhByLane);
        tracking = T.Less(T.Of(0), Each(s => s.Control.Kind == ControlKind.Tracking ? 1 : 0));
        batteryDays = [.. systems.Select(s => shapes.For(s.Battery))];
        usableAt25CWh = fullWh * Each(s => s.Battery.UsableDepthFraction);
        selfDischargePerMonth = Each(s => s.Battery.SelfDischargePerMonthFraction);
        reconnectFraction = Each(s => s.Control.ReconnectFraction);
        reconnects = T.Less(T.Of(0), reconnectFraction);
        cellRisePerWh = Each(s => (s.Array.NoctC - 20) / 800);
        heatPerK = Each(s => s.Array.PowerCoefficientPerK);
        powerPerWh = Each(s => s.Array.ArrayWp / 1000 * s.Array.DeratingFactor);
        currentPerWh = Each(s => s.Array.MaximumPowerCurrentA / 1000 * s.Array.DeratingFactor);
        maximumPowerV = Each(s => s.Array.MaximumPowerVoltageV);
        chargeA = Each(s => s.Control.ChargeCurrentA);
        emptyV = Each(s => ChargeVoltage.Line(s.Battery.Chemistry).EmptyFactor * s.Battery.NominalVoltageV);
        riseVPerWh = Each(s => ChargeVoltage.Line(s.Battery.Chemistry).RiseFactor * s.Battery.NominalVoltageV) / fullWh;
        lowLimitWh = chargeA * emptyV;
        converterEfficiency = Each(s => s.Control.Efficiency);
        chargeEfficiency = Each(s => s.Battery.ChargeEfficiency);
        dischargeEfficiency = Each(s => s.Battery.DischargeEfficiency);
        perDischargeEfficiency = T.Of(1) / dischargeEfficiency;
        (lampW, ownW) = (Each(s => s.LampInputW), Each(s => s.Control.OwnUseW));
        shortWh = Each(s => ShortFraction * Math.Max(s.LampInputW, 1e-3));
        leastAirC = Each(s => s.Battery.LeastChargeC - s.Battery.EnclosureRiseK);
        taperWh = Each(s => IsLead(s) ? TaperFraction : 1) * fullWh;
        perAbsorptionH = T.Of(1) / Each(s => s.Battery.AbsorptionTimeH);
        taperStepWh = (fullWh - taperWh) * perAbsorptionH;
        DayFullHours = [.. lamp.HourFraction.Chunk(24).Select(day => day.Sum())];
        DayCount = years.Weather.YearCount * MonthDays.DaysCount;
        Days = new DayRecords<T, TMask>(DayCount);
    }

    public int DayCount { get; }

    public PowerSystem SystemOf(int lane) => systems[lane];

    /// <summary>Equivalent full hours of each calendar day of the year, h.</summary>
    public double[] DayFullHours { get; }

    public DayRecords<T, TMask> Days { get; }

    public LedgerSums<T, TMask> Totals { get; } = new();

    /// <summary>Store when full, Wh.</summary>
    public double FullWhOf(int lane) => fullWhByLane[lane];

    /// <summary>Runs all days as a ring from a day of the year on, beginning full; returns the store at the end, Wh.</summary>
    public T Run(int startDay)
    {
        var (store, connected) = (fullWh, T.All(true));
        for (var step = 0; step < DayCount; step++)
        {
            var day = startDay + step;
            if (day >= DayCount) day -= DayCount;
            Day(day, ref store, ref connected, []);
        }

        return store;
    }

    /// <summary>The same, or null once more nights of the first candidate were dark than allowed.</summary>
    /// <param name="mostDarkNights">Dark nights allowed in all the days.</param>
    /// <param name="darkNights">Dark nights found, each once; a night cut by the ends of the run may be missing.</param>
    public T? Run(int startDay, double mostDarkNights, out int darkNights)
    {
        var (store, connected) = (fullWh, T.All(true));
        var (dark, eveningWasDark) = (0, true);
        for (var step = 0; step < DayCount; step++)
        {
            var day = startDay + step;
            if (day >= DayCount) day -= DayCount;
            Day(day, ref store, ref connected, []);
            if (!eveningWasDark && T.Has(Days.DarkMorning[day], 0)) dark++;
            eveningWasDark = T.Has(Days.DarkEvening[day], 0);
            if (eveningWasDark) dark++;
            if (dark <= mostDarkNights) continue;
            darkNights = dark;
            return null;
        }

        darkNights = dark;
        return store;
    }

    /// <summary>States of charge of one candidate, hour by hour over days that have been run, fractions.</summary>
    public double[] StatesOf(int lane, int firstDay, int dayCount)
    {
        var states = new double[dayCount * 24];
        var hours = new T[24];
        for (var i = 0; i < dayCount; i++)
        {
            var day = (firstDay + i) % DayCount;
            var (store, connected) = (Days.StartWh[day], Days.StartConnected[day]);
            Day(day, ref store, ref connected, hours);
            for (var h = 0; h < 24; h++) states[i * 24 + h] = hours[h][lane] / fullWhByLane[lane];
        }

        return states;
    }

    /// <summary>Levels of one candidate on a day, fractions of the full store: where the lamp is disconnected and where it comes back.</summary>
    public (double Disconnect, double Reconnect) LevelsOf(int lane, int day)
    {
        SetDay(day);
        return (floorWh[lane] / fullWhByLane[lane], reconnectWh[lane] / fullWhByLane[lane]);
    }

    private static bool IsLead(PowerSystem system) => system.Battery.Chemistry != BatteryChemistry.LithiumIronPhosphate;

    private static double FullWh(PowerSystem system, LampHours lamp)
    {
        var (hours, lit) = (0.0, 0.0);
        foreach (var f in lamp.HourFraction)
        {
            hours += f;
            if (f > 0) lit++;
        }

        var litMeanW = (lit > 0 ? system.LampInputW * hours / lit : 0) + system.Control.OwnUseW;
        return BatteryCapacity.EndOfLifeWh(system.Battery, BatteryCapacity.DischargeHours(system.Battery.RatedWh, litMeanW));
    }

    private T Each(Func<PowerSystem, double> of)
    {
        Span<double> values = stackalloc double[T.Count];
        for (var i = 0; i < values.Length; i++) values[i] = of(systems[i]);
        return T.Of(values);
    }

    private void SetDay(int day)
    {
        Span<double> usable = stackalloc double[T.Count], keep = stackalloc double[T.Count];
        for (var i = 0; i < usable.Length; i++)
        {
            usable[i] = batteryDays[i].CapacityFraction[day];
            keep[i] = batteryDays[i].SelfDischargePerHour[day];
        }

        var usableWh = usableAt25CWh * T.Of(usable);
        floorWh = fullWh - usableWh;
        reconnectWh = floorWh + reconnectFraction * usableWh;
        keepFactor = T.Of(1) - selfDischargePerMonth * T.Of(keep);
    }

    /// <summary>One day; keeps what it finds, or, where hours are asked for, writes the store after each hour there and keeps nothing.</summary>
    private void Day(int day, ref T storeWh, ref TMask isConnected, Span<T> hours)
    {
        SetDay(day);
        if (hours.IsEmpty) (Days.StartWh[day], Days.StartConnected[day]) = (storeWh, isConnected);
        var air = years.Weather.AirC.AsSpan(day * 24, 24);
        var plane = years.PlaneWhPerM2.AsSpan(day * 24, 24);
        var burning = lamp.HourFraction.AsSpan(day % MonthDays.DaysCount * 24, 24);
        var mayBeCold = shapes.LeastAirC[day] < warmestLeastAirC;
        var (store, connected, zero) = (storeWh, isConnected, T.Of(0));
        var (least, most, unserved, supply) = (store, zero, zero, zero);
        var (entered, dumped, refused, kept, served, own, drawn, selfLoss) = (zero, zero, zero, zero, zero, zero, zero, zero);
        var (darkMorning, dark) = (T.All(false), T.All(false));
        for (var h = 0; h < 24; h++)
        {
            if (h == 12) (darkMorning, dark) = (dark, T.All(false));
            var sun = plane[h];
            var delivered = zero;
            if (sun > 0)
            {
                var offeredW = Array(sun, air[h], store);
                entered += offeredW;
                var converted = offeredW * converterEfficiency;
                delivered = converted;
                if (T.Any(T.Less(lowLimitWh, converted)))
                {
                    delivered = T.Min(converted, chargeA * (emptyV + riseVPerWh * store));
                    dumped += converted - delivered;
                }

                supply += delivered;
            }

            var left = store * keepFactor;
            selfLoss += store - left;
            store = left;
            var ownShort = ownW;
            var surplus = zero;
            if (sun > 0)
            {
                var direct = T.Min(ownW, delivered);
                ownShort = ownW - direct;
                surplus = delivered - direct;
                own += direct;
            }

            if (T.Any(T.Less(zero, ownShort)))
            {
                var after = T.Max(store - ownShort * perDischargeEfficiency, zero);
                drawn += store - after;
                own += (store - after) * dischargeEfficiency;
                store = after;
            }

            connected = T.Or(connected, T.AndNot(T.All(true), T.Less(left, reconnectWh)));
            if (burning[h] > 0)
            {
                var asked = lampW * T.Of(burning[h]);
                var need = T.Select(connected, asked, zero);
                var direct = T.Min(need, surplus);
                surplus -= direct;
                var want = (need - direct) * perDischargeEfficiency;
                var wanted = store - want;
                var after = T.Max(wanted, T.Min(store, floorWh));
                connected = T.AndNot(connected, T.And(T.Less(wanted, after), reconnects));
                var taken = store - after;
                drawn += taken;
                store = after;
                var got = direct + taken * dischargeEfficiency;
                served += got;
                var missed = asked - got;
                var isShort = T.Less(shortWh, missed);
                dark = T.Or(dark, isShort);
                unserved += T.Select(isShort, missed, zero);
            }

            if (sun > 0 && T.Any(T.Less(zero, surplus)))
            {
                var room = T.Max(zero, T.Select(T.Less(store, taperWh), taperWh - store + taperStepWh, (fullWh - store) * perAbsorptionH));
                if (mayBeCold) room = T.Select(T.Less(T.Of(air[h]), leastAirC), zero, room);
                var offered = surplus * chargeEfficiency;
                var stored = T.Min(offered, room);
                refused += offered - stored;
                kept += stored;
                store += stored;
            }

            least = T.Min(least, store);
            most = T.Max(most, store);
            if (!hours.IsEmpty) hours[h] = store;
        }

        (storeWh, isConnected) = (store, connected);
        if (!hours.IsEmpty) return;
        Days.Close(day, supply, unserved, least, most, darkMorning, dark);
        Totals.Add(entered, dumped, refused, kept, served, own, drawn, selfLoss);
    }

    /// <summary>Energy of the array in one hour at the controller's input, Wh.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private T Array(double planeWhPerM2, double airC, T store)
    {
        var sun = T.Of(planeWhPerM2);
        var heat = T.Of(1) + heatPerK * (T.Of(airC) + cellRisePerWh * sun - T.Of(25));
        var greatest = T.Max(T.Of(0), powerPerWh * sun * heat);
        return anyPulseWidth ? T.Select(tracking, greatest, PulseWidth(sun, heat, greatest, store)) : greatest;
    }

    /// <summary>Current at the battery's voltage, falling to nothing where the battery's voltage goes from Vmp to 1.2 Vmp; never more than the greatest power.</summary>
    private T PulseWidth(T sun, T heat, T greatest, T store)
    {
        var batteryV = emptyV + riseVPerWh * store;
        var hotV = maximumPowerV * heat;
        var current = currentPerWh * sun * batteryV;
        var above = T.Less(hotV, batteryV);
        if (T.Any(above))
        {
            var match = T.Max(T.Of(0), (T.Of(VoltageReserveFactor) * hotV - batteryV) / (T.Of(VoltageReserveFactor - 1) * hotV));
            current = T.Select(above, current * match, current);
        }

        return T.Min(greatest, current);
    }
}
