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
    public const double WidthPt = 232;

    private const double RadiusPt = 90;
    private const double UpwardRadiusPt = 68;
    private const double TopPt = 17;
    private const double KeyPt = 9.5;
    private const int RadialDegrees = 30;
    private const double NothingFraction = 0.001; // of the peak: no more than the width of a line

    private readonly ImmutableArray<PolarCurve> _curves;
    private readonly PhotometricAnalysis _analysis;
    private readonly bool _upward;

    public PolarPicture(LightDistribution distribution, PhotometricAnalysis analysis)
    {
        (_curves, _analysis) = (PolarCurve.Usual(distribution), analysis);
        _upward = _curves.Any(c => c.Points.Any(p => Math.Abs(p.GammaDegrees) > 90 && p.IntensityCd > NothingFraction * analysis.PeakIntensityCd));
    }

    public double HeightPt => TopPt + (_upward ? (2 * UpwardRadiusPt) + 10 : RadiusPt) + 18 + (CurveCount * KeyPt);

    /// <summary>cd/klm for one cd.</summary>
    private double PerKlm => 1000 / _analysis.FluxLm;

    private int CurveCount => PeakAmongUsual < 0 ? 3 : 2;

    /// <summary>Which of the other two curves holds the greatest intensity; -1 when neither does.</summary>
    private int PeakAmongUsual => _curves.Take(2).ToList().FindIndex(c => Same(c.FirstPlaneDegrees) || Same(c.SecondPlaneDegrees));

    public void Draw(XGraphics g, XRect area)
    {
        var radius = _upward ? UpwardRadiusPt : RadiusPt;
        var centre = new XPoint(area.Left + (area.Width / 2), area.Top + TopPt + (_upward ? radius + 10 : 0));
        var scale = PolarScale.For(centre, radius, _analysis.PeakIntensityCd * PerKlm);
        Pencil.Text(g, "cd/klm", Pencil.QuietLabel, area.Left, area.Top + 5);
        DrawRadials(g, scale);
        DrawRings(g, scale);
        for (var i = 0; i < CurveCount; i++) g.DrawLines(PenOf(i), scale.Line(_curves[i].Points, PerKlm));
        g.DrawEllipse(Ink.Fill(Ink.Black), centre.X - 1.6, centre.Y - 1.6, 3.2, 3.2);
        DrawRingLabels(g, scale);
        for (var i = 0; i < CurveCount; i++) DrawKey(g, area.Left, area.Bottom - ((CurveCount - i - 0.5) * KeyPt), i);
    }

    private void DrawRadials(XGraphics g, PolarScale scale)
    {
        var last = _upward ? 150 : 90;
        for (var gamma = -last; gamma <= last; gamma += RadialDegrees)
        {
            g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Light), scale.Centre, scale.At(gamma, scale.OuterCdPerKlm));
            var (sin, cos) = Math.SinCos(gamma * Math.PI / 180);
            var anchor = gamma == 0 ? Anchor.Middle : gamma > 0 ? Anchor.Start : Anchor.End;
            Pencil.Text(g, Figures.Number(Math.Abs(gamma), 0) + "°", Pencil.QuietLabel, scale.Centre.X + ((scale.RadiusPt + 3) * sin),
                scale.Centre.Y + ((scale.RadiusPt + 7) * cos), anchor);
        }

        if (_upward) g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Light), scale.Centre, scale.At(180, scale.OuterCdPerKlm));
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

    /// <summary>The value of each ring: above the half disc, or up the axis of the whole one.</summary>
    private void DrawRingLabels(XGraphics g, PolarScale scale)
    {
        for (var ring = 1; ring <= scale.Rings; ring++)
        {
            var text = Figures.Short(ring * scale.StepCdPerKlm);
            var r = scale.Radius(ring * scale.StepCdPerKlm);
            if (_upward) Pencil.Text(g, text, Pencil.Label, scale.Centre.X, scale.Centre.Y - r, Anchor.Middle, whiteGround: true);
            else Pencil.Text(g, text, Pencil.Label, scale.Centre.X + r, scale.Centre.Y - 6, Anchor.Middle);
        }
    }

    private void DrawKey(XGraphics g, double x, double y, int curve)
    {
        var name = curve switch { 0 => "along the road", 1 => "across the road", _ => "greatest intensity" };
        var also = curve == PeakAmongUsual ? ", greatest intensity" : "";
        g.DrawLine(PenOf(curve), x, y, x + 28, y);
        Pencil.Text(g, $"{name}{also}: C {Figures.Short(_curves[curve].FirstPlaneDegrees)} right, C {Figures.Short(_curves[curve].SecondPlaneDegrees)} left",
            Pencil.Label, x + 34, y);
    }

    private bool Same(double planeDegrees) => Math.Abs(planeDegrees - _analysis.PeakPlaneDegrees) < 1e-9;

    private static XPen PenOf(int curve) => curve switch
    {
        0 => Ink.Pen(1.1),
        1 => Ink.Dashed(1.1, Ink.Black, 4.5, 2.5),
        _ => Ink.Dashed(1.3, Ink.Dark, 1.3, 2),
    };
}
