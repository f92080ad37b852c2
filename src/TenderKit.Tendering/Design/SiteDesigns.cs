using System.Collections.Concurrent;
using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Designs all sites of a tender, those that are alike once, those of one place one after the other.</summary>
internal static class SiteDesigns
{
    public static Outcome<SiteDesign>[] Of(ImmutableArray<Site> sites, DesignInputs inputs, Action<int>? done)
    {
        var outcomes = new Outcome<SiteDesign>[sites.Length];
        var alike = sites.Select((site, index) => (site, index)).GroupBy(p => AlikeKey(p.site), p => p.index, StringComparer.Ordinal).Select(g => g.ToArray()).ToArray();
        ForEachByPlace(alike, g => sites[g[0]], indices =>
        {
            var first = DesignOf(sites[indices[0]], inputs);
            foreach (var index in indices)
            {
                outcomes[index] = index == indices[0] ? first : For(sites[index], first);
                done?.Invoke(index);
            }
        });
        return outcomes;
    }

    /// <summary>Runs over items in the order of their places on all processors, so that the years of hours of a place are made once.</summary>
    public static void ForEachByPlace<T>(IEnumerable<T> items, Func<T, Site> siteOf, Action<T> run)
    {
        var ordered = items.OrderBy(i => SharedWork.PlaceKey(siteOf(i)), StringComparer.Ordinal).ToArray();
        // as many as there are processors: each holds the hours of its place
        Parallel.ForEach(Partitioner.Create(ordered, EnumerablePartitionerOptions.NoBuffering), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, run);
    }

    /// <summary>Equal for sites whose design is the same: all but number, name, row, lot and remark.</summary>
    public static string AlikeKey(Site site)
    {
        var place = SharedWork.AtPlace(site) with { Id = "", Name = "", Row = 0, Lot = "", Remark = "", MountingHeightsM = [], Geometry = null, District = "", IsSurveyed = false, SurveyedOn = null };
        return place.ToString() + string.Join(';', site.MountingHeightsM.Select(h => h.ToString("R", System.Globalization.CultureInfo.InvariantCulture)));
    }

    /// <summary>The design of a site alike.</summary>
    private static Outcome<SiteDesign> For(Site site, Outcome<SiteDesign> alike)
    {
        ImmutableArray<Diagnostic> Moved(ImmutableArray<Diagnostic> diagnostics) => [.. diagnostics.Select(d => d with { Place = d.Place with { Site = site.Id } })];
        return new(alike.Value is { } design ? design with { Site = site, Diagnostics = Moved(design.Diagnostics) } : null, Moved(alike.Diagnostics));
    }

    /// <summary>One site; a fault of the program on it must not stop the others.</summary>
    private static Outcome<SiteDesign> DesignOf(Site site, DesignInputs inputs)
    {
        try
        {
            return SiteDesigner.Run(site, inputs);
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException or ArithmeticException)
        {
            return Outcome.None<SiteDesign>(Diagnostic.Error(
                "TK334", $"a fault of the program stopped this site: {e.Message.ReplaceLineEndings(" ")}; check its row and its parts for odd values, and report the fault with the tender", new Place(Site: site.Id)));
        }
    }
}
