using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Climate;

/// <summary>Turns a file of the NASA POWER service into a climate; its units are followed here.</summary>
internal static class PowerReading
{
    /// <summary>The climate, or none with errors.</summary>
    public static Outcome<ClimateReading> Of(ClimateText text, PowerFile? file, ClimateLimits limits)
    {
        if (file is null || Factor(text, file) is not { } factor) return Outcome.None<ClimateReading>(text.Found);
        var climate = file.Step switch
        {
            PowerStep.Hours => new PowerHours(text, file, limits, factor).Read(),
            PowerStep.Days => new PowerDays(text, file, limits, factor).Read(),
            _ => new PowerMonths(text, file, factor).Read(),
        };
        return climate is null ? Outcome.None<ClimateReading>(text.Found) : Outcome.Of(climate, text.Found);
    }

    private static double? Factor(ClimateText text, PowerFile file)
    {
        foreach (var name in file.Quantities.Keys.Where(n => n != PowerFile.Global && !PowerUnits.IsCelsius(file.Quantities[n].Unit)))
        {
            text.Head($"{name} is in '{file.Quantities[name].Unit}', only C is read; ask the service for it in degrees Celsius");
        }

        var hourly = file.Step == PowerStep.Hours;
        if (!file.Quantities.TryGetValue(PowerFile.Global, out var global) || global.Values.Count == 0)
        {
            text.Head($"{PowerFile.Global} is missing, or its unit is not in the header; ask the service for {PowerFile.Global} and {PowerFile.MeanC}, with the header");
        }
        else if (PowerUnits.KWhFactor(global.Unit, hourly) is null)
        {
            var known = hourly ? "Wh/m^2, W/m^2, kW-hr/m^2 and MJ/hr" : "kW-hr/m^2/day, Wh/m^2/day, MJ/m^2/day and W/m^2";
            text.Head($"{PowerFile.Global} is in '{global.Unit}'; {known} are read. Get the file again in one of them");
        }

        return text.Found.Exists(d => d.Severity == Severity.Error) ? null : PowerUnits.KWhFactor(global!.Unit, hourly);
    }
}
