using TenderKit.Catalog.Families;
using TenderKit.Sizing.Structure;

namespace TenderKit.Tendering.Sites;

/// <summary>What else a site says of its wind, air, traffic and ground.</summary>
/// <param name="Standard">Standard the wind is worked out by.</param>
/// <param name="Definition">What the stated wind speed is; null for that of the standard.</param>
/// <param name="TrafficKmPerH">Speed of the traffic that passes, km/h; 0 for none.</param>
/// <param name="Corrosivity">Corrosivity of the air by ISO 9223, or null when not stated.</param>
/// <param name="FloodProne">Whether the ground may stand under water: foundations take submerged weights.</param>
public sealed record SiteGround(WindStandard Standard, WindDefinition? Definition, double TrafficKmPerH, CorrosionCategory? Corrosivity, bool FloodProne)
{
    /// <summary>Category taken where none is stated: inland air of low pollution in warm humid climates (ISO 9223 annex C, from memory).</summary>
    public const CorrosionCategory Assumed = CorrosionCategory.C3;

    /// <summary>EN 1991-1-4, its own definition of speed, nothing else stated.</summary>
    public static readonly SiteGround Usual = new(WindStandard.En1991, null, 0, null, false);

    /// <summary>
    /// Category by the distance to salt water where none is stated: within 0.5 km C5, within 5 km C4, else C3. Screening, after the
    /// descriptions of ISO 9223 annex C (from memory); the distances are own choice.
    /// </summary>
    public static CorrosionCategory ByCoast(double km) => km switch { <= 0.5 => CorrosionCategory.C5, <= 5 => CorrosionCategory.C4, _ => CorrosionCategory.C3 };
}
