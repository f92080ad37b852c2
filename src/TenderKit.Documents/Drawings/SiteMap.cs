using System.Collections.Immutable;
using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Drawings;

/// <summary>
/// Map of the sites from their coordinates alone: degrees drawn with the true proportion of the mean latitude, a scale bar, north, lines of
/// latitude and longitude, lots by the shape of their mark, ids that do not cover one another.
/// </summary>
internal sealed class SiteMap
{
    /// <summary>Kilometres of a degree of latitude on the sphere of 6371.0088 km (IUGG mean radius, from memory).</summary>
    private const double KmPerDegree = 6371.0088 * Math.PI / 180;

    private const double GreatestPt = 380;
    private const double LeastPt = 150;
    private const double LeftPt = 44;
    private const double RightPt = 8;
    private const double HeadPt = 14;
    private const double FootPt = 44;
    private const double LeastSpanKm = 0.4;

    private readonly ImmutableArray<SiteDesign> _sites;
    private readonly ImmutableArray<string> _lots;
    private readonly ImmutableArray<MapMark> _marks;
    private readonly double _middleLatitude;
    private readonly double _middleLongitude;
    private readonly double _spanX;
    private readonly double _spanY;

    private SiteMap(ImmutableArray<SiteDesign> sites)
    {
        _sites = sites;
        _lots = [.. sites.Select(s => s.Site.Lot).Distinct().Order(StringComparer.Ordinal)];
        var points = sites.SelectMany(Points).ToImmutableArray();
        var (first, low, high) = (points[0].LongitudeDegrees, points.Min(p => p.LatitudeDegrees), points.Max(p => p.LatitudeDegrees));
        _middleLatitude = (low + high) / 2;
        var east = points.Select(p => Turned(p.LongitudeDegrees - first)).ToImmutableArray();
        _middleLongitude = first + ((east.Min() + east.Max()) / 2);
        _spanX = Math.Max((east.Max() - east.Min()) * Narrowing * KmPerDegree, LeastSpanKm) * 1.16;
        _spanY = Math.Max((high - low) * KmPerDegree, LeastSpanKm) * 1.16;
        var width = Paper.MeasurePt - LeftPt - RightPt;
        PtPerKm = Math.Min(width / _spanX, GreatestPt / _spanY);
        FrameHeightPt = Math.Max(LeastPt, _spanY * PtPerKm);
        _marks = Merge();
    }

    /// <summary>Points for a kilometre, the same in both directions.</summary>
    public double PtPerKm { get; }

    public double FrameHeightPt { get; }

    public double HeightPt => HeadPt + FrameHeightPt + FootPt;

    /// <summary>Ids for which there was no room.</summary>
    public ImmutableArray<string> LeftOut => [.. MapLabels.Place([.. Placed(Frame(new XRect(0, 0, Paper.MeasurePt, HeightPt)))], Frame(new XRect(0, 0, Paper.MeasurePt, HeightPt))).Where(l => l.Box is null).Select(l => l.Mark.Text)];

    private double Narrowing => Math.Cos(_middleLatitude * Math.PI / 180);

    /// <summary>The map, or null when no site states where it is.</summary>
    public static SiteMap? Of(TenderDesign design)
    {
        var sites = design.Sites.Where(s => s.Site.IsPositionStated).ToImmutableArray();
        return sites.IsEmpty ? null : new SiteMap(sites);
    }

    /// <summary>Where the marks stand when the map is drawn into an area, with their words.</summary>
    internal ImmutableArray<(string Text, XPoint At)> MarksIn(XRect area) => [.. Placed(Frame(area)).Select(m => (m.Text, m.At))];

    public Figure Figure()
    {
        var leftOut = LeftOut;
        return new Figure(HeightPt, Draw, "The sites where their coordinates put them, drawn with the true proportion at the mean latitude; no survey, no boundary is implied."
            + (leftOut.IsEmpty ? "" : $" For want of room {Figures.Count(leftOut.Length, "mark stands", "marks stand")} without an id."));
    }

    public void Draw(XGraphics g, XRect area)
    {
        var frame = Frame(area);
        Graticule(g, frame);
        foreach (var site in _sites) Drawn(g, frame, site);
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), frame);
        var labels = MapLabels.Place([.. Placed(frame)], frame);
        foreach (var label in labels.Where(l => l.IsLed))
            g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Dark), label.Mark.At, new XPoint(label.Box!.Value.Center.X, label.Box.Value.Center.Y));
        foreach (var label in labels) MapSigns.Draw(g, label.Mark.Sign, label.Mark.At);
        foreach (var label in labels.Where(l => l.Box is not null))
            Pencil.Text(g, label.Mark.Text, Pencil.StrongLabel, label.Box!.Value.Left + 1, label.Box.Value.Center.Y, whiteGround: label.IsLed);
        Foot(g, frame);
    }

    private static XRect Inside(XRect area, double height) => new(area.Left + LeftPt, area.Top + HeadPt, Paper.MeasurePt - LeftPt - RightPt, height);

    private static IEnumerable<GeoPoint> Points(SiteDesign site) =>
        (site.Site.Geometry?.Parts.SelectMany(p => p) ?? []).Append(new GeoPoint(site.Site.LatitudeDegrees, site.Site.LongitudeDegrees));

    private static double Turned(double degrees) => degrees - (360 * Math.Round(degrees / 360));

    private XRect Frame(XRect area) => Inside(area, FrameHeightPt);

    private XPoint At(XRect frame, GeoPoint p) => new(
        frame.Center.X + (Turned(p.LongitudeDegrees - _middleLongitude) * Narrowing * KmPerDegree * PtPerKm),
        frame.Center.Y - ((p.LatitudeDegrees - _middleLatitude) * KmPerDegree * PtPerKm));

    /// <summary>One mark for all sites of one point and lot.</summary>
    private ImmutableArray<MapMark> Merge() =>
        [.. _sites.GroupBy(s => (Math.Round(s.Site.LatitudeDegrees, 5), Math.Round(s.Site.LongitudeDegrees, 5)))
            .Select(g => new MapMark(new GeoPoint(g.First().Site.LatitudeDegrees, g.First().Site.LongitudeDegrees), Schedule.Words.List(g.Select(s => s.Site.Id), 4), _lots.IndexOf(g.First().Site.Lot)))];

    private IEnumerable<PlacedMark> Placed(XRect frame) => _marks.Select(m => new PlacedMark(At(frame, m.Point), m.Text, m.Lot));

    private void Drawn(XGraphics g, XRect frame, SiteDesign site)
    {
        foreach (var part in site.Site.Geometry?.Parts ?? [])
        {
            XPoint[] line = [.. part.Select(p => At(frame, p))];
            if (line.Length > 1) g.DrawLines(Ink.Pen(1.6, Ink.Mid), line);
        }
    }

    private void Graticule(XGraphics g, XRect frame)
    {
        var pen = Ink.Pen(Ink.HairPt, Ink.Light);
        var high = frame.Height / 2 / PtPerKm / KmPerDegree;
        var wide = frame.Width / 2 / PtPerKm / KmPerDegree / Narrowing;
        foreach (var latitude in Steps(_middleLatitude - high, _middleLatitude + high, 4, out var decimals))
        {
            var y = At(frame, new GeoPoint(latitude, _middleLongitude)).Y;
            g.DrawLine(pen, frame.Left, y, frame.Right, y);
            Pencil.Text(g, Angle(latitude, decimals, "N", "S"), Pencil.QuietLabel, frame.Left - 3, y, Anchor.End);
        }

        foreach (var longitude in Steps(_middleLongitude - wide, _middleLongitude + wide, 5, out var decimals))
        {
            var x = At(frame, new GeoPoint(_middleLatitude, longitude)).X;
            g.DrawLine(pen, x, frame.Top, x, frame.Bottom);
            if (x > frame.Left + 16 && x < frame.Right - 16) Pencil.Text(g, Angle(Turned(longitude), decimals, "E", "W"), Pencil.QuietLabel, x, frame.Top - 6, Anchor.Middle);
        }
    }

    private static IEnumerable<double> Steps(double low, double high, int parts, out int decimals)
    {
        var step = Pencil.NiceStep(high - low, parts);
        decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 6);
        var first = (int)Math.Ceiling(low / step);
        return Enumerable.Range(first, Math.Max(0, (int)Math.Floor(high / step) - first + 1)).Select(i => i * step);
    }

    private static string Angle(double degrees, int decimals, string positive, string negative) =>
        $"{Figures.Number(Math.Abs(degrees), decimals)}°{(degrees < 0 ? " " + negative : degrees > 0 ? " " + positive : "")}";

    private void Foot(XGraphics g, XRect frame)
    {
        var y = frame.Bottom + 16;
        var km = Pencil.NiceStep(frame.Width / PtPerKm / 2.5, 2);
        var (pen, end) = (Ink.Pen(Ink.FirmPt), frame.Left + (km * PtPerKm));
        g.DrawLine(pen, frame.Left, y, end, y);
        foreach (var (share, x) in new[] { (0.0, frame.Left), (0.5, (frame.Left + end) / 2), (1.0, end) })
        {
            g.DrawLine(pen, x, y - 3, x, y + 3);
            Pencil.Text(g, Figures.Short(km * share) + (share == 1 ? " km" : ""), Pencil.Label, x, y + 9, Anchor.Middle);
        }

        North(g, new XPoint(frame.Right - 8, frame.Bottom + 8));
        if (_lots.Length < 2) return;
        var left = frame.Left;
        for (var i = 0; i < _lots.Length && left < frame.Right - 40; i++)
        {
            MapSigns.Draw(g, i, new XPoint(left + 4, frame.Bottom + 36));
            var text = "Lot " + (_lots[i].Length == 0 ? "not stated" : _lots[i]);
            Pencil.Text(g, text, Pencil.Label, left + 12, frame.Bottom + 36);
            left += Pencil.Label.Width(text) + 30;
        }
    }

    private static void North(XGraphics g, XPoint tip)
    {
        g.DrawPolygon(Ink.Pen(Ink.ThinPt), Ink.Fill(Ink.Black), [tip, new XPoint(tip.X - 4, tip.Y + 13), new XPoint(tip.X, tip.Y + 10), new XPoint(tip.X + 4, tip.Y + 13)], XFillMode.Winding);
        Pencil.Text(g, "N", Pencil.StrongLabel, tip.X, tip.Y + 19, Anchor.Middle);
    }
}
