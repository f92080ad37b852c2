using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Intake.Climate;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Settings;

/// <summary>Everything the design needs, read and understood: no file is touched after this.</summary>
/// <param name="Light">Light distribution of each photometric file of the catalogue.</param>
/// <param name="Climates">Climates by the name or file the tender and its sites call them, as read.</param>
/// <param name="Stations">Built-in reference table.</param>
/// <param name="Digests">Files read with their digests.</param>
public sealed record DesignInputs(
    Tender Tender,
    RuleSet Rules,
    ImmutableArray<Site> Sites,
    PartsCatalog Catalog,
    string CatalogDigest,
    ImmutableSortedDictionary<string, LightDistribution> Light,
    ImmutableSortedDictionary<string, ClimateReading> Climates,
    IReadOnlyList<ReferenceStation> Stations,
    ImmutableArray<InputDigest> Digests)
{
    /// <summary>What sites have in common, computed once.</summary>
    public SharedWork Shared { get; init; } = new();

    /// <summary>Whether the choice of each kit is explained, which takes more searches.</summary>
    public bool Explain { get; init; }

    /// <summary>The employer's clauses.</summary>
    public Specification.Clauses Clauses { get; init; } = Specification.Clauses.None;

    /// <summary>The employer's own price form as read, or null.</summary>
    public Forms.PriceForm? Form { get; init; }
}
