using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>
/// Plan of the light over one bay of a road or over a yard: bands of grey that grow lighter with the light, contour lines with their values,
/// the values of the grid, its least point and its average, the poles, the dimensions. To one scale in both directions, but a narrow
/// strip is drawn a whole number of times wider.
/// </summary>
internal sealed class LightPicture
{
    private const double LeftPt = 36;
    private const double RightPt = 14;
    private const double TopPt = 25;
    private const double BottomPt = 22;
    private const double GreatestPlanPt = 112;
    private const double LeastPlanPt = 40;

    private readonly LightSolution _light;
    private readonly LightField _field;
    private readonly double? _armReachM;
    private readonly double _beyondM;
    private readonly double _scalePt;
    private readonly double _acrossPt;

    public LightPicture(LightSolution light, double? armReachM)
    {
        (_light, _armReachM, _field) = (light, armReachM, new LightField(light.Result));
        _beyondM = Math.Max(0.4, LightPoles.Of(light, armReachM).SelectMany(p => new[] { p.LuminaireYM, p.FootYM ?? p.LuminaireYM })
            .Select(y => Math.Max(_field.Ys[0] - y, y - _field.Ys[^1])).DefaultIfEmpty(0).Max()) + 0.4;
        _scalePt = Math.Min((Paper.MeasurePt - LeftPt - RightPt) / LengthM, GreatestPlanPt / (WidthM + (2 * _beyondM)));
        Widened = Math.Max(1, (int)Math.Ceiling(LeastPlanPt / (WidthM * _scalePt)));
        _acrossPt = _scalePt * Widened;
    }

    /// <summary>How many times the width is drawn wider than the length.</summary>
    public int Widened { get; }

    public double HeightPt => ((WidthM + (2 * _beyondM)) * _acrossPt) + TopPt + BottomPt;

    private double LengthM => _field.Xs[^1] - _field.Xs[0];

    private double WidthM => _field.Ys[^1] - _field.Ys[0];

    public void Draw(XGraphics g, XRect area)
    {
        var plan = new XRect(area.Left + LeftPt, area.Top + TopPt + (_beyondM * _acrossPt), LengthM * _scalePt, WidthM * _acrossPt);
        var axes = new Axes(plan, _field.Xs[0], _field.Xs[^1], _field.Ys[0], _field.Ys[^1]);
        DrawFigures(g, area);
        DrawBands(g, axes);
        var labels = DrawContourLines(g, axes);
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), plan);
        var taken = DrawPoints(g, axes);
        foreach (var (line, text) in labels) DrawLabel(g, plan, line, text, taken);
        DrawPoles(g, axes);
        DrawDimensions(g, plan);
    }

    private void DrawFigures(XGraphics g, XRect area)
    {
        var r = _light.Result;
        var text = $"Average {Figures.Number(r.AverageLx, 2)} lx    minimum {Figures.Number(r.MinimumLx, 2)} lx (ringed)    maximum "
            + $"{Figures.Number(r.MaximumLx, 2)} lx    Uo {Figures.Number(r.OverallUniformity, 2)}    level {Figures.Percent(_light.LevelFraction)}";
        Pencil.Text(g, text, Pencil.StrongLabel, area.Left, area.Top + 5);
        Pencil.Text(g, "Values in lx. Dashed line: the grid average." + (Widened > 1 ? $" Width drawn {Widened} times wider." : ""), Pencil.QuietLabel,
            area.Left, area.Top + 15);
    }

    private void DrawBands(XGraphics g, Axes axes)
    {
        var levels = Contours.Levels(_light.Result.MinimumLx, _light.Result.MaximumLx);
        g.DrawRectangle(Ink.Fill(Grey(0, levels.Length)), axes.Area);
        for (var k = 0; k < levels.Length; k++)
        {
            var grey = Grey(k + 1, levels.Length);
            foreach (var triangle in _field.Triangles())
            {
                var corners = Contours.Above(triangle, levels[k]);
                if (corners.Count >= 3) g.DrawPolygon(Ink.Pen(0.25, grey), Ink.Fill(grey), [.. corners.Select(p => axes.At(p.XM, p.YM))], XFillMode.Winding);
            }
        }
    }

    private static double Grey(int band, int levels) => levels == 0 ? 1 : 0.8 + (0.2 * band / levels);

    private List<(List<XPoint> Line, string Text)> DrawContourLines(XGraphics g, Axes axes)
    {
        var labels = new List<(List<XPoint> Line, string Text)>();
        foreach (var level in Contours.Levels(_light.Result.MinimumLx, _light.Result.MaximumLx))
        {
            DrawContour(g, axes, level, Ink.Pen(Ink.ThinPt, Ink.Mid), Figures.Short(level), labels);
        }

        DrawContour(g, axes, _light.Result.AverageLx, Ink.Dashed(Ink.FirmPt, Ink.Black, 3, 1.6), "", labels);
        return labels;
    }

    private void DrawContour(XGraphics g, Axes axes, double level, XPen pen, string label, List<(List<XPoint> Line, string Text)> labels)
    {
        var lines = ContourPaths.Join([.. Contours.Lines(_field, level)]).ConvertAll(l => l.ConvertAll(p => axes.At(p.X, p.Y)));
        foreach (var line in lines) g.DrawLines(pen, [.. line]);
        if (lines.Count > 0 && label.Length > 0) labels.Add((lines.MaxBy(l => l.Count)!, label));
    }

    /// <summary>Writes a contour's value where the contour is farthest from other writing.</summary>
    private static void DrawLabel(XGraphics g, XRect plan, List<XPoint> line, string text, List<XPoint> taken)
    {
        var at = line.MaxBy(p => Math.Min(Room(p, taken), 3 * Math.Min(Math.Min(p.X - plan.Left, plan.Right - p.X),
            Math.Min(p.Y - plan.Top, plan.Bottom - p.Y))));
        Pencil.Text(g, text, Pencil.Label, at.X, at.Y, Anchor.Middle, whiteGround: true);
        taken.Add(at);
    }

    /// <summary>Distance to the nearest writing, counting height double since words are wider than tall.</summary>
    private static double Room(XPoint p, List<XPoint> taken) => taken.Select(t => Math.Sqrt(((p.X - t.X) * (p.X - t.X)) + (4 * (p.Y - t.Y) * (p.Y - t.Y))))
        .DefaultIfEmpty(1000).Min();

    private List<XPoint> DrawPoints(XGraphics g, Axes axes)
    {
        var taken = new List<XPoint>();
        var everyX = Every((axes.X(_field.Xs[2]) - axes.X(_field.Xs[1])) / 22);
        var everyY = Every((axes.Y(_field.Ys[1]) - axes.Y(_field.Ys[2])) / 12);
        for (var i = 1; i + 1 < _field.Xs.Length; i++)
        {
            for (var j = 1; j + 1 < _field.Ys.Length; j++)
            {
                var at = axes.At(_field.Xs[i], _field.Ys[j]);
                if ((i - 1) % everyX == 0 && (j - 1) % everyY == 0)
                {
                    Pencil.Text(g, Figures.Number(_field.ValueLx(i, j), 1), Pencil.Label, at.X, at.Y, Anchor.Middle);
                    taken.Add(at);
                }
                else
                {
                    g.DrawEllipse(Ink.Fill(Ink.Dark), at.X - 0.6, at.Y - 0.6, 1.2, 1.2);
                }
            }
        }

        var least = _light.Result.Points.MinBy(p => p.IlluminanceLx);
        g.DrawEllipse(Ink.Pen(Ink.FirmPt), axes.X(least.XM) - 8, axes.Y(least.YM) - 6, 16, 12);
        return taken;
    }

    private static int Every(double room) => room >= 1 ? 1 : (int)Math.Ceiling(1 / room);

    private void DrawPoles(XGraphics g, Axes axes)
    {
        var inside = LightPoles.Of(_light, _armReachM).Where(p => p.XM >= _field.Xs[0] - 0.01 && p.XM <= _field.Xs[^1] + 0.01);
        foreach (var pole in inside)
        {
            var (x, lamp) = (axes.X(pole.XM), axes.Y(pole.LuminaireYM));
            if (pole.FootYM is { } footYM)
            {
                var foot = axes.Y(footYM);
                g.DrawLine(Ink.Pen(Ink.FirmPt), x, foot, x, lamp);
                g.DrawEllipse(Ink.Pen(Ink.FirmPt), Ink.Fill(1), x - 2.6, foot - 2.6, 5.2, 5.2);
            }

            g.DrawRectangle(Ink.Fill(Ink.Black), x - 2, lamp - 2.5, 4, 5);
        }
    }

    private void DrawDimensions(XGraphics g, XRect plan)
    {
        var y = plan.Bottom + (_beyondM * _acrossPt) + 12;
        Pencil.Dimension(g, new XPoint(plan.Left, y), new XPoint(plan.Right, y), Figures.Number(LengthM, 1) + " m");
        Pencil.Dimension(g, new XPoint(plan.Left - 9, plan.Top), new XPoint(plan.Left - 9, plan.Bottom), Figures.Number(WidthM, 1) + " m");
    }
}
