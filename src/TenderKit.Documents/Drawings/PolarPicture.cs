using System.Collections.Immutable;
using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>
/// Polar diagram of a light distribution, in candela for each 1000 lm that leave the luminaire: along the road solid, across it dashed, the
/// plane of the greatest intensity dotted. The upper half is drawn only when light goes there.
/// </summary>
internal sealed class PolarPicture
{
    public const double HeightPt = 158;

    private const double LegendPt = 190;
    private const double RadialDegrees = 30;
    private const double NothingFraction = 0.001; // of the peak: thinner than a line

    private readonly ImmutableArray<PolarCurve> _curves;
    private readonly PhotometricAnalysis _analysis;
    private readonly bool _upward;

    public PolarPicture(LightDistribution distribution, PhotometricAnalysis analysis)
    {
        (_curves, _analysis) = (PolarCurve.Usual(distribution), analysis);
        _upward = _curves.Any(c => c.Points.Any(p => Math.Abs(p.GammaDegrees) > 90 && p.IntensityCd > NothingFraction * analysis.PeakIntensityCd));
    }

    /// <summary>cd/klm for one cd.</summary>
    private double PerKlm => 1000 / _analysis.FluxLm;

    /// <summary>Whether the plane of the greatest intensity is one of the other two.</summary>
    private int PeakAmongUsual => _curves.Take(2).ToList().FindIndex(c => Same(c.FirstPlaneDegrees) || Same(c.SecondPlaneDegrees));

    public void Draw(XGraphics g, XRect area)
    {
        var room = area.Height - 26;
        var radius = Math.Min(_upward ? room / 2 : room, (area.Width - LegendPt - 60) / 2);
        var centre = new XPoint(area.Left + 30 + radius, area.Top + 10 + (_upward ? radius : 0));
        var scale = PolarScale.For(centre, radius, _analysis.PeakIntensityCd * PerKlm);
        DrawRadials(g, scale);
        DrawRings(g, scale);
        DrawCurves(g, scale);
        DrawRingLabels(g, scale);
        DrawLegend(g, area.Right - LegendPt, area.Top + 12);
    }

    private void DrawRadials(XGraphics g, PolarScale scale)
    {
        var last = _upward ? 180 : 90;
        for (var gamma = -last; gamma <= last; gamma += (int)RadialDegrees)
        {
            if (gamma == -180) continue;
            g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Light), scale.Centre, scale.At(gamma, scale.OuterCdPerKlm));
            var (sin, cos) = Math.SinCos(gamma * Math.PI / 180);
            var anchor = Math.Abs(sin) < 0.01 ? Anchor.Middle : sin > 0 ? Anchor.Start : Anchor.End;
            Pencil.Text(g, Figures.Number(Math.Abs(gamma), 0) + "°", Pencil.QuietLabel, scale.Centre.X + ((scale.RadiusPt + 3) * sin),
                scale.Centre.Y + ((scale.RadiusPt + 7) * cos), anchor);
        }
    }

    private void DrawRings(XGraphics g, PolarScale scale)
    {
        for (var ring = 1; ring <= scale.Rings; ring++)
        {
            var r = scale.Radius(ring * scale.StepCdPerKlm);
            var pen = ring == scale.Rings ? Ink.Pen(Ink.ThinPt, Ink.Mid) : Ink.Pen(Ink.HairPt, Ink.Light);
            if (_upward) g.DrawEllipse(pen, scale.Centre.X - r, scale.Centre.Y - r, 2 * r, 2 * r);
            else g.DrawArc(pen, scale.Centre.X - r, scale.Centre.Y - r, 2 * r, 2 * r, 0, 180);
        }
    }

    private void DrawCurves(XGraphics g, PolarScale scale)
    {
        for (var i = 0; i < (PeakAmongUsual < 0 ? _curves.Length : 2); i++) g.DrawLines(PenOf(i), scale.Line(_curves[i].Points, PerKlm));
        g.DrawEllipse(Ink.Fill(Ink.Black), scale.Centre.X - 1.6, scale.Centre.Y - 1.6, 3.2, 3.2);
    }

    /// <summary>The value of each ring, along the radius where the curves leave most room.</summary>
    private void DrawRingLabels(XGraphics g, PolarScale scale)
    {
        var curves = _curves.SelectMany(c => scale.Line(c.Points, PerKlm)).ToImmutableArray();
        var gamma = new[] { 15.0, -15, 45, -45, 75, -75 }.MaxBy(angle => Enumerable.Range(1, scale.Rings)
            .Min(ring => curves.Min(p => Distance(p, scale.At(angle, ring * scale.StepCdPerKlm)))));
        for (var ring = 1; ring <= scale.Rings; ring++)
        {
            var at = scale.At(gamma, ring * scale.StepCdPerKlm);
            Pencil.Text(g, Figures.Short(ring * scale.StepCdPerKlm), Pencil.Label, at.X, at.Y, Anchor.Middle, whiteGround: true);
        }
    }

    private void DrawLegend(XGraphics g, double x, double top)
    {
        Pencil.Text(g, "Candela for each 1000 lm of the luminaire", Pencil.StrongLabel, x, top);
        Pencil.Text(g, $"× {Figures.Number(_analysis.FluxLm / 1000, 3)} for cd at full output", Pencil.QuietLabel, x, top + 10);
        var same = PeakAmongUsual;
        DrawKey(g, x, top + 28, 0, "along the road" + (same == 0 ? " and greatest intensity" : ""));
        DrawKey(g, x, top + 54, 1, "across the road" + (same == 1 ? " and greatest intensity" : ""));
        if (same < 0) DrawKey(g, x, top + 80, 2, "through the greatest intensity");
        Pencil.Text(g, "C 90 points to the street side, C 270 to the house side;", Pencil.QuietLabel, x, top + (same < 0 ? 108 : 82));
        Pencil.Text(g, "angles from straight down.", Pencil.QuietLabel, x, top + (same < 0 ? 116 : 90));
    }

    private void DrawKey(XGraphics g, double x, double y, int curve, string name)
    {
        g.DrawLine(PenOf(curve), x, y, x + 26, y);
        Pencil.Text(g, name, Pencil.Label, x + 32, y);
        Pencil.Text(g, $"C {Figures.Short(_curves[curve].FirstPlaneDegrees)} right, C {Figures.Short(_curves[curve].SecondPlaneDegrees)} left", Pencil.QuietLabel,
            x + 32, y + 9);
    }

    private bool Same(double planeDegrees) => Math.Abs(planeDegrees - _analysis.PeakPlaneDegrees) < 1e-9;

    private static double Distance(XPoint a, XPoint b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

    private static XPen PenOf(int curve) => curve switch
    {
        0 => Ink.Pen(1.1),
        1 => Ink.Dashed(1.1, Ink.Black, 4.5, 2.5),
        _ => Ink.Dashed(1.3, Ink.Dark, 1.3, 2),
    };
}
