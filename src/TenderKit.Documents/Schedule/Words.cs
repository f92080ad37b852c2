using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Sites;

namespace TenderKit.Documents.Schedule;

/// <summary>Values of the closed lists in words.</summary>
internal static class Words
{
    public static string Of(ClimateGrade grade) => ClimateGrades.Words(grade);

    public static string Of(SiteKind kind) => kind switch
    {
        SiteKind.Road => "road",
        SiteKind.Path => "path",
        SiteKind.Yard => "yard",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static string Of(Arrangement arrangement) => arrangement switch
    {
        Arrangement.SingleSided => "single sided",
        Arrangement.Staggered => "staggered",
        Arrangement.Opposite => "opposite",
        _ => throw new ArgumentOutOfRangeException(nameof(arrangement), arrangement, null),
    };

    public static string Of(BatteryChemistry chemistry) => chemistry switch
    {
        BatteryChemistry.FloodedLeadAcid => "flooded lead-acid",
        BatteryChemistry.AgmLeadAcid => "AGM lead-acid",
        BatteryChemistry.GelLeadAcid => "gel lead-acid",
        BatteryChemistry.TubularLeadAcid => "tubular lead-acid",
        BatteryChemistry.LithiumIronPhosphate => "lithium iron phosphate",
        _ => throw new ArgumentOutOfRangeException(nameof(chemistry), chemistry, null),
    };

    public static string TerrainName(Sizing.Structure.Terrain terrain) => terrain == Sizing.Structure.Terrain.Zero ? "0" : terrain.ToString();

    public static string Of(ControlKind kind) => kind == ControlKind.Tracking ? "maximum-power tracking" : "pulse-width control";

    /// <summary>A schedule in one sentence, as understood.</summary>
    public static string Of(LightingSchedule schedule) => ScheduleWords.Of(schedule);

    /// <summary>A unit as printed on pages.</summary>
    public static string Unit(string unit) => unit.Replace("m2", "m²", StringComparison.Ordinal).Replace("m3", "m³", StringComparison.Ordinal)
        .Replace("degC", "°C", StringComparison.Ordinal);

    /// <summary>Ids in a row, the first few of many.</summary>
    public static string List(IEnumerable<string> ids, int most = 10)
    {
        var all = ids.ToImmutableArray();
        return all.Length <= most + 1 ? string.Join(", ", all) : string.Join(", ", all.Take(most)) + $" and {Figures.Number(all.Length - most, 0)} more";
    }
}
