using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Forms;

/// <summary>Units of a bill in the words of several languages.</summary>
internal static class FormUnits
{
    private static readonly HashSet<string> Sums = new(StringComparer.Ordinal)
    {
        "sum", "ls", "lump sum", "l s", "lot", "item", "forfait", "ft", "ff", "ens", "ensemble", "global", "gl", "glb", "suma global", "sg", "vg", "verba", "verba global", "cj", "conjunto global", "p a",
    };

    /// <summary>Whether the unit means the whole thing at one price.</summary>
    public static bool IsSum(string unit) => Sums.Contains(HeadingMatch.Words(unit));
}
