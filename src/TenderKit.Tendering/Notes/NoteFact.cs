namespace TenderKit.Tendering.Notes;

/// <summary>What a note may depend on: yes-or-no facts that follow from the design.</summary>
public enum NoteFact
{
    /// <summary>At least one pole is designed.</summary>
    AnyPole,

    /// <summary>Module, battery, controller and luminaire are separate and joined on site.</summary>
    SeparateParts,

    /// <summary>Lamp, module, battery and controller in one housing, closed by its maker: nothing is joined on site.</summary>
    IntegratedUnit,

    /// <summary>Lithium iron phosphate battery.</summary>
    LithiumBattery,

    /// <summary>Lead-acid battery of any kind.</summary>
    LeadAcidBattery,

    /// <summary>Flooded lead-acid battery: acid can spill, hydrogen leaves freely.</summary>
    FloodedBattery,

    /// <summary>More than one battery, or more than one string of them, on a pole.</summary>
    SeveralBatteries,

    /// <summary>Battery reaches 45 degC or more on a mean day of the hottest month, enclosure rise included.</summary>
    HotBattery,

    /// <summary>Lithium battery and a record low below its least charging temperature.</summary>
    ColdCharging,

    /// <summary>Lead-acid battery and a record low of -10 degC or less.</summary>
    FrostOnLeadAcid,

    /// <summary>Batteries are expected to be replaced within ten years.</summary>
    BatteryReplacement,

    /// <summary>Cold open-circuit voltage of the array is at most 60 V.</summary>
    ArrayUpToSixtyVolts,

    /// <summary>Cold open-circuit voltage of the array is above 60 V.</summary>
    ArrayAboveSixtyVolts,

    /// <summary>Strings of modules in parallel.</summary>
    ParallelStrings,

    /// <summary>Pole of 2 m or more.</summary>
    WorkAboveTwoMetres,

    /// <summary>Pole of 50 kg or more, beyond what two persons lift.</summary>
    HeavyLift,

    /// <summary>Foundations are dug.</summary>
    Excavation,

    /// <summary>Foundations are dug 1.2 m deep or more.</summary>
    DeepExcavation,

    /// <summary>Road among the sites.</summary>
    RoadTraffic,

    /// <summary>Path or yard among the sites: the public walks past the works.</summary>
    PublicOnFoot,

    /// <summary>Metal pole.</summary>
    MetalPole,

    /// <summary>Pole of 8 m or more.</summary>
    TallPole,

    /// <summary>Basic wind speed of 30 m/s or more.</summary>
    StrongWind,

    /// <summary>Soil not stated for some site.</summary>
    UnknownSoil,

    /// <summary>Climate of some site estimated from the built-in table.</summary>
    EstimatedClimate,

    /// <summary>Climate supplied without a source for some site.</summary>
    UnsourcedClimate,

    /// <summary>Some site loses irradiation to obstacles.</summary>
    ShadedSite,

    /// <summary>Light is dimmed for part of the night.</summary>
    DimmedLight,

    /// <summary>Level depends on detecting presence.</summary>
    PresenceDetection,

    /// <summary>Colour temperature above 3000 K.</summary>
    ColdWhiteLight,

    /// <summary>Some dark nights are accepted by the tender.</summary>
    DarkNightsAccepted,

    /// <summary>Maintenance years are in the bill.</summary>
    MaintenanceIncluded,

    /// <summary>No maintenance is in the bill.</summary>
    NoMaintenance,

    /// <summary>Sites that could not be designed.</summary>
    UnmetSites,
}
