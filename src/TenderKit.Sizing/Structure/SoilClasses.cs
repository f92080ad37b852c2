namespace TenderKit.Sizing.Structure;

/// <summary>Three soil classes to choose from; an unknown soil takes the worst.</summary>
public static class SoilClasses
{
    public static readonly SoilClass Dense = new("dense", 31.4, 143.6);
    public static readonly SoilClass Medium = new("medium", 23.6, 95.8);
    public static readonly SoilClass Soft = new("soft", 15.7, 71.8);

    /// <summary>The class of a name, or null; the empty name is the worst class.</summary>
    public static SoilClass? Find(string name) => name.Trim().ToUpperInvariant() switch
    {
        "DENSE" => Dense,
        "MEDIUM" => Medium,
        "SOFT" or "" => Soft,
        _ => null,
    };
}
