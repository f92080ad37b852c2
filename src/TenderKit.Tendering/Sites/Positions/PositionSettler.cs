using System.Globalization;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Tendering.Sites.Positions;

/// <summary>
/// Holds the positions of a list against each other: one that lies far off, and would lie among the others with latitude and longitude exchanged
/// or a sign changed, is read so with a warning; a missing one is taken from the others, with what that costs.
/// </summary>
internal sealed class PositionSettler
{
    /// <summary>Fewest other positions that may speak against one. Common practice, no source.</summary>
    private const int LeastOthers = 4;

    /// <summary>Sites of one tender lie within this of their middle, or within six times their usual distance from it, km. Common practice, no source.</summary>
    private const double LeastRadiusKm = 150;
    private const double TimesUsual = 6;

    /// <summary>Beyond this spread a missing position is not guessed: the sun differs too much, km. Common practice, no source.</summary>
    private const double GreatestSpreadKm = 200;

    private readonly List<(SiteRow Row, RowPosition Read)> rows;
    private readonly GeoPoint? middle;
    private readonly double radiusKm;
    private readonly int sound;
    private readonly Dictionary<string, Neighbours> known = new(StringComparer.Ordinal);

    public PositionSettler(IEnumerable<(SiteRow Row, RowPosition Read)> positions)
    {
        rows = [.. positions];
        var points = rows.Where(r => r.Read.IsOnEarth).Select(r => r.Read.Point!.Value).ToList();
        sound = points.Count;
        if (sound == 0) return;
        middle = Middle(points);
        var distances = points.Select(p => Km(middle.Value, p)).Order().ToList();
        radiusKm = Math.Max(LeastRadiusKm, TimesUsual * distances[distances.Count / 2]);
    }

    /// <summary>Gives every row its position, or says why it has none.</summary>
    public void Settle()
    {
        foreach (var (row, read) in rows)
        {
            if (read.Point is { } point) row.Position = Placed(row, read, point);
        }

        foreach (var (row, read) in rows.Where(r => r.Read.IsMissing)) row.Position = Estimated(row, read);
    }

    private GeoPoint? Placed(SiteRow row, RowPosition read, GeoPoint point)
    {
        if (read.IsOnEarth && (sound < LeastOthers + 1 || Km(middle!.Value, point) <= radiusKm)) return Echoed(row, read, point);
        var others = read.IsOnEarth ? sound - 1 : sound;
        var fitting = others < LeastOthers ? [] : Candidates(point, read.HasLetters).Where(c => IsAmongOthers(c.Point)).ToList();
        if (fitting is [var only, ..] && (fitting.Count == 1 || only.IsExchange))
        {
            row.Warning("TK178", read.LatitudeColumn, string.Create(CultureInfo.InvariantCulture,
                $"and longitude {point.LongitudeDegrees:0.######} lie far from the other {others} sites; {only.What} they lie among them and were read so: {only.Point.LatitudeDegrees:0.######}, {only.Point.LongitudeDegrees:0.######}; correct the list"));
            return Echoed(row, read with { Understood = null }, only.Point);
        }

        if (read.IsOnEarth)
        {
            row.Warning("TK178", read.LatitudeColumn, string.Create(CultureInfo.InvariantCulture,
                $"and longitude {point.LongitudeDegrees:0.######} lie {Km(middle!.Value, point):0} km from the middle of the other {others} sites; check them"));
            return Echoed(row, read, point);
        }

        Refuse(row, read, point);
        return null;
    }

    private static GeoPoint Echoed(SiteRow row, RowPosition read, GeoPoint exact)
    {
        // to a centimetre, so that a position is the same number in degrees, minutes or metres of a grid
        var point = new GeoPoint(Math.Round(exact.LatitudeDegrees, 7), Math.Round(exact.LongitudeDegrees, 7));
        if (read.Understood is { } words) row.Understood(read.LatitudeColumn, words);
        else
        {
            row.Understood(read.LatitudeColumn, point.LatitudeDegrees.ToString("0.######", CultureInfo.InvariantCulture) + " degrees");
            row.Understood(read.LongitudeColumn, point.LongitudeDegrees.ToString("0.######", CultureInfo.InvariantCulture) + " degrees");
        }

        return point;
    }

    private static void Refuse(SiteRow row, RowPosition read, GeoPoint point)
    {
        var (latitude, longitude) = (point.LatitudeDegrees, point.LongitudeDegrees);
        string Say(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
        if (latitude == 0 && longitude == 0)
            row.Error("TK187", read.LatitudeColumn, "and longitude are both zero, a place in the sea; write the real position");
        else if (Math.Abs(latitude) > 90 && Math.Abs(latitude) <= 180 && Math.Abs(longitude) <= 90)
            row.Error("TK188", read.LatitudeColumn, $"and longitude {Say(longitude)} look exchanged; exchange them");
        else if (Math.Abs(latitude) > 90)
            row.Error("TK184", read.LatitudeColumn, $"is {Say(latitude)} degrees, outside -90 to 90 degrees; correct it");
        else row.Error("TK184", read.LongitudeColumn, $"is {Say(longitude)} degrees, outside -180 to 180 degrees; correct it");
    }

    private GeoPoint? Estimated(SiteRow row, RowPosition read)
    {
        var district = row.Text(SiteColumns.District);
        var same = district.Length > 0 ? Known(district) : Neighbours.None;
        var (count, point, spread) = same.Count > 0 ? same : Known("");
        if (spread > GreatestSpreadKm)
        {
            row.Error("TK182", read.LatitudeColumn, count == 0
                ? "is missing; the sun cannot be found without it: write decimal degrees such as 14.2508"
                : FormattableString.Invariant($"is missing and the other sites lie up to {spread:0} km from their middle, too far to stand for this one: write decimal degrees such as 14.2508"));
            return null;
        }

        var where = same.Count > 0 ? $" of {district}" : "";
        row.Warning("TK177", read.LatitudeColumn, string.Create(CultureInfo.InvariantCulture,
            $"and longitude are missing; the middle of {count} other {(count == 1 ? "site" : "sites")}{where} is taken, up to {spread:0} km from them: sun, temperature and transport are of that place, and the site is provisional until its position is known"));
        row.IsPositionStated = false;
        return point;
    }

    /// <summary>Positions that are read and lie among the others, together: those of a district, or all for the empty name.</summary>
    private Neighbours Known(string district)
    {
        if (known.TryGetValue(district, out var found)) return found;
        var points = rows.Where(r => !r.Read.IsMissing && r.Row.Position is { } p && IsAmongOthers(p) && (district.Length == 0 || r.Row.Text(SiteColumns.District) == district))
            .Select(r => r.Row.Position!.Value).ToList();
        return known[district] = points.Count == 0 ? Neighbours.None : Neighbours.Of(points);
    }

    private bool IsAmongOthers(GeoPoint point) =>
        Math.Abs(point.LatitudeDegrees) <= 90 && Math.Abs(point.LongitudeDegrees) <= 180 && middle is { } m && Km(m, point) <= radiusKm;

    private static IEnumerable<(GeoPoint Point, string What, bool IsExchange)> Candidates(GeoPoint p, bool hasLetters)
    {
        var (a, b) = (p.LatitudeDegrees, p.LongitudeDegrees);
        yield return (new(b, a), "exchanged", true);
        if (hasLetters) yield break;
        yield return (new(a, -b), "with the other sign of the longitude", false);
        yield return (new(-a, b), "with the other sign of the latitude", false);
        yield return (new(-a, -b), "with the other signs", false);
        yield return (new(-b, a), "exchanged, with the other sign of the latitude,", false);
        yield return (new(b, -a), "exchanged, with the other sign of the longitude,", false);
    }

    /// <summary>Sites that stand for one without a position.</summary>
    /// <param name="SpreadKm">Greatest distance from the middle.</param>
    private readonly record struct Neighbours(int Count, GeoPoint Middle, double SpreadKm)
    {
        public static readonly Neighbours None = new(0, default, double.PositiveInfinity);

        public static Neighbours Of(List<GeoPoint> points)
        {
            var middle = PositionSettler.Middle(points);
            return new(points.Count, middle, points.Max(p => Km(middle, p)));
        }
    }

    private static GeoPoint Middle(List<GeoPoint> points)
    {
        double Median(Func<GeoPoint, double> of) => points.Select(of).Order().ElementAt(points.Count / 2);
        return new(Median(p => p.LatitudeDegrees), Median(p => p.LongitudeDegrees));
    }

    private static double Km(GeoPoint a, GeoPoint b) => Geodesic.Between(a, b).LengthM / 1000;
}
