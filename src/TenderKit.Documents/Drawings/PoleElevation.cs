using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Structure;

namespace TenderKit.Documents.Drawings;

/// <summary>What the elevation of a pole is drawn from, m and degrees.</summary>
internal sealed record ElevationFacts(
    double PoleHeightM,
    double BaseDiameterM,
    double TopDiameterM,
    double ArmReachM,
    double ArmTiltDegrees,
    double LuminaireHeightM,
    double ModuleLengthM,
    double ModuleTiltDegrees,
    double EnclosureHeightM,
    BlockFoundation Block,
    double AnchorBoltLengthM)
{
    /// <summary>Whether the module lies on the lamp head and no box hangs on the pole.</summary>
    public bool IsIntegrated { get; init; }

    /// <summary>Side of the base plate, m; 0 when not known.</summary>
    public double BasePlateM { get; init; }

    /// <summary>Side of the square the bolts stand on, m; 0 when not known.</summary>
    public double BoltSpacingM { get; init; }

    /// <summary>Length of the shaft below ground, m; 0 for a flanged pole.</summary>
    public double BuriedM { get; init; }

    /// <summary>What holds the foot, in words; empty to say nothing.</summary>
    public string Foot { get; init; } = "";

    /// <summary>Lower edge, height and width of the door, m; null without one or when it is not known.</summary>
    public (double BottomM, double HeightM, double WidthM)? Door { get; init; }
}

/// <summary>Elevation of one pole to scale: foundation, shaft, arm and luminaire, enclosure, module at its tilt, with dimensions.</summary>
internal sealed class PoleElevation(ElevationFacts facts)
{
    public const double WidthPt = 268;
    public const double HeightPt = 190;

    private const double EnclosureWidthM = 0.4;
    private const double EnclosureTallM = 0.5;

    private double RiseM => facts.ModuleLengthM / 2 * Math.Sin(facts.ModuleTiltDegrees * Math.PI / 180);

    private double TopM => facts.PoleHeightM + RiseM + 0.45;

    public void Draw(XGraphics g, XRect area)
    {
        var scale = (area.Height - 20) / (TopM + facts.Block.DepthM + 0.2);
        var axis = area.Left + 96;
        var ground = area.Top + (TopM * scale);
        var half = area.Width / scale / 2;
        var axes = new Axes(new XRect(axis - (half * scale), area.Top, 2 * half * scale, area.Height), -half, half, TopM - (area.Height / scale), TopM);
        DrawGround(g, axes, axis, ground, scale);
        DrawShaft(g, axes);
        DrawArm(g, axes);
        if (facts.IsIntegrated) DrawModuleOnHead(g, axes);
        else DrawModule(g, axes);
        DrawDimensions(g, axes);
        DrawLabels(g, axes, area);
    }

    private void DrawGround(XGraphics g, Axes axes, double axis, double ground, double scale)
    {
        var left = axis - (facts.Block.LengthM / 2 * scale);
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), Ink.Fill(Ink.Light), left, ground, facts.Block.LengthM * scale, facts.Block.DepthM * scale);
        g.DrawLine(Ink.Pen(Ink.FirmPt), axis - 84, ground, axis + 60, ground);
        for (var x = axis - 82; x < axis + 56; x += 9)
        {
            if (x < left - 4 || x > left + (facts.Block.LengthM * scale) + 4) g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Mid), x, ground + 5, x + 5, ground);
        }

        if (facts.BuriedM > 0) DrawBuried(g, axes);
        else DrawFlange(g, axes, ground);
    }

    private void DrawFlange(XGraphics g, Axes axes, double ground)
    {
        var boltM = facts.BoltSpacingM > 0 ? facts.BoltSpacingM / 2 : facts.BaseDiameterM * 0.8;
        var plateM = facts.BasePlateM > 0 ? facts.BasePlateM / 2 : facts.BaseDiameterM;
        foreach (var side in new[] { -1, 1 })
        {
            var x = axes.X(side * boltM);
            g.DrawLine(Ink.Pen(Ink.ThinPt), x, ground - 2, x, axes.Y(-Math.Min(facts.AnchorBoltLengthM, facts.Block.DepthM)));
        }

        g.DrawLine(Ink.Pen(1.6), axes.X(-plateM), ground - 0.8, axes.X(plateM), ground - 0.8);
    }

    /// <summary>The shaft goes on below ground inside its concrete.</summary>
    private void DrawBuried(XGraphics g, Axes axes)
    {
        var (half, bottom) = (facts.BaseDiameterM / 2, -Math.Min(facts.BuriedM, facts.Block.DepthM));
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), Ink.Fill(1), new XRect(axes.At(-half, 0), axes.At(half, bottom)));
    }

    private void DrawShaft(XGraphics g, Axes axes)
    {
        XPoint[] shaft =
        [
            axes.At(-facts.BaseDiameterM / 2, 0), axes.At(facts.BaseDiameterM / 2, 0), axes.At(facts.TopDiameterM / 2, facts.PoleHeightM),
                axes.At(-facts.TopDiameterM / 2, facts.PoleHeightM),
        ];
        g.DrawPolygon(Ink.Pen(Ink.ThinPt), Ink.Fill(1), shaft, XFillMode.Winding);
        if (facts.Door is var (doorM, tallM, wideM))
            g.DrawRectangle(Ink.Pen(Ink.HairPt), Ink.Fill(Ink.Light), new XRect(axes.At(-wideM / 2, doorM + tallM), axes.At(wideM / 2, doorM)));
        if (facts.IsIntegrated) return;
        var box = new XRect(axes.At(-EnclosureWidthM / 2, facts.EnclosureHeightM + (EnclosureTallM / 2)),
            axes.At(EnclosureWidthM / 2, facts.EnclosureHeightM - (EnclosureTallM / 2)));
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), Ink.Fill(Ink.Tint), box);
    }

    private void DrawArm(XGraphics g, Axes axes)
    {
        var rise = Math.Tan(facts.ArmTiltDegrees * Math.PI / 180);
        var root = facts.LuminaireHeightM - (facts.ArmReachM * rise);
        g.DrawLine(Ink.Pen(1.4), axes.At(0, root), axes.At(facts.ArmReachM, facts.LuminaireHeightM));
        g.DrawLine(Ink.Pen(3.4), axes.At(Math.Max(0, facts.ArmReachM - 0.28), facts.LuminaireHeightM - (0.28 * rise)),
            axes.At(facts.ArmReachM + 0.28, facts.LuminaireHeightM + (0.28 * rise)));
    }

    private void DrawModule(XGraphics g, Axes axes)
    {
        var halfRun = facts.ModuleLengthM / 2 * Math.Cos(facts.ModuleTiltDegrees * Math.PI / 180);
        var centre = facts.PoleHeightM + 0.25;
        g.DrawLine(Ink.Pen(1.2), axes.At(0, facts.PoleHeightM), axes.At(0, centre));
        g.DrawLine(Ink.Pen(2.6), axes.At(-halfRun, centre - RiseM), axes.At(halfRun, centre + RiseM));
        g.DrawLine(Ink.Dashed(Ink.HairPt, Ink.Mid, 2, 1.5), axes.At(-halfRun, centre - RiseM), axes.At(halfRun, centre - RiseM));
    }

    /// <summary>The module lies on the head, which is drawn along the arm.</summary>
    private void DrawModuleOnHead(XGraphics g, Axes axes)
    {
        const double aboveM = 0.12;
        var run = Math.Cos(facts.ArmTiltDegrees * Math.PI / 180) * facts.ModuleLengthM / 2;
        var rise = Math.Tan(facts.ArmTiltDegrees * Math.PI / 180) * run;
        var (x, y) = (facts.ArmReachM, facts.LuminaireHeightM + aboveM);
        g.DrawLine(Ink.Pen(2.6), axes.At(x - run, y - rise), axes.At(x + run, y + rise));
    }

    private void DrawDimensions(XGraphics g, Axes axes)
    {
        var left = axes.X(0) - 66;
        Upright(g, axes, left, 0, facts.PoleHeightM);
        Upright(g, axes, left, -facts.Block.DepthM, 0);
        if (!facts.IsIntegrated) Upright(g, axes, left + 28, 0, facts.EnclosureHeightM);
        var right = axes.X(0) + 50;
        Pencil.Dimension(g, new XPoint(right, axes.Y(facts.LuminaireHeightM)), new XPoint(right, axes.Y(0)), "");
        Pencil.Text(g, Figures.Number(facts.LuminaireHeightM, 2) + " m", Pencil.Label, right - 4, axes.Y(facts.LuminaireHeightM * 0.75), Anchor.End, whiteGround: true);
        var y = axes.Y(-facts.Block.DepthM) + 8;
        Pencil.Dimension(g, new XPoint(axes.X(-facts.Block.LengthM / 2), y), new XPoint(axes.X(facts.Block.LengthM / 2), y),
            Figures.Number(facts.Block.LengthM, 2) + " m");
    }

    private static void Upright(XGraphics g, Axes axes, double x, double lowM, double highM) =>
        Pencil.Dimension(g, new XPoint(x, axes.Y(highM)), new XPoint(x, axes.Y(lowM)), Figures.Number(highM - lowM, 2) + " m");

    private void DrawLabels(XGraphics g, Axes axes, XRect area)
    {
        var x = area.Left + 158;
        if (facts.IsIntegrated) LabelUnit(g, axes, x);
        else LabelParts(g, axes, x);
        if (facts.Door is var (doorM, tallM, wideM))
            Leader(g, axes.At(wideM / 2, doorM + (tallM / 2)), x, $"door {Figures.Number(wideM * 1000, 0)} × {Figures.Number(tallM * 1000, 0)} mm, {Figures.Number(doorM, 2)} m above ground");
        Leader(g, axes.At(facts.BaseDiameterM * 0.45, Math.Max(1.7, facts.Door is var (b, t, _) ? b + t + 0.5 : 0)), x, "tapered tube " + Figures.Number(facts.BaseDiameterM * 1000, 0) + " to "
            + Figures.Number(facts.TopDiameterM * 1000, 0) + " mm");
        if (facts.Foot.Length > 0) Leader(g, axes.At(Math.Max(facts.BasePlateM, facts.BaseDiameterM) / 2, 0.15), x, facts.Foot);
        Leader(g, axes.At(facts.Block.LengthM / 2, -facts.Block.DepthM / 2), x,
            $"{(facts.BuriedM > 0 ? "concrete" : "block")} {Figures.Number(facts.Block.LengthM, 2)} × {Figures.Number(facts.Block.WidthM, 2)} × {Figures.Number(facts.Block.DepthM, 2)} m deep");
    }

    private void LabelUnit(XGraphics g, Axes axes, double x)
    {
        Leader(g, axes.At(facts.ArmReachM + 0.3, facts.LuminaireHeightM + 0.2), x, "module on the head, " + Figures.Number(facts.ModuleTiltDegrees, 0) + "° from level");
        Leader(g, axes.At(facts.ArmReachM + 0.28, facts.LuminaireHeightM - 0.1), x, "integrated unit, reach " + Figures.Number(facts.ArmReachM, 2) + " m");
    }

    private void LabelParts(XGraphics g, Axes axes, double x)
    {
        Leader(g, axes.At(0.12, facts.PoleHeightM + 0.28), x, "module at " + Figures.Number(facts.ModuleTiltDegrees, 0) + "° tilt, "
            + Figures.Number(facts.ModuleLengthM, 2) + " m long");
        Leader(g, axes.At(facts.ArmReachM + 0.28, facts.LuminaireHeightM), x, "luminaire, reach " + Figures.Number(facts.ArmReachM, 2) + " m");
        Leader(g, axes.At(EnclosureWidthM / 2, facts.EnclosureHeightM), x, "battery and controller enclosure");
    }

    private static void Leader(XGraphics g, XPoint from, double x, string text)
    {
        g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Mid), from.X + 2, from.Y, x - 4, from.Y);
        Pencil.Text(g, text, Pencil.Label, x, from.Y);
    }
}
