using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>Plan of the light over an area as it is drawn, north up: its outline and openings, the light at the points of its grid, the poles.</summary>
internal static class AreaPicture
{
    private const double MarginPt = 18;
    private const double TopPt = 26;
    private const double BottomPt = 22;
    private const double GreatestPlanPt = 230;

    public static double HeightPt(AreaLayout layout) => (layout.Area.WidthM * ScalePt(layout)) + TopPt + BottomPt + (2 * MarginPt);

    public static void Draw(XGraphics g, XRect box, LightSolution light, AreaLayout layout)
    {
        var (area, scale) = (layout.Area, ScalePt(layout));
        XPoint At(double x, double y) => new(box.Left + MarginPt + ((x - area.LeftM) * scale), box.Top + TopPt + MarginPt + ((area.BottomM + area.WidthM - y) * scale));
        var r = light.Result;
        Pencil.Text(g, $"Average {Figures.Number(r.AverageLx, 2)} lx    minimum {Figures.Number(r.MinimumLx, 2)} lx (ringed)    maximum {Figures.Number(r.MaximumLx, 2)} lx    Uo {Figures.Number(r.OverallUniformity, 2)}    level {Figures.Percent(light.LevelFraction)}", Pencil.StrongLabel, box.Left, box.Top + 5);
        Pencil.Text(g, "Circle: pole. Square: lamp.", Pencil.QuietLabel, box.Left, box.Top + 15);
        Outline(g, area.Vertices, Ink.Fill(0.96), At);
        foreach (var hole in area.Holes) Outline(g, hole, Ink.Fill(0.75), At);
        DrawValues(g, r, At);
        foreach (var lamp in layout.Luminaires) DrawPole(g, layout.FootOf(lamp), lamp, At);
        DrawDimensions(g, box, layout, scale);
    }

    private static double ScalePt(AreaLayout layout) =>
        Math.Min((Paper.MeasurePt - (2 * MarginPt)) / layout.Area.LengthM, GreatestPlanPt / layout.Area.WidthM);

    private static void Outline(XGraphics g, IEnumerable<PlanPoint> ring, XBrush fill, Func<double, double, XPoint> at) =>
        g.DrawPolygon(Ink.Pen(Ink.FirmPt), fill, [.. ring.Select(p => at(p.XM, p.YM))], XFillMode.Alternate);

    private static void DrawValues(XGraphics g, LightResult result, Func<double, double, XPoint> at)
    {
        var written = new List<XPoint>();
        foreach (var point in result.Points)
        {
            var place = at(point.XM, point.YM);
            if (written.TrueForAll(w => Math.Abs(w.X - place.X) >= 20 || Math.Abs(w.Y - place.Y) >= 10))
            {
                Pencil.Text(g, Figures.Number(point.IlluminanceLx, 1), Pencil.Label, place.X, place.Y, Anchor.Middle);
                written.Add(place);
            }
            else
            {
                g.DrawEllipse(Ink.Fill(Ink.Dark), place.X - 0.5, place.Y - 0.5, 1, 1);
            }
        }

        var least = result.Points.MinBy(p => p.IlluminanceLx);
        var ring = at(least.XM, least.YM);
        g.DrawEllipse(Ink.Pen(Ink.FirmPt), ring.X - 9, ring.Y - 6, 18, 12);
    }

    private static void DrawPole(XGraphics g, PlanPoint foot, LuminairePosition lamp, Func<double, double, XPoint> at)
    {
        var (from, to) = (at(foot.XM, foot.YM), at(lamp.XM, lamp.YM));
        g.DrawLine(Ink.Pen(Ink.FirmPt), from, to);
        g.DrawEllipse(Ink.Pen(Ink.FirmPt), Ink.Fill(1), from.X - 2.6, from.Y - 2.6, 5.2, 5.2);
        g.DrawRectangle(Ink.Fill(Ink.Black), to.X - 2, to.Y - 2, 4, 4);
    }

    private static void DrawDimensions(XGraphics g, XRect box, AreaLayout layout, double scale)
    {
        var (left, top) = (box.Left + MarginPt, box.Top + TopPt + MarginPt);
        var (right, bottom) = (left + (layout.Area.LengthM * scale), top + (layout.Area.WidthM * scale));
        var y = bottom + MarginPt + 8;
        Pencil.Dimension(g, new XPoint(left, y), new XPoint(right, y), Figures.Number(layout.Area.LengthM, 1) + " m");
        Pencil.Dimension(g, new XPoint(left - 12, top), new XPoint(left - 12, bottom), Figures.Number(layout.Area.WidthM, 1) + " m");
    }
}
