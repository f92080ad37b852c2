using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy.Balance;

/// <summary>What the balance needs of each day of a series whatever the system: found once for each series and kept as long as the series lives.</summary>
internal sealed class DayShapes
{
    private static readonly ConditionalWeakTable<PlaneYears, DayShapes> Known = [];

    private readonly ConcurrentDictionary<(BatteryChemistry Chemistry, double EnclosureRiseK), BatteryDays> batteries = new();

    private DayShapes(PlaneYears years)
    {
        var days = years.PlaneWhPerM2.Length / 24;
        (MeanAirC, LeastAirC) = (new double[days], new double[days]);
        for (var day = 0; day < days; day++)
        {
            var (sum, least) = (0.0, double.PositiveInfinity);
            foreach (var c in years.Weather.AirC.AsSpan(day * 24, 24))
            {
                sum += c;
                least = Math.Min(least, c);
            }

            (MeanAirC[day], LeastAirC[day]) = (sum / 24, least);
            var plane = 0.0;
            foreach (var wh in years.PlaneWhPerM2.AsSpan(day * 24, 24)) plane += wh;
            MonthlyPlaneWhPerM2[MonthDays.MonthOf(day % MonthDays.DaysCount) - 1] += plane;
        }
    }

    public double[] MeanAirC { get; }

    public double[] LeastAirC { get; }

    /// <summary>Sums over all years, January first.</summary>
    public double[] MonthlyPlaneWhPerM2 { get; } = new double[12];

    /// <summary>What the weather of each day does to batteries of a kind in their enclosure.</summary>
    public BatteryDays For(BatteryModel battery) => batteries.GetOrAdd((battery.Chemistry, battery.EnclosureRiseK), kind => new BatteryDays(
        [.. MeanAirC.Select(c => BatteryCapacity.TemperatureFactor(kind.Chemistry, c + kind.EnclosureRiseK))],
        [.. MeanAirC.Select(c => BatteryCapacity.SelfDischargePerHourFraction(1, c + kind.EnclosureRiseK))]));

    public static DayShapes Of(PlaneYears years) => Known.GetValue(years, y => new DayShapes(y));
}

/// <summary>Days of a series as a kind of battery feels them.</summary>
/// <param name="CapacityFraction">Capacity at the day's temperature over that at 25 degC.</param>
/// <param name="SelfDischargePerHour">Self-discharge of an hour for a monthly figure of one, fraction.</param>
internal sealed record BatteryDays(double[] CapacityFraction, double[] SelfDischargePerHour);
