using System.Collections.Immutable;
using System.Globalization;

namespace TenderKit.Catalog.Families;

/// <summary>
/// Limits that no honest value of a property passes: they catch slips of units, signs and decimal marks at the door.
/// They are no design limits. Common practice, no source.
/// </summary>
/// <param name="Part">Record that declares the property.</param>
/// <param name="Property">Name of the property.</param>
/// <param name="Low">Least value, in the unit of the property.</param>
/// <param name="High">Greatest value, in the unit of the property.</param>
public sealed record PartRange(Type Part, string Property, double Low, double High)
{
    public static readonly ImmutableArray<PartRange> All =
    [
        .. Of<Part>(("UnitPrice", 0, 1e9), ("LeadTimeDays", 0, 3650), ("WarrantyYears", 0, 50), ("WeightKg", 0, 20000), ("VolumeM3", 0, 200),
            ("MinimumOrder", 0.001, 1e6), ("OrderMultiple", 0.001, 1e6), ("DataSheetPage", 1, 5000)),
        .. Of<Luminaire>(
            ("InputPowerW", 0.5, 1000), ("FluxLm", 10, 200000), ("MinVoltageV", 1, 120), ("MaxVoltageV", 1, 120), ("LeastLevelFraction", 0, 1),
            ("ColourTemperatureK", 1700, 10000), ("IpCode", 0, 69), ("IkCode", 0, 11), ("LifeL80H", 1000, 500000), ("WindAreaM2", 0, 2),
            ("MaxAmbientC", 0, 90), ("SpigotMinMm", 20, 200), ("SpigotMaxMm", 20, 200)),
        .. Of<Module>(
            ("RatedWp", 1, 1000), ("OpenCircuitV", 1, 200), ("ShortCircuitA", 0.05, 40), ("MaximumPowerV", 1, 200), ("MaximumPowerA", 0.05, 40),
            ("PowerCoefficientPerK", -0.01, 0), ("VoltageCoefficientPerK", -0.01, 0), ("NoctC", 30, 60), ("LengthM", 0.1, 3), ("WidthM", 0.1, 3),
            ("MaxSeriesFuseA", 1, 60), ("CableLengthM", 0, 10)),
        .. Of<Battery>(
            ("NominalVoltageV", 1, 120), ("RatedAh", 1, 5000), ("RatedHours", 0.5, 240), ("PeukertExponent", 1, 1.5), ("MaxDepthFraction", 0.05, 1),
            ("CyclesAtDepth", 50, 20000), ("CycleDepthFraction", 0.05, 1), ("CalendarYearsAt25C", 0.5, 30), ("ChargeEfficiency", 0.5, 1),
            ("DischargeEfficiency", 0.5, 1),
            ("SelfDischargePerMonthFraction", 0, 0.5), ("LeastChargeC", -40, 20), ("MaxOperatingC", 20, 90), ("MaxChargeA", 0.1, 2000),
            ("WidthMm", 20, 2000), ("HeightMm", 20, 2000), ("DepthMm", 20, 2000), ("AbsorptionV", 1, 150)),
        .. Of<Controller>(
            ("SystemVoltagesV", 1, 120), ("RatedChargeA", 0.5, 200), ("RatedLoadA", 0, 200), ("MaxArrayV", 5, 1000), ("MaxArrayWpPerV", 0, 1000),
            ("MaxArrayShortCircuitA", 0.5, 300), ("Efficiency", 0.5, 1), ("OwnUseW", 0, 20), ("ScheduleParts", 0, 100), ("MaxAmbientC", 0, 90),
            ("LeastAbsorptionV", 12, 17), ("GreatestAbsorptionV", 12, 17), ("TemperatureCompensationMvPerK", -10, 0), ("IpCode", 0, 69)),
        .. Of<Pole>(
            ("HeightM", 2, 20), ("BaseDiameterMm", 30, 800), ("TopDiameterMm", 20, 500), ("WallMm", 1, 25), ("YieldMPa", 150, 900),
            ("ArmReachM", 0, 6), ("ArmTiltDegrees", 0, 60), ("BasePlateMm", 0, 1500), ("ZincUm", 0, 500),
            ("DoorWidthMm", 0, 600), ("DoorHeightMm", 0, 1500), ("DoorBottomM", 0, 5), ("DirectBuriedLengthM", 0, 4), ("MomentCapacityNm", 100, 1e6)),
        .. Of<FoundationSet>(
            ("LengthM", 0.2, 4), ("WidthM", 0.2, 4), ("DepthM", 0.2, 5), ("AnchorBoltMm", 6, 64), ("AnchorBoltCount", 0, 24),
            ("AnchorBoltLengthMm", 50, 3000), ("ReinforcementKg", 0, 1000),
            ("BoltSpacingMm", 50, 1500)),
        .. Of<Cable>(("Cores", 1, 7), ("CrossSectionMm2", 0.5, 400), ("OuterMm", 2, 120)),
        .. Of<ProtectionDevice>(("RatedA", 0, 200000), ("RatedV", 0, 1500), ("BreakingA", 10, 500000)),
        .. Of<Enclosure>(("UsableVolumeL", 0.5, 5000), ("MaxContentKg", 0.5, 5000), ("IpCode", 0, 69), ("WindAreaM2", 0, 5),
            ("InnerWidthMm", 50, 3000), ("InnerHeightMm", 50, 3000), ("InnerDepthMm", 50, 3000), ("IkCode", 0, 11), ("PoleMinMm", 20, 800), ("PoleMaxMm", 20, 800)),
        .. Of<Bracket>(("MaxModuleAreaM2", 0.05, 50), ("MinTiltDegrees", 0, 90), ("MaxTiltDegrees", 0, 90),
            ("PoleMinMm", 20, 800), ("PoleMaxMm", 20, 800)),
        .. Of<Fixing>(("LeastMm", 1, 800), ("GreatestMm", 1, 800), ("BoltMm", 2, 64)),
        .. Of<IntegratedUnit>(
            ("InputPowerW", 0.5, 1000), ("FluxLm", 10, 200000), ("LeastLevelFraction", 0, 1), ("ColourTemperatureK", 1700, 10000), ("IpCode", 0, 69),
            ("IkCode", 0, 11), ("LifeL80H", 1000, 500000), ("WindAreaM2", 0, 2), ("MaxAmbientC", 0, 90),
            ("RatedWp", 1, 1000), ("OpenCircuitV", 1, 200), ("ShortCircuitA", 0.05, 40), ("MaximumPowerV", 1, 200), ("MaximumPowerA", 0.05, 40),
            ("PowerCoefficientPerK", -0.01, 0), ("VoltageCoefficientPerK", -0.01, 0), ("NoctC", 30, 60), ("ModuleLengthM", 0.1, 3), ("ModuleWidthM", 0.1, 3),
            ("ModuleTiltDegrees", 0, 60), ("NominalVoltageV", 1, 120), ("RatedAh", 1, 5000), ("RatedHours", 0.5, 240), ("PeukertExponent", 1, 1.5),
            ("MaxDepthFraction", 0.05, 1), ("CyclesAtDepth", 50, 20000), ("CycleDepthFraction", 0.05, 1), ("CalendarYearsAt25C", 0.5, 30),
            ("ChargeEfficiency", 0.5, 1), ("DischargeEfficiency", 0.5, 1), ("SelfDischargePerMonthFraction", 0, 0.5), ("LeastChargeC", -40, 20),
            ("MaxOperatingC", 20, 90), ("MaxChargeA", 0.1, 2000), ("BatteryWeightKg", 0.05, 500), ("Efficiency", 0.5, 1), ("OwnUseW", 0, 20),
            ("ScheduleParts", 0, 100), ("SpigotMinMm", 20, 200), ("SpigotMaxMm", 20, 200)),
    ];

    /// <summary>The problem of a value in words, or null.</summary>
    public string? Problem(double value) => value >= Low && value <= High
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"is outside {Low} to {High}; check the unit, the sign and the decimal mark");

    /// <summary>The range of a property of a part, or null when it has none.</summary>
    public static PartRange? For(Type part, string property) => All.FirstOrDefault(r => r.Property == property && r.Part.IsAssignableFrom(part));

    private static IEnumerable<PartRange> Of<T>(params (string Property, double Low, double High)[] rows) =>
        rows.Select(r => new PartRange(typeof(T), r.Property, r.Low, r.High));
}
