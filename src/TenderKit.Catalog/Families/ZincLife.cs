namespace TenderKit.Catalog.Families;

/// <summary>Corrosivity of the air by ISO 9223, from very low to extreme.</summary>
public enum CorrosionCategory
{
    C1,
    C2,
    C3,
    C4,
    C5,
    CX,
}

/// <summary>How long a zinc coating lasts in the open air.</summary>
public static class ZincLife
{
    /// <summary>
    /// Greatest loss of zinc in the first year, micrometres a year, by category (ISO 9223, table of corrosion rates of standard metals;
    /// from memory). Later years lose less, so a life from it errs on the short side.
    /// </summary>
    public static double GreatestLossUmPerYear(CorrosionCategory category) => category switch
    {
        CorrosionCategory.C1 => 0.1,
        CorrosionCategory.C2 => 0.7,
        CorrosionCategory.C3 => 2.1,
        CorrosionCategory.C4 => 4.2,
        CorrosionCategory.C5 => 8.4,
        CorrosionCategory.CX => 25,
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "no category of ISO 9223"),
    };

    /// <summary>Years until a coating is gone at the greatest loss of the category; 84 um in C3: 40 years.</summary>
    public static double Years(double zincUm, CorrosionCategory category) => zincUm / GreatestLossUmPerYear(category);

    /// <summary>The harshest category a coating lasts these years in; null when it lasts them in none.</summary>
    public static CorrosionCategory? HarshestFor(double zincUm, double years)
    {
        foreach (var category in Enum.GetValues<CorrosionCategory>().Reverse())
        {
            if (Years(zincUm, category) >= years) return category;
        }

        return null;
    }
}
