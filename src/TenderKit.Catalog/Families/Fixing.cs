namespace TenderKit.Catalog.Families;

public enum FixingKind
{
    /// <summary>Clamp round a pole.</summary>
    Clamp,

    /// <summary>Band or strap round a pole.</summary>
    Strap,

    /// <summary>Bolt or nut that common tools do not undo.</summary>
    AntiTheftBolt,

    /// <summary>Gland for a cable entry.</summary>
    Gland,

    /// <summary>Reducer or adapter between two spigot diameters.</summary>
    SpigotAdapter,
}

/// <summary>Clamps, straps, anti-theft bolts, glands and adapters.</summary>
public sealed record Fixing : Part
{
    public required FixingKind Kind { get; init; }

    /// <summary>Least diameter it takes (pole, spigot or cable), mm; null when it has none.</summary>
    public double? LeastMm { get; init; }

    /// <summary>Greatest diameter it takes, mm; null when it has none.</summary>
    public double? GreatestMm { get; init; }

    /// <summary>Nominal bolt or thread diameter, mm; null when it has none.</summary>
    public double? BoltMm { get; init; }

    /// <summary>Material and finish, such as stainless steel A4; empty when not known.</summary>
    public string Material { get; init; } = "";
}
