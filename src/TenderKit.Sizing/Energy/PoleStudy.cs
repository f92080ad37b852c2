using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Place, plane and lamp of one pole, and how its years are made; every factor is a design rule or the user's own.</summary>
/// <param name="CautiousFactor">Factor on irradiation for the climate's grade, fraction.</param>
/// <param name="AlbedoFraction">Ground reflectance, fraction.</param>
/// <param name="ShadedFraction">Share of beam and sky lost to shading, fraction.</param>
/// <param name="SwitchingElevationDegrees">Sun elevation at which the lamp switches, degrees.</param>
/// <param name="LampW">Input of the lamp at full level, at its own terminals, W.</param>
public sealed record PoleInputs(
    MonthlyClimate Climate,
    double CautiousFactor,
    PlaneOrientation Plane,
    double AlbedoFraction,
    double ShadedFraction,
    double SwitchingElevationDegrees,
    LightingSchedule Schedule,
    SequenceSettings Sequence,
    double LampW);

/// <summary>Sun and night of one pole, before any system is chosen. Twelve values each, January first.</summary>
/// <param name="ExtraterrestrialKWhPerM2">On a horizontal plane outside the atmosphere, on the mean day of the month, kWh/m2 a day.</param>
/// <param name="PlaneKWhPerM2">On the module plane, from the irradiation as given, neither lowered nor shaded, kWh/m2 a day.</param>
/// <param name="SimulatedPlaneKWhPerM2">On the module plane, mean of the years simulated: lowered by the cautious factor and shaded, kWh/m2 a day.</param>
/// <param name="NightH">Mean length of the nights that begin in the month, h.</param>
/// <param name="LoadWh">What the lamp takes in such a night, at its own terminals, Wh.</param>
public sealed record PoleYears(
    PoleInputs Inputs,
    ImmutableArray<NightOfYear> Nights,
    ImmutableArray<double> ExtraterrestrialKWhPerM2,
    ImmutableArray<double> PlaneKWhPerM2,
    ImmutableArray<double> SimulatedPlaneKWhPerM2,
    ImmutableArray<double> NightH,
    ImmutableArray<double> LoadWh,
    LampHours Lamp,
    PlaneYears Years);

/// <summary>One system through all years.</summary>
/// <param name="AutonomyNights">Nights of the longest month's use that a full battery feeds without sun, at end of life in the coldest month.</param>
/// <param name="BalanceErrorFraction">What the ledger fails to close by, over the energy in.</param>
public sealed record PoleEnergy(PowerSystem System, EnergyResult Result, double AutonomyNights, double BalanceErrorFraction);

/// <summary>Energy of one pole at one place through every night.</summary>
public static class PoleStudy
{
    /// <summary>Sun, nights and years of a pole.</summary>
    public static PoleYears YearsOf(PoleInputs inputs)
    {
        var nights = NightCalendar.ForLatitude(inputs.Climate.LatitudeDegrees, inputs.SwitchingElevationDegrees);
        var lamp = ScheduleHours.For(inputs.Schedule, nights);
        return YearsOf(inputs, SyntheticYears.Generate(inputs.Climate, inputs.Sequence, inputs.CautiousFactor), nights, lamp);
    }

    /// <summary>The same pole under the same weather with its module facing another way.</summary>
    public static PoleYears Turned(PoleYears pole, PlaneOrientation plane) => YearsOf(pole.Inputs with { Plane = plane }, pole.Years.Weather, pole.Nights, pole.Lamp);

    private static PoleYears YearsOf(PoleInputs inputs, HourlyYears hours, ImmutableArray<NightOfYear> nights, LampHours lamp)
    {
        var years = TiltedPlane.Hourly(hours, inputs.Plane, inputs.AlbedoFraction, inputs.ShadedFraction);
        return new PoleYears(
            inputs,
            nights,
            [.. Enumerable.Range(1, 12).Select(m => SunGeometry.DailyExtraterrestrialKWhPerM2(inputs.Climate.LatitudeDegrees, SunGeometry.MeanDayOfMonth(m)))],
            TiltedPlane.MonthlyKWhPerM2(inputs.Climate, inputs.Plane, inputs.AlbedoFraction),
            MonthlyMeanKWh(years),
            ScheduleHours.For(LightingSchedule.DuskToDawn, nights).MonthlyFullHours,
            [.. lamp.MonthlyFullHours.Select(h => h * inputs.LampW)],
            lamp,
            years);
    }

    /// <summary>One system through these years.</summary>
    public static PoleEnergy EnergyOf(PoleYears pole, PowerSystem system)
    {
        var result = EnergyBalance.Run(pole.Years, pole.Lamp, system);
        var ledger = result.Ledger;
        var error = ledger.InWh - ledger.LampWh - ledger.OwnUseWh - ledger.LossesWh - ledger.DumpedWh - ledger.StoreChangeWh;
        return new PoleEnergy(system, result, AutonomyNights(pole, system), Math.Abs(error) / Math.Max(ledger.InWh, 1));
    }

    /// <summary>Usable energy of a full battery at end of life in the coldest month over the longest month's use.</summary>
    private static double AutonomyNights(PoleYears pole, PowerSystem system)
    {
        var nightH = Math.Max(pole.Lamp.LongestMonthFullHours, 1e-3);
        var useWh = system.LampInputW * nightH + system.Control.OwnUseW * 24;
        var drawW = system.LampInputW + system.Control.OwnUseW;
        var hours = BatteryCapacity.DischargeHours(system.Battery.RatedWh, drawW);
        return BatteryCapacity.UsableWh(system.Battery, pole.Inputs.Climate.MeanC.Min(), hours) / Require.Positive(useWh, nameof(useWh));
    }

    internal static ImmutableArray<double> MonthlyMeanKWh(PlaneYears years)
    {
        var sums = new double[12];
        var plane = years.PlaneWhPerM2.AsSpan();
        for (var i = 0; i < plane.Length; i++) sums[MonthDays.MonthOf(i / 24 % MonthDays.DaysCount) - 1] += plane[i];
        return [.. sums.Select((s, m) => s / 1000 / years.Weather.YearCount / MonthDays.Count(m + 1))];
    }
}
