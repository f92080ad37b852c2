using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>Finds the site of a kit that leaves the least margin, to show its pictures.</summary>
internal static class Governing
{
    public static readonly string[] LightChecks = ["light."];
    public static readonly string[] EnergyChecks = ["energy.", "battery.autonomy", "array.ratio", "array.recovery"];
    public static readonly string[] StructureChecks = ["foundation.", "pole.", "bolts."];

    public static bool Concerns(Check check, string[] prefixes) => prefixes.Any(p => check.Id.StartsWith(p, StringComparison.Ordinal));

    /// <summary>Site behind the check with the least margin among those whose id begins with one of the prefixes; else the kit's first site.</summary>
    public static SiteDesign Site(TenderDesign design, Kit kit, params string[] prefixes)
    {
        var governing = kit.Checks.Zip(kit.CheckSites)
            .Where(pair => Concerns(pair.First, prefixes))
            .OrderBy(pair => pair.First.MarginFraction ?? double.PositiveInfinity)
            .Select(pair => pair.Second)
            .FirstOrDefault();
        return design.Sites.FirstOrDefault(s => s.Site.Id == governing) ?? design.Sites.First(s => s.KitId == kit.Id);
    }

    /// <summary>What such a site is to its kit, in words.</summary>
    public static string Phrase(Kit kit) => kit.SiteIds.Length == 1 ? "is the kit's only site" : "leaves the least margin of the kit's sites";

    public static SiteDesign OfLight(TenderDesign design, Kit kit) => Site(design, kit, LightChecks);

    public static SiteDesign OfEnergy(TenderDesign design, Kit kit) => Site(design, kit, EnergyChecks);

    public static SiteDesign OfStructure(TenderDesign design, Kit kit) => Site(design, kit, StructureChecks);
}
