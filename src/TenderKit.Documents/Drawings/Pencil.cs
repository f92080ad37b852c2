using PdfSharp.Drawing;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Drawings;

internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>
/// Small drawing habits shared by all pictures. They are drawn with the PDF library's own pen: of the pictures only the two energy
/// curves are plots, their text stays selectable in the document's one font, and no native drawing library has to be carried along.
/// </summary>
internal static class Pencil
{
    public static readonly TextStyle Label = new(6.5, 8);
    public static readonly TextStyle QuietLabel = new(6.5, 8, Grey: Ink.Dark);
    public static readonly TextStyle StrongLabel = new(6.5, 8, Strong: true);

    /// <summary>Text with its vertical middle at <paramref name="y"/>; on a white ground when it crosses lines.</summary>
    public static void Text(XGraphics g, string text, TextStyle style, double x, double y, Anchor anchor = Anchor.Start, bool whiteGround = false)
    {
        var drawable = Fonts.Drawable(Wording.Current.Say(text));
        var width = style.Width(drawable);
        var left = anchor switch { Anchor.Start => x, Anchor.Middle => x - (width / 2), _ => x - width };
        if (whiteGround) g.DrawRectangle(Ink.Fill(1), left - 1.2, y - (style.Size * 0.55), width + 2.4, style.Size * 1.1);
        g.DrawString(drawable, style.Font, style.Brush, left, y + (style.Size * 0.36));
    }

    /// <summary>A dimension line with end strokes and its text over the middle (across) or beside it (upright).</summary>
    public static void Dimension(XGraphics g, XPoint from, XPoint to, string text)
    {
        var pen = Ink.Pen(Ink.HairPt, Ink.Dark);
        var upright = Math.Abs(from.X - to.X) < Math.Abs(from.Y - to.Y);
        var (dx, dy) = upright ? (2.5, 0.0) : (0.0, 2.5);
        g.DrawLine(pen, from, to);
        g.DrawLine(pen, from.X - dx, from.Y - dy, from.X + dx, from.Y + dy);
        g.DrawLine(pen, to.X - dx, to.Y - dy, to.X + dx, to.Y + dy);
        var (x, y) = ((from.X + to.X) / 2, (from.Y + to.Y) / 2);
        if (upright) Text(g, text, Label, x - 4, y, Anchor.End, whiteGround: true);
        else if (Math.Abs(to.X - from.X) < Label.Width(text) + 12) Text(g, text, Label, x, y + 8, Anchor.Middle);
        else Text(g, text, Label, x, y, Anchor.Middle, whiteGround: true);
    }

    /// <summary>A step of 1, 2 or 5 times a power of ten that cuts a range into about so many parts.</summary>
    public static double NiceStep(double range, int parts)
    {
        if (range <= 0) return 1;
        var raw = range / parts;
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var lead = raw / power;
        return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }
}
