using PdfSharp.Drawing;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Drawings;

/// <summary>A plot area with a scale in each direction.</summary>
internal sealed record Axes(XRect Area, double XLow, double XHigh, double YLow, double YHigh)
{
    public double X(double value) => Area.Left + ((value - XLow) / (XHigh - XLow) * Area.Width);

    public double Y(double value) => Area.Bottom - ((value - YLow) / (YHigh - YLow) * Area.Height);

    public XPoint At(double x, double y) => new(X(x), Y(y));

    /// <summary>Levels across the plot with their numbers in the margin, and the base line.</summary>
    public void DrawLevels(XGraphics g, double step, Func<double, string> label)
    {
        for (var i = (int)Math.Ceiling((YLow / step) - 1e-9); (i * step) <= YHigh + (1e-9 * step); i++)
        {
            var y = Y(i * step);
            g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Light), Area.Left, y, Area.Right, y);
            Pencil.Text(g, label(i * step), Pencil.QuietLabel, Area.Left - 5, y, Anchor.End);
        }

        g.DrawLine(Ink.Pen(Ink.ThinPt), Area.Left, Area.Bottom, Area.Right, Area.Bottom);
    }
}
