using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Structure;

namespace TenderKit.Tendering.Sites;

/// <summary>Reads the cells of wind, air, traffic and ground of one row.</summary>
internal static class GroundCells
{
    /// <summary>What the row says, over the tender's defaults.</summary>
    public static SiteGround Read(SiteRow row, SiteGround defaults)
    {
        var coastKm = row.Number(SiteColumns.Coast, QuantityKind.Number, 0, SiteLimits.GreatestCoastKm);
        var corrosivity = Choice(row, SiteColumns.Corrosion, GroundWords.CorrosionOf, GroundWords.CorrosionNames)
            ?? (coastKm is { } km ? SiteGround.ByCoast(km) : defaults.Corrosivity);
        return new SiteGround(
            defaults.Standard,
            Choice(row, SiteColumns.WindDefinition, GroundWords.DefinitionOf, GroundWords.DefinitionNames) ?? defaults.Definition,
            row.Number(SiteColumns.Traffic, QuantityKind.Number, 0, SiteLimits.GreatestTrafficKmPerH) ?? defaults.TrafficKmPerH,
            corrosivity,
            Choice(row, SiteColumns.Flood, GroundWords.YesNoOf, GroundWords.YesNoNames) ?? defaults.FloodProne);
    }

    /// <summary>The soil of the row with the values it states, which go before its class.</summary>
    public static (SoilClass Soil, bool IsStated) Soil(SiteRow row, (SoilClass Soil, bool IsStated) named)
    {
        var lateral = row.Number(SiteColumns.SoilLateral, QuantityKind.Number, SiteLimits.LeastSoilKPaPerM, SiteLimits.GreatestSoilKPaPerM);
        var bearing = row.Number(SiteColumns.SoilBearing, QuantityKind.Number, SiteLimits.LeastBearingKPa, SiteLimits.GreatestBearingKPa);
        if (lateral is null && bearing is null) return named;
        var soil = GroundWords.Stated(lateral ?? named.Soil.LateralBearingKPaPerM, bearing, named.Soil);
        return (soil, named.IsStated || (lateral is not null && bearing is not null));
    }

    private static T? Choice<T>(SiteRow row, string meaning, Func<string, T?> find, IEnumerable<string> known)
        where T : struct => row.Choice(meaning, t => find(t) is { } v ? (object)v : null, v => v.ToString()!, known) is T found ? found : null;
}
