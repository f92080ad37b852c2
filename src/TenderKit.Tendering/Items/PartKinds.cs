using TenderKit.Catalog.Families;

namespace TenderKit.Tendering.Items;

/// <summary>The kind of a part of the catalogue.</summary>
public static class PartKinds
{
    public static ItemKind Of(Part part) => part switch
    {
        Module => ItemKind.Module,
        Luminaire => ItemKind.Luminaire,
        Battery => ItemKind.Battery,
        Controller => ItemKind.Controller,
        Enclosure => ItemKind.Enclosure,
        Bracket => ItemKind.Bracket,
        Pole => ItemKind.Pole,
        FoundationSet => ItemKind.Foundation,
        Cable => ItemKind.Cable,
        IntegratedUnit => ItemKind.Integrated,
        ProtectionDevice device => Of(device.Kind),
        ServiceRate service => Of(service.Use),
        _ => ItemKind.Unknown,
    };

    private static ItemKind Of(ProtectionKind kind) => kind switch
    {
        ProtectionKind.SurgeArrester => ItemKind.SurgeArrester,
        ProtectionKind.EarthElectrode => ItemKind.EarthElectrode,
        _ => ItemKind.Fuse,
    };

    private static ItemKind Of(ServiceUse use) => use switch
    {
        ServiceUse.SetUpSite => ItemKind.SetUp,
        ServiceUse.Survey => ItemKind.Survey,
        ServiceUse.Excavate => ItemKind.Excavation,
        ServiceUse.Concrete => ItemKind.Concrete,
        ServiceUse.Reinforcement => ItemKind.Reinforcement,
        ServiceUse.ErectPole => ItemKind.ErectPole,
        ServiceUse.FitKit => ItemKind.FitKit,
        ServiceUse.LayCable => ItemKind.LayCable,
        ServiceUse.Commission => ItemKind.Commission,
        ServiceUse.Train => ItemKind.Training,
        ServiceUse.Documents => ItemKind.Documents,
        ServiceUse.MaintainYear => ItemKind.Maintenance,
        ServiceUse.FixingsPerPole => ItemKind.Fixings,
        _ => ItemKind.Unknown,
    };
}
