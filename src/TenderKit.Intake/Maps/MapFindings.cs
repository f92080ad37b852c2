using System.Collections.Immutable;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Maps;

/// <summary>Collects features and what was noticed while a map is read, and stops at the limits.</summary>
internal sealed class MapFindings(Place place)
{
    private const int MostSaid = 20;

    private readonly List<Diagnostic> all = [];
    private readonly List<MapFeature> features = [];
    private long points;
    private int unsaid;

    public ImmutableArray<Diagnostic> All => unsaid == 0
        ? [.. all]
        : [.. all, Diagnostic.Warning("TK109", FormattableString.Invariant($"{unsaid} more things drawn on the map could not be read"), place)];

    public ImmutableArray<MapFeature> Features => [.. features];

    public void Note(string message) => all.Add(Diagnostic.Note("TK109", message, place));

    /// <summary>A thing that cannot be read and is left out.</summary>
    public void Lost(string name, string why)
    {
        if (all.Count(d => d.Severity == Severity.Warning) >= MostSaid) unsaid++;
        else all.Add(Diagnostic.Warning("TK109", $"'{(name.Length > 60 ? name[..60] : name)}' on the map is left out: {why}", place));
    }

    public void Add(MapShape shape, IEnumerable<ImmutableArray<GeoPoint>> parts, string name, IEnumerable<KeyValuePair<string, string>> properties, IEnumerable<ImmutableArray<GeoPoint>>? holes = null)
    {
        var said = name.Length > 0 ? name : properties.FirstOrDefault(p => p.Key.Equals("id", StringComparison.OrdinalIgnoreCase)).Value ?? "";
        var (least, kept) = (shape switch { MapShape.Point => 1, MapShape.Line => 2, _ => 3 }, new List<ImmutableArray<GeoPoint>>());
        foreach (var part in parts)
        {
            var clean = Clean(Northing(part, said), shape);
            if (clean.Length < least) Lost(said, shape == MapShape.Line ? "a line needs two different points" : "an area needs three different points");
            else if (!clean.All(IsOnEarth))
                Lost(said, "its coordinates are no degrees of longitude and latitude; save the map in WGS84");
            else kept.Add(clean);
        }

        if (kept.Count == 0) return;
        if (features.Count >= ReadingLimits.GreatestRows) throw new TooLargeException(FormattableString.Invariant($"the map holds more than {ReadingLimits.GreatestRows} things; save the list alone in a new file"));
        ReadingLimits.AssertCells(points += kept.Sum(k => (long)k.Length));
        var openings = (shape == MapShape.Area ? holes ?? [] : []).Select(h => Clean(h, shape)).Where(h => h.Length >= 3 && h.All(IsOnEarth)).ToImmutableArray();
        ReadingLimits.AssertCells(points += openings.Sum(k => (long)k.Length));
        features.Add(new(features.Count + 1, shape, [.. kept], name.Trim(), [.. properties]) { Holes = openings });
    }

    /// <summary>Latitude written before longitude, where that is the only way the points can lie on the earth.</summary>
    private ImmutableArray<GeoPoint> Northing(ImmutableArray<GeoPoint> part, string name)
    {
        if (part.All(p => Math.Abs(p.LatitudeDegrees) <= 90) || !part.All(p => Math.Abs(p.LatitudeDegrees) <= 180 && Math.Abs(p.LongitudeDegrees) <= 90)) return part;
        all.Add(Diagnostic.Warning("TK109", $"'{(name.Length > 60 ? name[..60] : name)}' on the map is written latitude first and was read so; maps write longitude first", place));
        return [.. part.Select(p => new GeoPoint(p.LongitudeDegrees, p.LatitudeDegrees))];
    }

    private static bool IsOnEarth(GeoPoint p) => Math.Abs(p.LatitudeDegrees) <= 90 && Math.Abs(p.LongitudeDegrees) <= 180;

    /// <summary>Without points that repeat the one before, and without the closing point of a ring.</summary>
    private static ImmutableArray<GeoPoint> Clean(ImmutableArray<GeoPoint> part, MapShape shape)
    {
        var kept = new List<GeoPoint>(part.Length);
        foreach (var point in part.Where(p => kept.Count == 0 || kept[^1] != p)) kept.Add(point);
        if (shape == MapShape.Area && kept.Count > 1 && kept[0] == kept[^1]) kept.RemoveAt(kept.Count - 1);
        return [.. kept];
    }
}
