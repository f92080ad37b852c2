using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Kits;

namespace TenderKit.Documents.Drawings;

/// <summary>Battery against array at equal reliability, with what was chosen and the limits of the hand method.</summary>
internal static class EqualReliabilityPicture
{
    private const double MarginPt = 26;

    /// <param name="plot">The plot itself; its numbers stand in a margin to its left and below it.</param>
    public static void Draw(XGraphics g, XRect plot, KitCurve curve)
    {
        Pencil.Text(g, "Battery, Wh, for each array, Wp", Pencil.StrongLabel, plot.Left - MarginPt, plot.Top - 11);
        var axes = AxesOf(plot, curve, out var stepX, out var stepY);
        axes.DrawLevels(g, stepY, v => Figures.Number(v, 0));
        DrawAlong(g, axes, stepX);
        DrawLimits(g, axes, curve);
        XPoint[] line = [.. Inside(curve, axes).Select(p => axes.At(p.ArrayWp, p.BatteryWh))];
        if (line.Length > 1) g.DrawLines(Ink.Pen(Ink.FirmPt), line);
        foreach (var p in line) g.DrawEllipse(Ink.Pen(Ink.FirmPt), Ink.Fill(1), p.X - 1.8, p.Y - 1.8, 3.6, 3.6);
        DrawChosen(g, axes, curve, line);
    }

    private static Axes AxesOf(XRect plot, KitCurve curve, out double stepX, out double stepY)
    {
        var wp = curve.Points.Select(p => p.ArrayWp).Append(curve.Chosen.ArrayWp).Append(curve.HandArrayWp).Where(double.IsFinite).ToList();
        var wh = new[] { curve.Chosen.BatteryWh, curve.AutonomyBatteryWh }.Where(double.IsFinite).Append(1).Max();

        // the steep end of the curve may leave the plot: it must not flatten the rest
        var top = Math.Max(wh * 1.25, Math.Min(wh * 2.2, curve.Points.Select(p => p.BatteryWh).Append(0).Max()));
        stepX = Pencil.NiceStep(wp.Max() - (wp.Min() * 0.8), 4);
        stepY = Pencil.NiceStep(top, 4);
        var low = Math.Floor(wp.Min() * 0.9 / stepX) * stepX;
        return new Axes(plot, low, Math.Max(low + stepX, Math.Ceiling(wp.Max() * 1.02 / stepX) * stepX), 0, Math.Ceiling(top / stepY) * stepY);
    }

    private static IEnumerable<Sizing.Energy.CurvePoint> Inside(KitCurve curve, Axes axes) => curve.Points.Where(p => p.BatteryWh <= axes.YHigh);

    private static void DrawAlong(XGraphics g, Axes axes, double step)
    {
        for (var i = (int)Math.Ceiling((axes.XLow / step) - 1e-9); i * step <= axes.XHigh + (1e-9 * step); i++)
        {
            g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Dark), axes.X(i * step), axes.Area.Bottom, axes.X(i * step), axes.Area.Bottom + 2.5);
            Pencil.Text(g, Figures.Number(i * step, 0), Pencil.QuietLabel, axes.X(i * step), axes.Area.Bottom + 8, Anchor.Middle);
        }
    }

    private static void DrawLimits(XGraphics g, Axes axes, KitCurve curve)
    {
        if (double.IsFinite(curve.AutonomyBatteryWh))
        {
            var y = axes.Y(curve.AutonomyBatteryWh);
            g.DrawLine(Ink.Dashed(Ink.ThinPt, Ink.Dark, 3, 2), axes.Area.Left, y, axes.Area.Right, y);
            Pencil.Text(g, "autonomy", Pencil.QuietLabel, axes.Area.Right, y - 5, Anchor.End, whiteGround: true);
        }

        if (!double.IsFinite(curve.HandArrayWp)) return;
        var x = axes.X(curve.HandArrayWp);
        g.DrawLine(Ink.Dashed(Ink.ThinPt, Ink.Dark, 3, 2), x, axes.Area.Top, x, axes.Area.Bottom);
        var rightOf = x + Pencil.QuietLabel.Width("by hand") + 4 < axes.Area.Right;
        Pencil.Text(g, "by hand", Pencil.QuietLabel, rightOf ? x + 3 : x - 3, axes.Area.Top + 5, rightOf ? Anchor.Start : Anchor.End, whiteGround: true);
    }

    private static void DrawChosen(XGraphics g, Axes axes, KitCurve curve, XPoint[] line)
    {
        var at = axes.At(curve.Chosen.ArrayWp, curve.Chosen.BatteryWh);
        var text = $"{Figures.Short(curve.Chosen.ArrayWp)} Wp, {Figures.Number(curve.Chosen.BatteryWh, 0)} Wh";
        var half = (Pencil.StrongLabel.Width(text) / 2) + 3;
        XRect[] places =
        [
            .. from y in new[] { at.Y - 8, at.Y + 8, at.Y - 17, at.Y + 17 }
               from x in new[] { at.X + half, at.X - half, at.X }
               where x - half >= axes.Area.Left && x + half <= axes.Area.Right + 8 && y - 5 >= axes.Area.Top - 8 && y + 5 <= axes.Area.Bottom
               select FreePlace.Box(text, Pencil.StrongLabel, x, y),
        ];
        if (places.Length > 0)
        {
            var autonomy = new XRect(axes.Area.Right - 34, axes.Y(curve.AutonomyBatteryWh) - 9, 34, 10);
            var place = FreePlace.Of(places, line, autonomy);
            Pencil.Text(g, text, Pencil.StrongLabel, place.Left + (place.Width / 2), place.Top + (place.Height / 2), Anchor.Middle, whiteGround: true);
        }

        g.DrawRectangle(Ink.Fill(0), at.X - 2.6, at.Y - 2.6, 5.2, 5.2);
    }
}
