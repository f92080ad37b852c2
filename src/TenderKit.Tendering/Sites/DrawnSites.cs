using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>
/// Sites out of a map: lines are roads, areas are yards, points are sites when they state a length and poles when they say so. The map becomes a
/// table, so that properties are understood like the columns of any list; what is not stated is measured.
/// </summary>
public static class DrawnSites
{
    /// <summary>A pole belongs to the nearest line or area within this, m. Common practice, no source.</summary>
    private const double PoleReachM = 50;

    private static readonly string[] PoleWords =
        ["pole", "poles", "lamp", "lamps", "light", "lights", "streetlight", "lamppost", "poteau", "mat", "lampadaire", "poste", "postes", "luminaria", "luminaire", "candeeiro"];

    private static readonly string[] Measured =
        [SiteColumns.Id, SiteColumns.Name, SiteColumns.Latitude, SiteColumns.Longitude, SiteColumns.Kind, SiteColumns.Length, SiteColumns.Width, SiteColumns.Poles];

    /// <inheritdoc cref="SiteListReader.Read(TableFile, SiteDefaults, Func{string, LightTarget?}, IReadOnlyList{string}?, SavedColumns?)" path="/param"/>
    /// <param name="map">The map.</param>
    public static SiteListReading Read(MapFile map, SiteDefaults defaults, Func<string, LightTarget?> classFinder, IReadOnlyList<string>? classNames = null, SavedColumns? saved = null)
    {
        var found = new List<Diagnostic>();
        var (features, poles) = Sorted(map, found);
        var (table, stated) = TableOf(map, features, poles);
        var file = new TableFile(map.File, [table], map.Sha256);
        var reading = SiteListReader.Read(file, defaults, classFinder, classNames, saved);
        var sites = reading.Sites.Select(s => WithGeometry(s, features[s.Row - 2], poles, stated[s.Row - 2], map.File, found)).ToImmutableArray();
        return reading with { Sites = sites, Diagnostics = [.. reading.Diagnostics, .. found] };
    }

    /// <summary>The features that are sites, and the poles by the number of the feature they stand at.</summary>
    private static (List<MapFeature> Sites, ILookup<int, GeoPoint> Poles) Sorted(MapFile map, List<Diagnostic> found)
    {
        var drawn = map.Features.Where(f => f.Shape != MapShape.Point).ToList();
        var points = map.Features.Where(f => f.Shape == MapShape.Point).ToList();
        var poles = points.Where(IsPole).ToList();
        var placed = poles.SelectMany(f => f.Parts).Select(p => (Point: p[0], Near: NearestTo(p[0], drawn))).ToList();
        var lost = placed.Count(p => p.Near is null);
        if (placed.Count > lost)
            found.Add(Diagnostic.Note("TK170", FormattableString.Invariant($"{placed.Count - lost} poles drawn on the map were given to the road or area within {PoleReachM} m"), new Place(map.File)));
        if (lost > 0)
            found.Add(Diagnostic.Warning("TK170", FormattableString.Invariant($"{lost} poles drawn on the map lie farther than {PoleReachM} m from any road or area and are not used; draw the road, or move them"), new Place(map.File)));
        return ([.. map.Features.Where(f => !poles.Contains(f))], placed.Where(p => p.Near is not null).ToLookup(p => p.Near!.Value, p => p.Point));
    }

    private static bool IsPole(MapFeature feature)
    {
        bool Says(string text) => HeadingMatch.Words(text).Split(' ').Any(PoleWords.Contains);
        return (Says(feature.Name) || feature.Properties.Any(p => p.Key is "folder" or "type" or "kind" or "feature" or "layer" && Says(p.Value)))
            && !feature.Properties.Any(p => IsMeaning(p.Key, SiteColumns.Length));
    }

    private static int? NearestTo(GeoPoint point, List<MapFeature> drawn)
    {
        var near = drawn.Select(f => (f.Number, Distance: f.Parts.Min(p => DistanceM(f.Shape, p, point)))).Where(d => d.Distance <= PoleReachM).OrderBy(d => d.Distance).ToList();
        return near.Count == 0 ? null : near[0].Number;
    }

    private static double DistanceM(MapShape shape, ImmutableArray<GeoPoint> part, GeoPoint point)
    {
        // a thousandth of a degree is more than 110 m: most things lie too far to be measured
        const double farDegrees = 0.001;
        if (part.Min(p => p.LatitudeDegrees) > point.LatitudeDegrees + farDegrees || part.Max(p => p.LatitudeDegrees) < point.LatitudeDegrees - farDegrees) return double.PositiveInfinity;
        if (shape == MapShape.Area && MapMeasure.Holds(part, point)) return 0;
        return MapMeasure.DistanceM(shape == MapShape.Area ? part.Add(part[0]) : part, point);
    }

    private static (Table Table, List<bool> IsLengthStated) TableOf(MapFile map, List<MapFeature> features, ILookup<int, GeoPoint> poles)
    {
        var keys = features.SelectMany(f => f.Properties.Select(p => p.Key)).Distinct(StringComparer.Ordinal).Where(k => !IsMeaning(k, SiteColumns.Latitude) && !IsMeaning(k, SiteColumns.Longitude)).ToList();
        var meanings = keys.ToDictionary(k => k, MeaningOf, StringComparer.Ordinal);
        // one thing may say "length" and the next "longitud": the first heading of a meaning stands for all
        var heads = keys.Where(k => meanings[k] is not null).GroupBy(k => meanings[k]!, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        keys.RemoveAll(k => meanings[k] is { } meaning && heads[meaning][0] != k);
        var owned = Measured.ToDictionary(m => m, m => heads.GetValueOrDefault(m)?[0], StringComparer.Ordinal);
        var added = Measured.Where(m => owned[m] is null && (m != SiteColumns.Poles || poles.Count > 0)).ToList();
        var headings = added.Concat(keys).ToList();
        var rows = new List<ImmutableArray<Cell>> { Row(1, headings) };
        var stated = new List<bool>();
        foreach (var feature in features)
        {
            var own = feature.Properties.GroupBy(p => p.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Value, StringComparer.Ordinal);
            string? Stated(Dictionary<string, string> texts, string heading) =>
                (meanings[heading] is { } meaning ? heads[meaning] : [heading]).Select(h => texts.GetValueOrDefault(h)).FirstOrDefault(t => !string.IsNullOrEmpty(t));
            string Cell(string heading, bool isAdded)
            {
                if (!isAdded && Stated(own, heading) is { } text) return text;
                var meaning = isAdded ? heading : Measured.FirstOrDefault(m => owned[m] == heading);
                return meaning is null ? "" : MeasuredText(feature, meaning, poles);
            }

            stated.Add(owned[SiteColumns.Length] is { } key && Stated(own, key) is not null);
            rows.Add(Row(rows.Count + 1, [.. headings.Select((h, i) => Cell(h, i < added.Count))]));
        }

        return (new Table(map.File, null, [.. rows]), stated);
    }

    private static ImmutableArray<Cell> Row(int row, List<string> texts) => [.. texts.Select((t, c) => new Cell(t.Trim(), row, c + 1))];

    private static string MeasuredText(MapFeature feature, string meaning, ILookup<int, GeoPoint> poles)
    {
        var place = SiteDrawing.PlaceOf(feature);
        var isArea = feature.Shape == MapShape.Area;
        string Say(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
        return meaning switch
        {
            SiteColumns.Id => Say(feature.Number, "0"),
            SiteColumns.Name => feature.Name,
            SiteColumns.Latitude => Say(place.LatitudeDegrees, "0.0000000"),
            SiteColumns.Longitude => Say(place.LongitudeDegrees, "0.0000000"),
            SiteColumns.Kind when feature.Shape != MapShape.Point => isArea ? "yard" : "road",
            SiteColumns.Length when feature.Shape == MapShape.Line => Say(feature.LengthM, "0.0") + " m",
            SiteColumns.Length when isArea => Say(SiteDrawing.RectangleOf(feature).LongSideM, "0.0") + " m",
            SiteColumns.Width when isArea => Say(SiteDrawing.RectangleOf(feature).ShortSideM, "0.0") + " m",
            SiteColumns.Poles when poles[feature.Number].Any() => Say(poles[feature.Number].Count(), "0"),
            _ => "",
        };
    }

    private static Site WithGeometry(Site site, MapFeature feature, ILookup<int, GeoPoint> poles, bool isStated, string file, List<Diagnostic> found) =>
        feature.Shape == MapShape.Point ? site : SiteDrawing.Add(site, feature, [.. poles[feature.Number]], isStated, file, found);

    private static bool IsMeaning(string key, string meaning) => MeaningOf(key) == meaning;

    /// <summary>What the name of a property means, or null; a likeness that a list's heading would be taken for is enough.</summary>
    private static string? MeaningOf(string key) => HeadingMatch.Fits(key, SiteColumns.All) is [{ Score: >= 0.88 } best, ..] ? best.Meaning.Id : null;
}
