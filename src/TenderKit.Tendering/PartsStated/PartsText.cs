using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.PartsStated;

/// <summary>Ratings in a short text such as "1 x 75 Wp, 12 V 75 Ah gel, 12 W LED 1500 lm, 10 A PWM, 12 hours, 3 days".</summary>
/// <param name="Hours">Hours of light a night.</param>
/// <param name="Nights">Nights or days of reserve.</param>
public sealed partial record PartsText(
    double? ModuleWp, double? BatteryV, double? BatteryAh, double? BatteryWh, double? LampW, double? FluxLm, double? ControllerA, BatteryChemistry? Chemistry, ControlKind? Control,
    double? Hours, double? Nights)
{
    /// <summary>Reads what the text states; what it does not state is null.</summary>
    public static PartsText Read(string text)
    {
        var folded = Spelling.Folded(text).Replace('×', 'x');
        return new PartsText(
            Of(ModuleWatts(), folded), Of(Volts(), folded), Of(AmpereHours(), folded), Of(WattHours(), folded), Of(LampWatts(), folded), Of(Lumens(), folded), Of(Amperes(), folded),
            ChemistryOf(folded), ControlOf(folded), Of(HoursANight(), folded), Of(DaysOfReserve(), folded));
    }

    /// <summary>The kind of battery a word names, or null.</summary>
    public static BatteryChemistry? ChemistryOf(string folded) => folded switch
    {
        _ when Lithium().IsMatch(folded) => BatteryChemistry.LithiumIronPhosphate,
        _ when folded.Contains("gel", StringComparison.Ordinal) => BatteryChemistry.GelLeadAcid,
        _ when folded.Contains("agm", StringComparison.Ordinal) => BatteryChemistry.AgmLeadAcid,
        _ when folded.Contains("tubular", StringComparison.Ordinal) || folded.Contains("opzs", StringComparison.Ordinal) => BatteryChemistry.TubularLeadAcid,
        _ when folded.Contains("flooded", StringComparison.Ordinal) => BatteryChemistry.FloodedLeadAcid,
        _ => null,
    };

    /// <summary>The kind of controller a word names, or null.</summary>
    public static ControlKind? ControlOf(string folded) =>
        folded.Contains("mppt", StringComparison.Ordinal) ? ControlKind.Tracking : folded.Contains("pwm", StringComparison.Ordinal) ? ControlKind.PulseWidth : null;

    private static double? Of(Regex pattern, string text)
    {
        var match = pattern.Match(text);
        if (!match.Success || !double.TryParse(match.Groups["n"].Value.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value)) return null;
        return match.Groups["times"].Success && double.TryParse(match.Groups["times"].Value, NumberStyles.Integer, CultureInfo.InvariantCulture, out var times) ? value * times : value;
    }

    private const string Count = @"(?:(?<times>\d{1,2})\s*(?:x|no\.?|nos\.?|units?)\s*(?:of\s*)?)?";
    private const string Value = @"(?<![\d.,])(?<n>\d{1,6}(?:[.,]\d{1,2})?)\s*";

    [GeneratedRegex(Count + Value + @"-?w\s*-?(?:p\b|peak|c\b)")]
    private static partial Regex ModuleWatts();

    [GeneratedRegex(Value + @"-?v(?:dc|olts?)?\b")]
    private static partial Regex Volts();

    [GeneratedRegex(Count + Value + @"-?(?:ah|amp(?:ere)?[\s-]*hours?)\b")]
    private static partial Regex AmpereHours();

    [GeneratedRegex(Count + Value + @"-?wh\b")]
    private static partial Regex WattHours();

    [GeneratedRegex(Value + @"-?(?:w|watts?)\b(?!\s*-?(?:p\b|peak|h\b|hours?))")]
    private static partial Regex LampWatts();

    [GeneratedRegex(Value + @"(?:lm\b|lumens?)(?!\s*/)")]
    private static partial Regex Lumens();

    [GeneratedRegex(Value + @"-?(?:a|amps?|amperes?)\b(?!\s*-?(?:h\b|hours?))")]
    private static partial Regex Amperes();

    [GeneratedRegex(@"(?<!amp(?:ere)?[\s-]*)(?<!watt[\s-]*)" + Value + @"-?(?:h|hrs?|hours?|heures?|horas?)\b(?!\s*rate)")]
    private static partial Regex HoursANight();

    [GeneratedRegex(Value + @"-?(?:days?|nights?|jours?|nuits?|dias?|noches?|noites?)\b")]
    private static partial Regex DaysOfReserve();

    [GeneratedRegex(@"life\s*po|lithium|li-ion|\blfp\b")]
    private static partial Regex Lithium();
}
