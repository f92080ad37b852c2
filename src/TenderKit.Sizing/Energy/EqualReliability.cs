using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Dark nights a year that a system must not pass.</summary>
/// <param name="DarkNightsPerYear">Most dark nights a year, mean over the years, 0 or more.</param>
/// <param name="ByUpperBound">Whether the upper 90 % bound of the mean is held to it, as in a bid, or the mean itself.</param>
public sealed record DarkNightTarget(double DarkNightsPerYear, bool ByUpperBound = false)
{
    /// <summary>Whether a simulated system keeps it.</summary>
    public bool KeptBy(EnergyResult result) => (ByUpperBound ? result.DarkNightsUpperBound : result.DarkNightsPerYear) <= DarkNightsPerYear;
}

/// <summary>Sizes that are tried: whole multiples of these.</summary>
/// <param name="ArrayWp">Step of the array, Wp.</param>
/// <param name="BatteryWh">Step of the battery's rated energy, Wh.</param>
public sealed record SizeSteps(double ArrayWp, double BatteryWh);

/// <summary>One array and one battery, the smallest that keeps a target, with the years they went through.</summary>
public sealed record ReliabilityPoint(PowerSystem System, EnergyResult Result)
{
    public double ArrayWp => System.Array.ArrayWp;

    public double BatteryWh => System.Battery.RatedWh;

    public double BatteryAh => BatteryWh / System.Battery.NominalVoltageV;

    /// <summary>Relative price, in the currency of the prices.</summary>
    public double Price(double perWp, double perWh) => ArrayWp * perWp + BatteryWh * perWh;
}

/// <summary>
/// Arrays and batteries of equal reliability: for each array the smallest battery that keeps a number of dark nights a year, by the hourly energy balance.
/// </summary>
/// <remarks>
/// A search for the smallest needs a quantity that never falls as the size grows. Without hysteresis the unserved energy is such a quantity
/// but for the self-discharge of a large store. With hysteresis a larger store may reconnect later and lose more nights, and a store that is nearly
/// enough may lose fewer nights than without, since it rests and recovers. So the search steps up and bisects with hysteresis off; the size found is
/// tried with hysteresis as given, enlarged until it keeps the target, and lowered while one step less or 15 % less keeps it too: neither does in the end.
/// </remarks>
public static class EqualReliability
{
    /// <summary>Largest battery tried, nights of the longest month's use from its usable energy: beyond this nobody builds a street light.</summary>
    public const double MostNights = 40;

    /// <summary>Largest array tried, times the array that just feeds the worst month.</summary>
    public const double MostArrays = 12;

    private const double LadderRatio = 1.1;
    private const int LadderFrom = -2;
    private const int LadderTo = 14;
    private const double LoweredFraction = 0.15;
    private const double LeastSupplyWh = 1e-6;

    /// <summary>The curve: arrays in ratio 1.1 from 0.83 to 3.8 times the one that just feeds the worst month; those no battery serves are left out.</summary>
    /// <param name="template">System whose array, controller current and battery are scaled; the rest stays.</param>
    public static ImmutableArray<ReliabilityPoint> Curve(PlaneYears years, LampHours lamp, PowerSystem template, DarkNightTarget target, SizeSteps steps)
    {
        var even = EvenArrayWp(years, lamp, template);
        return [.. Enumerable.Range(LadderFrom, LadderTo - LadderFrom + 1)
            .Select(i => Math.Ceiling(even * Math.Pow(LadderRatio, i) / steps.ArrayWp) * steps.ArrayWp)
            .Distinct()
            .AsParallel().AsOrdered()
            .Select(arrayWp => SmallestBattery(years, lamp, template, target, steps, arrayWp))
            .OfType<ReliabilityPoint>()];
    }

    /// <summary>The point of least array Wp x its price + battery Wh x its price; of equals the smallest array.</summary>
    public static ReliabilityPoint? LeastCost(IEnumerable<ReliabilityPoint> curve, double pricePerWp, double pricePerWh) =>
        curve.OrderBy(p => p.Price(pricePerWp, pricePerWh)).ThenBy(p => p.ArrayWp).FirstOrDefault();

    /// <summary>The smallest battery for an array, or null when none up to <see cref="MostNights"/> keeps the target.</summary>
    public static ReliabilityPoint? SmallestBattery(
        PlaneYears years, LampHours lamp, PowerSystem template, DarkNightTarget target, SizeSteps steps, double arrayWp)
    {
        var most = (int)Math.Ceiling(OneNightRatedWh(lamp, template) * MostNights / steps.BatteryWh);
        return Smallest(n => Sized(template, arrayWp, n * steps.BatteryWh), years, lamp, target, most);
    }

    /// <summary>The smallest array for a battery, or null when none up to <see cref="MostArrays"/> keeps the target.</summary>
    public static ReliabilityPoint? SmallestArray(
        PlaneYears years, LampHours lamp, PowerSystem template, DarkNightTarget target, SizeSteps steps, double batteryWh)
    {
        var most = (int)Math.Ceiling(EvenArrayWp(years, lamp, template) * MostArrays / steps.ArrayWp);
        return Smallest(n => Sized(template, n * steps.ArrayWp, batteryWh), years, lamp, target, most);
    }

    /// <summary>The template with another array and battery; string current and controller current follow the array.</summary>
    public static PowerSystem Sized(PowerSystem template, double arrayWp, double batteryWh)
    {
        var ratio = Require.Positive(arrayWp, nameof(arrayWp)) / template.Array.ArrayWp;
        return template with
        {
            Array = template.Array with { ArrayWp = arrayWp, MaximumPowerCurrentA = template.Array.MaximumPowerCurrentA * ratio },
            Control = template.Control with { ChargeCurrentA = template.Control.ChargeCurrentA * ratio },
            Battery = template.Battery with { RatedWh = Require.Positive(batteryWh, nameof(batteryWh)) },
        };
    }

    /// <summary>Rated energy of a battery whose usable part feeds the longest month's night once, own use of the day included, Wh.</summary>
    internal static double OneNightRatedWh(LampHours lamp, PowerSystem template)
    {
        var battery = template.Battery;
        var useWh = template.LampInputW * lamp.LongestMonthFullHours + template.Control.OwnUseW * 24;
        return Math.Max(1, useWh / (battery.UsableDepthFraction * battery.EndOfLifeFraction * battery.DischargeEfficiency));
    }

    /// <summary>Array that just feeds the month of least supply over use through the losses of the store, Wp.</summary>
    internal static double EvenArrayWp(PlaneYears years, LampHours lamp, PowerSystem template)
    {
        var result = EnergyBalance.Run(years, lamp, Sized(template, template.Array.ArrayWp, OneNightRatedWh(lamp, template)));
        var through = template.Battery.ChargeEfficiency * template.Battery.DischargeEfficiency;
        var ratios = result.MonthlyDemandWhPerDay.Zip(result.MonthlySupplyWhPerDay, (use, supply) => use / Math.Max(LeastSupplyWh, supply * through));
        var yearly = result.MonthlyDemandWhPerDay.Sum() / Math.Max(LeastSupplyWh, result.MonthlySupplyWhPerDay.Sum() * through);
        return template.Array.ArrayWp * Math.Clamp(ratios.Max(), 1e-3, Math.Max(1e-3, MostArrays * yearly));
    }

    /// <summary>Fewest steps that keep the target: stepped up and bisected with hysteresis off, then from there with hysteresis as given.</summary>
    private static ReliabilityPoint? Smallest(Func<int, PowerSystem> sized, PlaneYears years, LampHours lamp, DarkNightTarget target, int most)
    {
        EnergyResult Run(PowerSystem system) => EnergyBalance.Run(years, lamp, system);
        bool KeptWithoutHysteresis(int n) => target.KeptBy(Run(sized(n) with { Control = sized(n).Control with { ReconnectFraction = 0 } }));
        bool Kept(int n) => target.KeptBy(Run(sized(n)));

        if (Fewest(KeptWithoutHysteresis, 1, 1.5, Math.Max(1, most / 100), most) is not { } least) return null;
        var found = Kept(least) ? least : Fewest(Kept, least + 1, 1.02, least + 1, most);
        if (found is null) return null;
        var n = Lowered(Kept, found.Value);
        return new ReliabilityPoint(sized(n), Run(sized(n)));
    }

    /// <summary>Fewest from <paramref name="least"/>: grown from <paramref name="start"/> by a factor until kept, then bisected between the last two.</summary>
    private static int? Fewest(Func<int, bool> kept, int least, double growth, int start, int most)
    {
        var (failed, n) = (least - 1, Math.Max(least, start));
        while (!kept(n))
        {
            if (n >= most) return null;
            failed = n;
            n = Math.Min(most, Math.Max(n + 1, (int)(n * growth)));
        }

        return Bisected(kept, failed, n);
    }

    /// <summary>Lowered until neither one step less nor <see cref="LoweredFraction"/> less is kept.</summary>
    private static int Lowered(Func<int, bool> kept, int n)
    {
        while (n > 1)
        {
            var lower = (int)(n * (1 - LoweredFraction));
            if (lower >= 1 && kept(lower)) n = lower;
            else if (n - 1 > lower && kept(n - 1)) n = Bisected(kept, lower, n - 1);
            else break;
        }

        return n;
    }

    private static int Bisected(Func<int, bool> kept, int failed, int n)
    {
        while (n - failed > 1)
        {
            var middle = failed + (n - failed) / 2;
            if (kept(middle)) n = middle;
            else failed = middle;
        }

        return n;
    }
}
