namespace TenderKit.Tendering.Items;

/// <summary>What a line of somebody's list is about.</summary>
public enum ItemKind
{
    Unknown,
    Module,
    Luminaire,
    Battery,
    Controller,
    Enclosure,
    Bracket,
    Pole,
    Foundation,
    Cable,
    Fuse,
    SurgeArrester,
    EarthElectrode,
    Fixings,

    /// <summary>Lamp, module, battery and controller in one housing.</summary>
    Integrated,

    /// <summary>A whole solar street light with its pole, sold as one item.</summary>
    CompleteLight,
    SetUp,
    Survey,
    Excavation,
    Concrete,
    Reinforcement,
    ErectPole,
    FitKit,
    LayCable,
    Commission,
    Training,
    Documents,
    Maintenance,
    Transport,
    Contingency,
    ProvisionalSum,
    Daywork,
    Tax,
    Discount,
    Total,
}
