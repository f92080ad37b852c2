namespace TenderKit.Catalog.Families;

/// <summary>Labour, plant, materials by quantity and services: one rate each.</summary>
public sealed record ServiceRate : Part
{
    /// <summary>Unit of the rate: No., m, m2, m3, kg, set, sum, h.</summary>
    public required string Unit { get; init; }

    /// <summary>What the rate is for, from a closed list: see <see cref="ServiceUse"/>.</summary>
    public required ServiceUse Use { get; init; }
}

/// <summary>Where a service rate goes in the bill.</summary>
public enum ServiceUse
{
    SetUpSite,
    Survey,
    Excavate,
    Concrete,
    Reinforcement,
    ErectPole,
    FitKit,
    LayCable,
    Commission,
    Train,
    Documents,
    MaintainYear,
    FixingsPerPole,

    /// <summary>An unskilled worker for a day, for work measured as it comes.</summary>
    DayworkLabour,

    /// <summary>A skilled worker for a day.</summary>
    DayworkSkilled,

    /// <summary>Plant with its driver for an hour.</summary>
    DayworkPlant,

    /// <summary>A lorry load from the store to a site.</summary>
    TransportToSite,

    /// <summary>Filling and compacting soil beside a foundation.</summary>
    Backfill,
}
