using System.Text.RegularExpressions;

namespace TenderKit.Intake.Climate;

/// <summary>Units of the NASA POWER service: they depend on the community the user asked for, and are read from the brackets of the file.</summary>
internal static partial class PowerUnits
{
    private const double KWhPerMj = 1 / 3.6;

    /// <summary>Factor to kWh/m2 an hour (of an hourly file) or a day (of any other); null where the unit is not known.</summary>
    public static double? KWhFactor(string unit, bool hourly)
    {
        var plain = unit.ToLowerInvariant().Replace(" ", "", StringComparison.Ordinal).Replace("^", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);
        if (Long().IsMatch(plain) || (hourly ? PerDay() : PerHour()).IsMatch(plain)) return null;
        if (KilowattHour().IsMatch(plain)) return 1;
        if (WattHour().IsMatch(plain)) return 0.001;
        if (Megajoule().IsMatch(plain)) return KWhPerMj;
        return Watt().IsMatch(plain) ? (hourly ? 1 : 24) / 1000.0 : null;
    }

    /// <summary>Whether the unit is degC.</summary>
    public static bool IsCelsius(string unit) => Celsius().IsMatch(unit.Trim());

    [GeneratedRegex("^kwhr?/")]
    private static partial Regex KilowattHour();

    [GeneratedRegex("^whr?/")]
    private static partial Regex WattHour();

    [GeneratedRegex("^mj/")]
    private static partial Regex Megajoule();

    [GeneratedRegex("^w/m2$")]
    private static partial Regex Watt();

    [GeneratedRegex("/d(?:ay)?$")]
    private static partial Regex PerDay();

    [GeneratedRegex("/h(?:r|our)?$")]
    private static partial Regex PerHour();

    [GeneratedRegex("/(?:mo|month|y|yr|year)$")]
    private static partial Regex Long();

    [GeneratedRegex("^(?:deg(?:rees)?[ -]?|\u00B0)?c(?:elsius)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Celsius();
}
