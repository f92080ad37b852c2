using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;

namespace TenderKit.Benchmarks.Energy;

/// <summary>Cost of one simulated hour of one candidate, beside the bare arithmetic it cannot do without.</summary>
[MemoryDiagnoser]
public class BalanceBenchmarks
{
    private const int Years = 50;
    private const int Hours = Years * MonthDays.HoursCount;

    private static readonly MonthlyClimate Climate = new(
        -13.9, 33.8, [5.3, 5.3, 5.4, 5.4, 5.2, 4.9, 5.0, 5.7, 6.4, 6.6, 6.3, 5.5], [22, 22, 21, 20, 18, 16, 16, 18, 21, 23, 23, 22],
        [27, 27, 27, 26, 25, 24, 23, 25, 28, 30, 29, 27], [17, 17, 17, 15, 12, 9, 9, 10, 13, 16, 17, 17], 2, 37, ClimateGrade.MeansWithSource, "invented");

    private PlaneYears years = null!;
    private LampHours lamp = null!;
    private ImmutableArray<PowerSystem> lithium;
    private ImmutableArray<PowerSystem> gel;

    [GlobalSetup]
    public void Make()
    {
        years = TiltedPlane.Hourly(SyntheticYears.Generate(Climate, new SequenceSettings(Years, 19, 0.29, 0.08), 0.95), new PlaneOrientation(20, 0), 0.2, 0);
        lamp = ScheduleHours.For(LightingSchedule.DuskToDawn, NightCalendar.ForLatitude(-13.9, -0.833));
        lithium = [.. Enumerable.Range(0, 4).Select(i => System(i, ControlKind.Tracking, new BatteryModel(BatteryChemistry.LithiumIronPhosphate, 700 + 40 * i, 12.8, 5, 1.05, 0.9, 0.8, 0.97, 0.98, 0.02, 10, 0)))];
        gel = [.. Enumerable.Range(0, 4).Select(i => System(i, ControlKind.PulseWidth, new BatteryModel(BatteryChemistry.GelLeadAcid, 1200 + 60 * i, 12, 10, 1.15, 0.7, 0.8, 0.88, 0.95, 0.02, 10, -15)))];
    }

    [Benchmark(OperationsPerInvoke = Hours)]
    public EnergyResult LithiumTracking() => EnergyBalance.Run(years, lamp, lithium[0]);

    [Benchmark(OperationsPerInvoke = Hours)]
    public EnergyResult GelPulseWidth() => EnergyBalance.Run(years, lamp, gel[0]);

    [Benchmark(OperationsPerInvoke = 4 * Hours)]
    public ImmutableArray<EnergyResult> LithiumTrackingFourTogether() => EnergyBalance.RunMany(years, lamp, lithium);

    [Benchmark(OperationsPerInvoke = 4 * Hours)]
    public ImmutableArray<EnergyResult> GelPulseWidthFourTogether() => EnergyBalance.RunMany(years, lamp, gel);

    /// <summary>A whole curve of equal reliability, 50 years; the time of all of it.</summary>
    [Benchmark]
    public ImmutableArray<CurvePoint> Curve() => CoarseCurve.Of(years, lamp, lithium[0], new DarkNightTarget(1, ByUpperBound: true));

    /// <summary>One multiplication, one addition and two limits an hour on the same irradiation and lamp hours, each waiting for the one before.</summary>
    [Benchmark(OperationsPerInvoke = Hours, Baseline = true)]
    public double BareChain()
    {
        var store = 500.0;
        var burning = lamp.HourFraction.AsSpan();
        for (var start = 0; start < years.PlaneWhPerM2.Length; start += MonthDays.HoursCount)
        {
            var plane = years.PlaneWhPerM2.AsSpan(start, MonthDays.HoursCount);
            for (var h = 0; h < plane.Length; h++)
                store = double.MinNative(560, double.MaxNative(0, store * 0.99999 + (0.1 * plane[h] - 20 * burning[h])));
        }

        return store;
    }

    private static PowerSystem System(int step, ControlKind kind, BatteryModel battery)
    {
        var wp = 120.0 + 10 * step;
        return new PowerSystem(new ArrayModel(wp, 18, wp / 18, -0.0038, 45, 0.84), battery, new ControlModel(kind, 15, kind == ControlKind.Tracking ? 0.95 : 1, 0.2, 0.3), 20);
    }
}
