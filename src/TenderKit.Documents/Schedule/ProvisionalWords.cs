using System.Collections.Immutable;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>What is provisional because nobody has stood on the site: wherever its poles are counted, it is said.</summary>
internal static class ProvisionalWords
{
    /// <summary>Sign behind a number that a survey may still change.</summary>
    public const string Sign = "*";

    /// <summary>Explains the sign.</summary>
    public const string Legend = Sign + " Not surveyed: poles and everything counted from them are provisional.";

    /// <summary>Whether a survey may still change what is counted from these sites.</summary>
    public static bool Holds(IEnumerable<SiteDesign> sites) => sites.Any(s => !s.Site.IsSurveyed);

    public static bool Holds(TenderDesign design, Kit kit) => Holds(design.Sites.Where(s => s.KitId == kit.Id));

    /// <summary>A sentence that names the sites, in one lot or in all; empty when all are surveyed.</summary>
    public static string Of(TenderDesign design, string? lot = null)
    {
        var open = design.Sites.Where(s => !s.Site.IsSurveyed && (lot is null || s.Site.Lot == lot)).Select(s => s.Site.Id).ToImmutableArray();
        return open.IsEmpty ? "" : $"Not surveyed, so their poles and everything counted from them are provisional: {Words.List(open, 24)}.";
    }
}
