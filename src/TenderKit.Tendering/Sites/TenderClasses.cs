using TenderKit.Sizing.Lighting;

namespace TenderKit.Tendering.Sites;

/// <summary>Lighting classes a tender may ask for: classes of illuminance, and classes of luminance for roads.</summary>
public static class TenderClasses
{
    /// <summary>Names known, in the order of their standards.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. RoadClasses.Names.Where(n => Find(n) is not null)];

    /// <summary>The target of a class, or null when its name is not known. A class of luminance gives a target that asks for no illuminance.</summary>
    public static LightTarget? Find(string name)
    {
        if (LightClasses.Find(name) is { } target) return target;
        return RoadClasses.Find(name) is { Luminance: not null } road ? new LightTarget(road.Name, 0, null, null, null, road.Source) : null;
    }

    /// <summary>The class of luminance behind a target, or null when the target asks for illuminance.</summary>
    public static RoadClass? Luminance(LightTarget target) =>
        target.AverageLx > 0 ? null : RoadClasses.Find(target.Name) is { Luminance: not null } road ? road : null;
}
