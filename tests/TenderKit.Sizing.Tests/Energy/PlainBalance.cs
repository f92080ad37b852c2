using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;

namespace TenderKit.Sizing.Tests.Energy;

/// <summary>
/// The balance once more, as plain and slow as it can be written from the description of <see cref="EnergyBalance"/>: one hour after the other,
/// everything worked out anew, nothing shared with the fast one but the records, the capacity of the battery and the charging voltage.
/// </summary>
internal sealed class PlainBalance
{
    public double InWh, LampWh, OwnWh, LossesWh, DumpedWh, DrawnWh, DemandWh, UnservedWh, StoreChangeWh;

    /// <summary>State of charge after each hour of the series, fraction.</summary>
    public double[] States = [];

    public bool[] DarkNights = [];

    public int FullDays, LongestWithoutFull;

    public static PlainBalance Run(PlaneYears years, LampHours lamp, PowerSystem system)
    {
        var run = new PlainBalance { States = new double[years.PlaneWhPerM2.Length], DarkNights = new bool[years.PlaneWhPerM2.Length / 24] };
        run.Go(years, lamp, system);
        return run;
    }

    private void Go(PlaneYears years, LampHours lamp, PowerSystem system)
    {
        var (array, battery, control, lampW) = system;
        var lead = battery.Chemistry != BatteryChemistry.LithiumIronPhosphate;
        var lit = lamp.HourFraction.Where(f => f > 0).ToList();
        var draw = (lit.Count > 0 ? lampW * lit.Average() : 0) + control.OwnUseW;
        var full = BatteryCapacity.EndOfLifeWh(battery, draw > 0 ? battery.RatedWh / draw : double.MaxValue);
        var store = full;
        var isOn = true;
        var withoutFull = 0;
        var days = DarkNights.Length;
        for (var step = 0; step < days; step++)
        {
            var day = (SunniestMonthStart(years, lamp) + step) % days;
            var meanAir = Enumerable.Range(0, 24).Average(h => years.Weather.AirC[day * 24 + h]);
            var batteryC = meanAir + battery.EnclosureRiseK;
            var floor = full - full * battery.UsableDepthFraction * BatteryCapacity.TemperatureFactor(battery.Chemistry, batteryC);
            var reconnect = floor + control.ReconnectFraction * (full - floor);
            var most = 0.0;
            for (var h = 0; h < 24; h++)
            {
                var i = day * 24 + h;
                var asked = lampW * lamp.HourFraction[i % 8760];
                var volts = ChargeVoltage.AtV(battery.Chemistry, battery.NominalVoltageV, store / full);

                // array and controller
                var cell = years.Weather.AirC[i] + (array.NoctC - 20) / 800 * years.PlaneWhPerM2[i];
                var heat = 1 + array.PowerCoefficientPerK * (cell - 25);
                var power = Math.Max(0, array.ArrayWp * years.PlaneWhPerM2[i] / 1000 * heat * array.DeratingFactor);
                if (control.Kind == ControlKind.PulseWidth)
                {
                    var vmp = array.MaximumPowerVoltageV * heat;
                    var share = volts <= vmp ? 1 : volts >= 1.2 * vmp ? 0 : (1.2 * vmp - volts) / (0.2 * vmp);
                    power = Math.Min(power, array.MaximumPowerCurrentA * years.PlaneWhPerM2[i] / 1000 * array.DeratingFactor * volts * share);
                }

                InWh += power;
                var behind = power * control.Efficiency;
                LossesWh += power - behind;
                var fromArray = Math.Min(behind, control.ChargeCurrentA * volts);
                DumpedWh += behind - fromArray;

                // self-discharge, reconnection
                var lost = store * battery.SelfDischargePerMonthFraction / (30.4 * 24) * Math.Pow(2, (batteryC - 25) / 10);
                store -= lost;
                LossesWh += lost;
                if (store >= reconnect) isOn = true;

                // own use: sun first, then the store to its bottom
                var ownFromSun = Math.Min(control.OwnUseW, fromArray);
                fromArray -= ownFromSun;
                var ownFromStore = Math.Min(control.OwnUseW - ownFromSun, store * battery.DischargeEfficiency);
                Take(ref store, ownFromStore, battery);
                OwnWh += ownFromSun + ownFromStore;

                // lamp: sun first, then the store to its floor
                var need = isOn ? asked : 0;
                var lampFromSun = Math.Min(need, fromArray);
                fromArray -= lampFromSun;
                var lampFromStore = Math.Min(need - lampFromSun, Math.Max(0, store - floor) * battery.DischargeEfficiency);
                Take(ref store, lampFromStore, battery);
                var got = lampFromSun + lampFromStore;
                if (need - got > 1e-9 * lampW && control.ReconnectFraction > 0) isOn = false;
                LampWh += got;
                DemandWh += asked;
                if (asked - got > 1e-9 * Math.Max(lampW, 1e-3))
                {
                    UnservedWh += asked - got;
                    DarkNights[h < 12 ? (day + days - 1) % days : day] = true;
                }

                // charge
                var room = !lead ? full - store : store < 0.9 * full ? 0.9 * full - store + 0.1 * full / battery.AbsorptionTimeH : (full - store) / battery.AbsorptionTimeH;
                if (years.Weather.AirC[i] + battery.EnclosureRiseK < battery.LeastChargeC) room = 0;
                var into = Math.Min(fromArray * battery.ChargeEfficiency, Math.Max(0, room));
                store += into;
                LossesWh += into / battery.ChargeEfficiency - into;
                DumpedWh += fromArray - into / battery.ChargeEfficiency;
                States[i] = store / full;
                most = Math.Max(most, store / full);
            }

            withoutFull = most >= (lead ? 0.98 : 0.995) ? 0 : withoutFull + 1;
            if (withoutFull == 0) FullDays++;
            LongestWithoutFull = Math.Max(LongestWithoutFull, withoutFull);
        }

        StoreChangeWh = store - full;
    }

    private void Take(ref double store, double delivered, BatteryModel battery)
    {
        var taken = delivered / battery.DischargeEfficiency;
        store = Math.Max(0, store - taken);
        DrawnWh += taken;
        LossesWh += taken - delivered;
    }

    private static int SunniestMonthStart(PlaneYears years, LampHours lamp)
    {
        if (sunniest.Years == years && sunniest.Lamp == lamp) return sunniest.Start;
        double Plenty(int month) => Enumerable.Range(0, years.PlaneWhPerM2.Length).Where(i => MonthDays.MonthOf(i / 24 % 365) == month).Sum(i => years.PlaneWhPerM2[i])
            / MonthDays.Count(month) / Math.Max(lamp.MonthlyFullHours[month - 1], 1e-3);
        var best = 1;
        for (var m = 2; m <= 12; m++) if (Plenty(m) > Plenty(best) * (1 + 1e-12)) best = m;
        sunniest = (years, lamp, MonthDays.FirstDayIndex(best));
        return sunniest.Start;
    }

    [ThreadStatic]
    private static (PlaneYears? Years, LampHours? Lamp, int Start) sunniest;
}
