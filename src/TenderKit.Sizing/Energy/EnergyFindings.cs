using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Findings about a power system under its weather.</summary>
public static class EnergyFindings
{
    private const double NotableLossFraction = 0.15;
    private const double NotableDumpFraction = 0.10;
    private const double NotableHotFraction = 0.01;

    /// <summary>Data sheets of lithium iron phosphate packs allow charging from 0 to 45 degC (read).</summary>
    private const double HottestLithiumChargeC = 45;

    /// <summary>TK322 module voltage wasted by pulse-width control, TK323 charging stopped by cold, TK324 array current above the controller, TK329 lithium in the heat.</summary>
    public static IReadOnlyList<Diagnostic> Examine(PlaneYears years, PowerSystem system, Place place) =>
        [.. Voltage(system, place), .. Cold(years, system, place), .. Current(system, place), .. Hot(years, system, place)];

    private static IEnumerable<Diagnostic> Voltage(PowerSystem system, Place place)
    {
        if (system.Control.Kind != ControlKind.PulseWidth) yield break;
        var batteryV = ChargeVoltage.AtV(system.Battery.Chemistry, system.Battery.NominalVoltageV, 0.5);
        var lost = 1 - batteryV / system.Array.MaximumPowerVoltageV;
        if (lost > 2 * NotableLossFraction)
        {
            yield return Diagnostic.Warning(
                "TK322", FormattableString.Invariant($"With pulse-width control the array of {system.Array.MaximumPowerVoltageV:0.0} V works at the battery's {batteryV:0.0} V: {lost:P0} of its power is lost, limit {2 * NotableLossFraction:P0}. Use a tracking controller or a module of lower voltage."), place);
        }
        else if (lost < 0)
        {
            yield return Diagnostic.Warning(
                "TK322", FormattableString.Invariant($"The array's {system.Array.MaximumPowerVoltageV:0.0} V is below the battery's charging voltage of {batteryV:0.0} V: it will hardly charge. Use modules of higher voltage or more in series."), place);
        }
    }

    private static IEnumerable<Diagnostic> Cold(PlaneYears years, PowerSystem system, Place place)
    {
        var battery = system.Battery;
        var (all, stopped) = (0.0, 0.0);
        for (var i = 0; i < years.PlaneWhPerM2.Length; i++)
        {
            all += years.PlaneWhPerM2[i];
            if (years.Weather.AirC[i] + battery.EnclosureRiseK < battery.LeastChargeC) stopped += years.PlaneWhPerM2[i];
        }

        if (stopped <= 0) yield break;
        yield return Diagnostic.Warning(
            "TK323", FormattableString.Invariant($"The battery is colder than {battery.LeastChargeC:0} degC, its least charging temperature, during {stopped / all:P1} of the sunshine. Bury or heat the battery, or choose another chemistry."), place);
    }

    private static IEnumerable<Diagnostic> Current(PowerSystem system, Place place)
    {
        var batteryV = ChargeVoltage.AtV(system.Battery.Chemistry, system.Battery.NominalVoltageV, 0.5);
        var wanted = system.Control.Kind == ControlKind.Tracking
            ? system.Array.ArrayWp * system.Array.DeratingFactor * system.Control.Efficiency / batteryV
            : system.Array.MaximumPowerCurrentA * system.Array.DeratingFactor;
        if (wanted <= system.Control.ChargeCurrentA * (1 + NotableDumpFraction)) yield break;
        yield return Diagnostic.Warning(
            "TK324", FormattableString.Invariant($"The array can deliver {wanted:0.0} A in full sun, the controller takes {system.Control.ChargeCurrentA:0.0} A: the rest is lost. Choose a larger controller or a smaller array."), place);
    }

    private static IEnumerable<Diagnostic> Hot(PlaneYears years, PowerSystem system, Place place)
    {
        var battery = system.Battery;
        if (battery.Chemistry != BatteryChemistry.LithiumIronPhosphate) yield break;
        var (all, hot) = (0.0, 0.0);
        for (var i = 0; i < years.PlaneWhPerM2.Length; i++)
        {
            all += years.PlaneWhPerM2[i];
            if (years.Weather.AirC[i] + battery.EnclosureRiseK > HottestLithiumChargeC) hot += years.PlaneWhPerM2[i];
        }

        if (hot <= NotableHotFraction * all) yield break;
        yield return Diagnostic.Warning(
            "TK329", FormattableString.Invariant($"The battery is hotter than {HottestLithiumChargeC:0} degC during {hot / all:P1} of the sunshine, air and enclosure rise of {battery.EnclosureRiseK:0.#} K together: many makers forbid charging there, and its life halves with each 10 K. Shade and ventilate the box, bury it, or get the maker's consent in writing."), place);
    }
}
