namespace TenderKit.Sizing.Structure;

/// <summary>
/// Three soil classes to choose from; an unknown soil takes the worst. Presumptive values of IBC table 1806.2 (from memory):
/// dense is class 3, sandy gravel and gravel (3000 psf, 200 psf/ft); medium is class 4, sand and silty or clayey sand and gravel
/// (2000 psf, 150 psf/ft); soft is class 5, clay, silt and their mixtures (1500 psf, 100 psf/ft). Peat, fill, loose or expansive
/// ground is none of them and needs an investigation. The doubling of 1806.3.4 is not taken.
/// </summary>
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
