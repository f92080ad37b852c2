using System.Collections.Immutable;

namespace TenderKit.Catalog.Families;

/// <summary>All parts, each family sorted by code.</summary>
public sealed record PartsCatalog(
    ImmutableArray<Luminaire> Luminaires,
    ImmutableArray<Module> Modules,
    ImmutableArray<Battery> Batteries,
    ImmutableArray<Controller> Controllers,
    ImmutableArray<Pole> Poles,
    ImmutableArray<FoundationSet> Foundations,
    ImmutableArray<Cable> Cables,
    ImmutableArray<ProtectionDevice> Protection,
    ImmutableArray<Enclosure> Enclosures,
    ImmutableArray<Bracket> Brackets,
    ImmutableArray<ServiceRate> Services)
{
    /// <summary>Clamps, straps and bolts.</summary>
    public ImmutableArray<Fixing> Fixings { get; init; } = [];

    public ImmutableArray<IntegratedUnit> IntegratedUnits { get; init; } = [];

    public IEnumerable<Part> All =>
        Luminaires.Cast<Part>().Concat(Modules).Concat(Batteries).Concat(Controllers).Concat(Poles).Concat(Foundations)
            .Concat(Cables).Concat(Protection).Concat(Enclosures).Concat(Brackets).Concat(Fixings).Concat(IntegratedUnits).Concat(Services);
}
