using System.Collections.Immutable;
using F23.StringSimilarity;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>Sites that may be one and the same under two numbers: like names near each other, or one position.</summary>
public static class DuplicateSites
{
    /// <summary>Names count only within this distance: every district has its market, m. Common practice, no source.</summary>
    private const double NearM = 1000;

    /// <summary>One position, m. Common practice, no source.</summary>
    private const double SamePlaceM = 5;

    private const double LikeName = 0.9;
    private const int MostSaid = 20;

    /// <summary>Neighbours a site is compared with: more within a kilometre are no list of streets.</summary>
    private const int MostNear = 300;
    private const double DegreesPerKm = 1 / 110.0;

    /// <summary>A warning per pair with like names, and one note for the sites that share positions.</summary>
    /// <param name="file">File of the list.</param>
    public static ImmutableArray<Diagnostic> Of(ImmutableArray<Site> sites, string file)
    {
        var sorted = sites.Where(s => s.IsPositionStated).OrderBy(s => s.LatitudeDegrees).ThenBy(s => s.Id, StringComparer.Ordinal).ToList();
        var names = sorted.Select(s => HeadingMatch.Words(s.Name)).ToList();
        var (pairs, shared) = (new List<Diagnostic>(), new SortedSet<string>(StringComparer.Ordinal));
        for (var i = 0; i < sorted.Count; i++)
        {
            var near = 0;
            for (var j = i + 1; j < sorted.Count && near < MostNear && sorted[j].LatitudeDegrees - sorted[i].LatitudeDegrees <= DegreesPerKm * NearM / 1000; j++)
            {
                if (RoughM(sorted[i], sorted[j]) is var distance && distance > NearM) continue;
                near++;
                if (names[i].Length > 0 && AreAlike(names[i], names[j])) pairs.Add(Pair(sorted[i], sorted[j], Geodesic.Between(Point(sorted[i]), Point(sorted[j])).LengthM, file));
                else if (distance <= SamePlaceM) shared.UnionWith([sorted[i].Id, sorted[j].Id]);
            }
        }

        if (shared.Count > 0)
            pairs.Add(Diagnostic.Note("TK127", $"sites {string.Join(", ", shared.Take(MostSaid))}{(shared.Count > MostSaid ? " and others" : "")} share positions under different names; right where several roads of a village have one position", new Place(file)));
        return pairs.Count <= MostSaid ? [.. pairs] : [.. pairs.Take(MostSaid), Diagnostic.Warning("TK127", FormattableString.Invariant($"{pairs.Count - MostSaid} more pairs of sites may be the same"), new Place(file))];
    }

    private static Diagnostic Pair(Site a, Site b, double distanceM, string file)
    {
        var (first, second) = a.Row <= b.Row ? (a, b) : (b, a);
        return Diagnostic.Warning("TK127",
            FormattableString.Invariant($"'{second.Name}' and '{first.Name}' of site {first.Id} in row {first.Row} lie {distanceM:0} m apart and may be one site; remove one, or tell their names apart"),
            new Place(file, Row: second.Row, Site: second.Id));
    }

    private static bool AreAlike(string a, string b)
    {
        if (a == b) return true;
        // names that differ in their numbers only are meant to differ: Road 1, Road 2
        if (string.Concat(a.Where(char.IsDigit)) != string.Concat(b.Where(char.IsDigit)) || Math.Min(a.Length, b.Length) < 6) return false;
        return 1 - (new OptimalStringAlignment().Distance(a, b) / Math.Max(a.Length, b.Length)) >= LikeName;
    }

    private static double RoughM(Site a, Site b)
    {
        var (north, east) = (a.LatitudeDegrees - b.LatitudeDegrees, (a.LongitudeDegrees - b.LongitudeDegrees) * Angle.CosDegrees(a.LatitudeDegrees));
        return 110_000 * Math.Sqrt((north * north) + (east * east));
    }

    private static GeoPoint Point(Site site) => new(site.LatitudeDegrees, site.LongitudeDegrees);
}
