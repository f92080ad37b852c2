using System.Collections.Immutable;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;

namespace TenderKit.Tendering.Sites;

/// <summary>What holds for a site whose row is silent: the tender's <c>requirement</c>.</summary>
/// <param name="Target">Light target, or null when every row must state its class.</param>
/// <param name="ScheduleName">Name of the schedule.</param>
/// <param name="Schedules">All schedules by name.</param>
/// <param name="SoilStated">Whether the tender states a soil for all sites.</param>
/// <param name="LotOfSite">Lot by site id, where the tender file lists lots; a Lot column in the list wins.</param>
public sealed record SiteDefaults(
    LightTarget? Target,
    string ScheduleName,
    ImmutableSortedDictionary<string, LightingSchedule> Schedules,
    ImmutableArray<double> MountingHeightsM,
    double WidthM,
    Arrangement Arrangement,
    double ShadedFraction,
    double BasicWindMPerS,
    Terrain Terrain,
    SoilClass Soil,
    bool SoilStated,
    ImmutableSortedDictionary<string, string> LotOfSite)
{
    /// <summary>What else holds of wind, air, traffic and ground.</summary>
    public SiteGround Ground { get; init; } = SiteGround.Usual;
}
