namespace TenderKit.Catalog.Families;

public sealed record Pole : Part
{
    /// <summary>Height above ground, m.</summary>
    public required double HeightM { get; init; }

    public required double BaseDiameterMm { get; init; }

    public required double TopDiameterMm { get; init; }

    public required double WallMm { get; init; }

    public required double YieldMPa { get; init; }

    /// <summary>Arm reach beyond the pole axis, m.</summary>
    public required double ArmReachM { get; init; }

    /// <summary>Arm tilt, degrees.</summary>
    public required double ArmTiltDegrees { get; init; }

    /// <summary>Side of the square base plate, mm.</summary>
    public required double BasePlateMm { get; init; }

    /// <summary>Mean zinc coating, micrometres.</summary>
    public required double ZincUm { get; init; }

    /// <summary>Clear width of the door opening, mm; null when not known, 0 for no door.</summary>
    public double? DoorWidthMm { get; init; }

    /// <summary>Clear height of the door opening, mm; null when not known, 0 for no door.</summary>
    public double? DoorHeightMm { get; init; }

    /// <summary>Lower edge of the door opening above ground, m; null when not known.</summary>
    public double? DoorBottomM { get; init; }

    /// <summary>Corrosivity the maker states the protection for (ISO 9223); null when silent: see <see cref="ZincLife"/>.</summary>
    public CorrosionCategory? CorrosionCategory { get; init; }

    /// <summary>Passive safety class of EN 12767 as certified, such as 100-NE-B; empty for a pole without one.</summary>
    public string PassiveSafetyClass { get; init; } = "";

    /// <summary>Length below ground of a pole set into the ground without a flange, m; 0 for a flanged pole.</summary>
    public double DirectBuriedLengthM { get; init; }

    /// <summary>Bending moment at ground level the maker allows, Nm; null when not stated.</summary>
    public double? MomentCapacityNm { get; init; }
}

/// <summary>A block foundation with its anchor bolt set; concrete, excavation and steel are bought by quantity.</summary>
public sealed record FoundationSet : Part
{
    public required double LengthM { get; init; }

    public required double WidthM { get; init; }

    public required double DepthM { get; init; }

    public required double AnchorBoltMm { get; init; }

    public required int AnchorBoltCount { get; init; }

    public required double AnchorBoltLengthMm { get; init; }

    /// <summary>Reinforcement in one block, kg.</summary>
    public required double ReinforcementKg { get; init; }

    /// <summary>Side of the square on which the bolts stand, between centres, mm; null when not known.</summary>
    public double? BoltSpacingMm { get; init; }

    /// <summary>Property class of the bolts (ISO 898-1), such as 8.8; empty when not known.</summary>
    public string BoltGrade { get; init; } = "";

    /// <summary>Nominal tensile strength of the bolts, MPa; null when the class is not known. See <see cref="BoltClass"/>.</summary>
    public double? BoltTensileMPa => BoltClass.TensileMPa(BoltGrade);

    /// <summary>Nominal yield strength of the bolts, MPa; null when the class is not known. See <see cref="BoltClass"/>.</summary>
    public double? BoltYieldMPa => BoltClass.YieldMPa(BoltGrade);
}

/// <summary>Battery and controller enclosure.</summary>
public sealed record Enclosure : Part
{
    public required double UsableVolumeL { get; init; }

    public required double MaxContentKg { get; init; }

    public required int IpCode { get; init; }

    public required double WindAreaM2 { get; init; }

    /// <summary>Clear width inside, mm; null when not known.</summary>
    public double? InnerWidthMm { get; init; }

    /// <summary>Clear height inside, mm; null when not known.</summary>
    public double? InnerHeightMm { get; init; }

    /// <summary>Clear depth inside, mm; null when not known.</summary>
    public double? InnerDepthMm { get; init; }

    /// <summary>Whether openings let gas out; null when not known.</summary>
    public bool? Vented { get; init; }

    /// <summary>Impact protection, e.g. 8; null when not known.</summary>
    public int? IkCode { get; init; }

    /// <summary>Least pole diameter its straps or saddle take, mm; null when not known.</summary>
    public double? PoleMinMm { get; init; }

    /// <summary>Greatest pole diameter its straps or saddle take, mm; null when not known.</summary>
    public double? PoleMaxMm { get; init; }
}

/// <summary>Module support for the pole top, for one module or several.</summary>
public sealed record Bracket : Part
{
    public required double MaxModuleAreaM2 { get; init; }

    public required double MinTiltDegrees { get; init; }

    public required double MaxTiltDegrees { get; init; }

    /// <summary>Least pole diameter it clamps onto, mm; null when not known.</summary>
    public double? PoleMinMm { get; init; }

    /// <summary>Greatest pole diameter it clamps onto, mm; null when not known.</summary>
    public double? PoleMaxMm { get; init; }
}
