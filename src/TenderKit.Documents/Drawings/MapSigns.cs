using PdfSharp.Drawing;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Drawings;

/// <summary>Marks told apart by their shape, readable without colour.</summary>
internal static class MapSigns
{
    private const double R = 3;

    public static void Draw(XGraphics g, int number, XPoint at)
    {
        var (x, y) = (at.X, at.Y);
        var pen = Ink.Pen(Ink.FirmPt);
        var fill = Ink.Fill(number % 12 < 6 == (number % 2 == 0) ? Ink.Black : 1);
        switch (number % 6)
        {
            case 0: g.DrawEllipse(pen, fill, x - R, y - R, 2 * R, 2 * R); break;
            case 1: g.DrawRectangle(pen, fill, x - R, y - R, 2 * R, 2 * R); break;
            case 2: Polygon(g, pen, fill, (x, y - R), (x + R, y + R), (x - R, y + R)); break;
            case 3: Polygon(g, pen, fill, (x, y - R - 0.6), (x + R + 0.6, y), (x, y + R + 0.6), (x - R - 0.6, y)); break;
            case 4: Polygon(g, pen, fill, (x - R, y - R), (x + R, y - R), (x, y + R)); break;
            default: Polygon(g, pen, fill, (x - R, y - 1.6), (x, y - R - 0.6), (x + R, y - 1.6), (x + R, y + 1.6), (x, y + R + 0.6), (x - R, y + 1.6)); break;
        }
    }

    private static void Polygon(XGraphics g, XPen pen, XBrush fill, params (double X, double Y)[] corners) =>
        g.DrawPolygon(pen, fill, [.. corners.Select(c => new XPoint(c.X, c.Y))], XFillMode.Winding);
}
