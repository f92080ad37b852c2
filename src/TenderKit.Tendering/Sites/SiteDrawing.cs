using System.Collections.Immutable;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Positions;

namespace TenderKit.Tendering.Sites;

/// <summary>Gives a site what is drawn of it, and says where the drawing and the list do not agree.</summary>
internal static class SiteDrawing
{
    /// <summary>Stated and drawn size may differ by this fraction. Common practice, no source.</summary>
    private const double Tolerance = 0.05;

    /// <summary>The site with its line or its area.</summary>
    /// <param name="feature">A line or an area.</param>
    /// <param name="poles">Poles drawn at it.</param>
    /// <param name="isLengthStated">Whether the list states a length.</param>
    public static Site Add(Site site, MapFeature feature, ImmutableArray<GeoPoint> poles, bool isLengthStated, string file, List<Diagnostic> found)
    {
        var place = new Place(file, Row: site.Row, Site: site.Id);
        if (Turned(site, feature) is { } right)
        {
            feature = right;
            if (!isLengthStated) site = site with { LengthM = Math.Round(feature.Shape == MapShape.Area ? RectangleOf(feature).LongSideM : feature.LengthM, 1) };
        }

        var geometry = feature.Shape == MapShape.Area ? AreaOf(site, feature, place, found) : LineOf(feature);
        var drawnM = feature.Shape == MapShape.Area ? RectangleOf(feature).LongSideM : feature.LengthM;
        if (isLengthStated && Math.Abs(site.LengthM - drawnM) > Tolerance * drawnM)
            found.Add(Diagnostic.Warning("TK170", FormattableString.Invariant($"states a length of {site.LengthM:0.#} m and is drawn {drawnM:0.#} m long; the stated length is used: correct the one that is wrong"), place));
        return site with { Geometry = geometry with { Poles = poles }, BearingDegrees = site.BearingDegrees ?? geometry.BearingDegrees };
    }

    /// <summary>
    /// The drawing with latitude and longitude exchanged or a sign changed, where the other sites showed its position to be so; null where it stands as drawn.
    /// </summary>
    private static MapFeature? Turned(Site site, MapFeature feature)
    {
        const double nearDegrees = 1e-4;
        bool IsAt(GeoPoint p) => Math.Abs(p.LatitudeDegrees - site.LatitudeDegrees) < nearDegrees && Math.Abs(p.LongitudeDegrees - site.LongitudeDegrees) < nearDegrees;
        var drawn = PlaceOf(feature);
        if (IsAt(drawn)) return null;
        Func<GeoPoint, GeoPoint>[] ways =
        [
            p => new(p.LongitudeDegrees, p.LatitudeDegrees), p => new(p.LatitudeDegrees, -p.LongitudeDegrees), p => new(-p.LatitudeDegrees, p.LongitudeDegrees), p => new(-p.LatitudeDegrees, -p.LongitudeDegrees),
            p => new(-p.LongitudeDegrees, p.LatitudeDegrees), p => new(p.LongitudeDegrees, -p.LatitudeDegrees),
        ];
        if (ways.FirstOrDefault(w => IsAt(w(drawn))) is not { } way) return null;
        return feature with { Parts = [.. feature.Parts.Select(r => r.Select(way).ToImmutableArray())], Holes = [.. feature.Holes.Select(r => r.Select(way).ToImmutableArray())] };
    }

    /// <summary>Where a drawn thing is, for its sun.</summary>
    public static GeoPoint PlaceOf(MapFeature feature) => feature.Shape switch
    {
        MapShape.Point => feature.Parts[0][0],
        MapShape.Line => MapMeasure.Middle(feature.Parts.MaxBy(p => MapMeasure.LengthM(p))),
        _ => MapMeasure.Inside(LargestRing(feature)),
    };

    /// <summary>The smallest rectangle around the largest area of a feature.</summary>
    public static BoundingRectangle RectangleOf(MapFeature feature) => MapMeasure.Rectangle(LargestRing(feature));

    private static ImmutableArray<GeoPoint> LargestRing(MapFeature feature) => feature.Parts.MaxBy(MapMeasure.AreaM2);

    private static SiteGeometry LineOf(MapFeature feature)
    {
        var (bends, before) = (new List<double>(), 0.0);
        foreach (var part in feature.Parts)
        {
            bends.AddRange(PolePositions.Bends(part).Select(b => before + b.AlongM));
            before += MapMeasure.LengthM(part);
        }

        return new SiteGeometry(feature.Shape, feature.Parts) { BendFractions = [.. bends.Select(b => b / before)] };
    }

    private static SiteGeometry AreaOf(Site site, MapFeature feature, Place place, List<Diagnostic> found)
    {
        var ring = LargestRing(feature);
        if (feature.Parts.Length > 1)
            found.Add(Diagnostic.Warning("TK170", FormattableString.Invariant($"is drawn as {feature.Parts.Length} areas; the largest is taken: draw a site for each"), place));
        var geometry = new SiteGeometry(MapShape.Area, [ring]);
        if (site.Kind != SiteKind.Yard) return geometry;
        if (MapMeasure.CrossesItself(ring))
        {
            found.Add(Diagnostic.Warning("TK170", FormattableString.Invariant($"is drawn with an outline that crosses itself, so that its inside is not known; the smallest rectangle around it, {site.LengthM:0.#} x {site.WidthM:0.#} m, is lit: draw the outline again"), place));
            return geometry;
        }

        var box = MapMeasure.Rectangle(ring);
        if (Differs(site.LengthM, box.LongSideM) || Differs(site.WidthM, box.ShortSideM))
        {
            found.Add(Diagnostic.Note("TK170", FormattableString.Invariant($"states {site.LengthM:0.#} x {site.WidthM:0.#} m; a rectangle of that size is lit and not the area as drawn"), place));
            return geometry;
        }

        return geometry with { Lit = LitOf(feature, ring, place, found) };
    }

    private static DrawnArea? LitOf(MapFeature feature, ImmutableArray<GeoPoint> ring, Place place, List<Diagnostic> found)
    {
        if (DrawnArea.Of(ring, feature.Holes) is not { } lit)
        {
            found.Add(Diagnostic.Warning("TK170", "is drawn too large or too thin to be lit as one area; the smallest rectangle around it is lit: draw the places that need light", place));
            return null;
        }

        if (lit.Area.Holes.Length == 1)
            found.Add(Diagnostic.Note("TK170", FormattableString.Invariant($"is lit as drawn, {lit.Area.AreaM2:0} m2 without its opening; light is calculated as if nothing in the opening threw a shadow: a building there needs poles on each of its sides"), place));
        else if (lit.Area.Holes.Length > 1)
            found.Add(Diagnostic.Note("TK170", FormattableString.Invariant($"is lit as drawn, {lit.Area.AreaM2:0} m2 without its {lit.Area.Holes.Length} openings; light is calculated as if nothing in the openings threw a shadow: a building there needs poles on each of its sides"), place));
        else
            found.Add(Diagnostic.Note("TK170", FormattableString.Invariant($"is lit as drawn, {lit.Area.AreaM2:0} m2"), place));
        return lit;
    }

    private static bool Differs(double statedM, double drawnM) => Math.Abs(statedM - drawnM) > Math.Max(0.06, Tolerance * drawnM);
}
