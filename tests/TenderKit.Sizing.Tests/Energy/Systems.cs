using System.Runtime.InteropServices;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Tests.Climate;

namespace TenderKit.Sizing.Tests.Energy;

/// <summary>Power systems and weather for tests.</summary>
internal static class Systems
{
    public static BatteryModel Lithium(double ratedWh) => new(
        BatteryChemistry.LithiumIronPhosphate, ratedWh, 12.8, 5, 1.05, 0.8, 0.8, 0.97, 0.97, 0.03, 10, 0);

    public static BatteryModel Gel(double ratedWh) => new(
        BatteryChemistry.GelLeadAcid, ratedWh, 12, 10, 1.15, 0.5, 0.8, 0.85, 0.95, 0.02, 10, -20);

    /// <summary>No losses, no end of life, no temperature, all of it usable.</summary>
    public static BatteryModel Ideal(double ratedWh) => new(
        BatteryChemistry.LithiumIronPhosphate, ratedWh, 12.8, 5, 1, 1, 1, 1, 1, 0, 0, -60);

    public static ArrayModel Array(double wp) => new(wp, 18, wp / 18, -0.004, 45, 0.85);

    public static ArrayModel IdealArray(double wp) => new(wp, 18, wp / 18, 0, 45, 1);

    public static ControlModel Tracking { get; } = new(ControlKind.Tracking, 20, 0.95, 0.2, 0.3);

    public static ControlModel PulseWidth { get; } = new(ControlKind.PulseWidth, 20, 1, 0.1, 0.3);

    public static ControlModel IdealControl { get; } = new(ControlKind.Tracking, 1e6, 1, 0, 0);

    public static LampHours AllNight(double latitude) => ScheduleHours.For(LightingSchedule.DuskToDawn, NightCalendar.ForLatitude(latitude, -0.833));

    public static PlaneYears Weather(double latitude, double clearness, int years, int seed = 1) => TiltedPlane.Hourly(
        SyntheticYears.Generate(Climates.Constant(latitude, clearness), new SequenceSettings(years, seed, 0.29, 0.08), 1),
        new PlaneOrientation(Math.Max(10, Math.Abs(latitude)), latitude >= 0 ? 180 : 0), 0.2, 0);

    /// <summary>Days of one hour of sun at noon, 1000 Wh/m2 times the day's factor, at 25 degC.</summary>
    public static PlaneYears NoonSun(int years, Func<int, double> dayFactor)
    {
        var plane = new double[years * 8760];
        for (var d = 0; d < years * 365; d++) plane[d * 24 + 12] = 1000 * dayFactor(d);
        var air = new double[plane.Length];
        System.Array.Fill(air, 25);
        var hours = ImmutableCollectionsMarshal.AsImmutableArray(plane);
        return new PlaneYears(new PlaneOrientation(0, 0), new HourlyYears(0, years, hours, ImmutableCollectionsMarshal.AsImmutableArray(air)), hours);
    }

    /// <summary>The lamp burns one hour, from 20 to 21, at full level.</summary>
    public static LampHours OneHour { get; } = new(
        [.. Enumerable.Range(0, 8760).Select(i => i % 24 == 20 ? 1.0 : 0.0)], [.. Enumerable.Repeat(1.0, 12)]);
}
