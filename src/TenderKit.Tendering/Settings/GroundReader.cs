using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Words;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Settings;

/// <summary>Reads what the tender's <c>requirement</c> says of wind, air, traffic and ground of every site.</summary>
internal static class GroundReader
{
    public static SiteGround Read(YamlSection section)
    {
        var usual = SiteGround.Usual;
        var coast = section.Has("coast_km") ? Between(section, "coast_km", 0, SiteLimits.GreatestCoastKm) : null;
        return new SiteGround(
            Word(section, "wind_standard", GroundWords.StandardOf, GroundWords.StandardNames) ?? usual.Standard,
            Word(section, "wind_definition", GroundWords.DefinitionOf, GroundWords.DefinitionNames),
            Between(section, "traffic_km_per_h", 0, SiteLimits.GreatestTrafficKmPerH) ?? usual.TrafficKmPerH,
            Word(section, "corrosion", GroundWords.CorrosionOf, GroundWords.CorrosionNames) ?? (coast is { } km ? SiteGround.ByCoast(km) : null),
            Word(section, "flood", GroundWords.YesNoOf, GroundWords.YesNoNames) ?? usual.FloodProne);
    }

    /// <summary>The soil by its values where they are stated; otherwise the class.</summary>
    public static SoilClass Soil(YamlSection section, SoilClass named)
    {
        var lateral = Between(section, "soil_kpa_per_m", SiteLimits.LeastSoilKPaPerM, SiteLimits.GreatestSoilKPaPerM);
        var bearing = Between(section, "soil_bearing_kpa", SiteLimits.LeastBearingKPa, SiteLimits.GreatestBearingKPa);
        return lateral is null && bearing is null ? named : GroundWords.Stated(lateral ?? named.LateralBearingKPaPerM, bearing, named);
    }

    private static double? Between(YamlSection section, string key, double least, double greatest)
    {
        if (!section.Has(key)) return null;
        var value = section.Number(key, QuantityKind.Number, least);
        if (value >= least && value <= greatest) return value;
        section.AddError("TK116", string.Create(CultureInfo.InvariantCulture, $"{key} must lie between {least} and {greatest}, not {value}"), section.Scalar(key)!.Line);
        return null;
    }

    private static T? Word<T>(YamlSection section, string key, Func<string, T?> find, string[] known)
        where T : struct
    {
        if (section.Scalar(key) is not { } scalar) return null;
        if (find(scalar.Text) is { } found) return found;
        var nearest = Nearest.Of(scalar.Text, known);
        section.AddError("TK117", $"{key} '{scalar.Text}' is not known" + (nearest is null ? "." : $"; did you mean '{nearest}'?") + $" Known: {string.Join(", ", known)}", scalar.Line);
        return null;
    }
}
