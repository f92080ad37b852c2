using TenderKit.Sizing.Wiring;

namespace TenderKit.Catalog.Families;

/// <summary>Two-core or paired single-core copper cable sold by the metre.</summary>
public sealed record Cable : Part
{
    public required int Cores { get; init; }

    public required double CrossSectionMm2 { get; init; }

    public required ConductorClass ConductorClass { get; init; }

    public required CableInsulation Insulation { get; init; }

    /// <summary>Ultraviolet resistant and fit for outdoor use on modules.</summary>
    public required bool Outdoor { get; init; }

    /// <summary>Outer diameter, or greater width of a flat cable, mm; null when not known.</summary>
    public double? OuterMm { get; init; }
}

public enum ProtectionKind
{
    Fuse,
    SurgeArrester,
    EarthElectrode,

    /// <summary>Holder or carrier of one fuse, for catalogues whose fuses are bare links.</summary>
    FuseHolder,
}

public sealed record ProtectionDevice : Part
{
    public required ProtectionKind Kind { get; init; }

    /// <summary>Rated current, A; 0 where it has none.</summary>
    public required double RatedA { get; init; }

    /// <summary>Rated direct voltage, V; 0 where it has none.</summary>
    public required double RatedV { get; init; }

    /// <summary>Greatest direct current a fuse can break, A; null when not known.</summary>
    public double? BreakingA { get; init; }
}
