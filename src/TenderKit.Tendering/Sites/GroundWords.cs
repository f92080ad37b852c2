using System.Globalization;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>Words for wind, air and ground in site lists and tender files.</summary>
internal static class GroundWords
{
    public static readonly string[] DefinitionNames = ["10-minute mean 50 years", "hourly mean 50 years", "3-s gust 50 years", "3-s gust 700 years"];

    public static readonly string[] StandardNames = ["en", "asce"];

    public static readonly string[] CorrosionNames = Enum.GetNames<CorrosionCategory>();

    public static readonly string[] YesNoNames = ["yes", "no"];

    /// <summary>Null when the words name no definition; a return period left out is 50 years.</summary>
    public static WindDefinition? DefinitionOf(string text)
    {
        var words = HeadingMatch.Words(text);
        var years700 = words.Contains("700", StringComparison.Ordinal);
        if (words.Contains("gust", StringComparison.Ordinal) || words.Contains("rafale", StringComparison.Ordinal) || words.Contains("rafaga", StringComparison.Ordinal) || words.Contains("rajada", StringComparison.Ordinal))
            return years700 ? WindDefinition.Gust700 : WindDefinition.Gust50;
        if (years700) return null;
        if (words.Contains("hour", StringComparison.Ordinal) || words.Contains("heure", StringComparison.Ordinal) || words.Contains("horari", StringComparison.Ordinal) || words.Contains("hora", StringComparison.Ordinal))
            return WindDefinition.HourlyMean50;
        return words.Contains("10", StringComparison.Ordinal) ? WindDefinition.TenMinuteMean50 : null;
    }

    public static WindStandard? StandardOf(string text) => HeadingMatch.Words(text) switch
    {
        "en" or "eurocode" or "en 1991" or "en 1991 1 4" => WindStandard.En1991,
        "asce" or "asce 7" or "asce 7 16" or "asce 7 22" => WindStandard.Asce7,
        _ => null,
    };

    public static CorrosionCategory? CorrosionOf(string text) => Enum.TryParse<CorrosionCategory>(text.Trim(), ignoreCase: true, out var found) && !char.IsAsciiDigit(text.Trim()[0]) ? found : null;

    public static bool? YesNoOf(string text) => HeadingMatch.Words(text) switch
    {
        "yes" or "y" or "oui" or "si" or "sim" or "true" or "1" => true,
        "no" or "n" or "non" or "nao" or "false" or "0" or "none" => false,
        _ => null,
    };

    /// <summary>A soil by its values.</summary>
    public static SoilClass Stated(double lateralKPaPerM, double? bearingKPa, SoilClass beside) => new(
        string.Create(CultureInfo.InvariantCulture, $"as stated, {lateralKPaPerM:0.0} kPa/m"), lateralKPaPerM, bearingKPa ?? beside.BearingKPa);
}
