using PdfSharp.Drawing;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Forms;

/// <summary>Boxes for the height of obstacles every 30 degrees of the compass, beside a polar paper to sketch the skyline on.</summary>
internal sealed record SkylineBlock : Block
{
    private const double RowPt = 12;
    private const double DirectionPt = 72;
    private const double AnglePt = 62;
    private const double WhatPt = 130;

    private static readonly string[] _winds = ["N", "", "", "E", "", "", "S", "", "", "W", "", ""];

    private const double RadiusPt = 72;

    public override double LeadHeight => (14 * RowPt) + TextStyle.Step;

    public override void Place(PageFlow flow)
    {
        flow.Need(LeadHeight);
        var top = flow.Y;
        var right = Paper.LeftPt + DirectionPt + AnglePt + WhatPt;
        flow.Say("Obstacles seen from the place of the pole", TextStyle.FineStrong, Paper.LeftPt, top);
        flow.Say("Direction, °", TextStyle.FineStrong, Paper.LeftPt, top + RowPt);
        flow.Say("Angle up, °", TextStyle.FineStrong, Paper.LeftPt + DirectionPt, top + RowPt);
        flow.Say("What (tree, wall; grows?)", TextStyle.FineStrong, Paper.LeftPt + DirectionPt + AnglePt, top + RowPt);
        for (var i = 0; i < 12; i++)
        {
            var y = top + ((i + 2) * RowPt);
            flow.Rule(Paper.LeftPt, right, y, i == 0 ? Ink.ThinPt : Ink.HairPt, Ink.Dark);
            flow.Say(FormattableString.Invariant($"{i * 30}") + (_winds[i].Length > 0 ? "  " + _winds[i] : ""), TextStyle.Fine, Paper.LeftPt, y + 1.6);
        }

        flow.Rule(Paper.LeftPt, right, top + (14 * RowPt), Ink.ThinPt, Ink.Dark);
        flow.Mark(g =>
        {
            foreach (var x in new[] { Paper.LeftPt + DirectionPt - 6, Paper.LeftPt + DirectionPt + AnglePt - 6, right })
                g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Dark), x, top + (2 * RowPt), x, top + (14 * RowPt));
        });
        var middle = new XPoint((right + Paper.RightPt) / 2, top + (7 * RowPt) + 2);
        flow.Figure(
            new XRect(middle.X - RadiusPt - 16, middle.Y - RadiusPt - 16, 2 * (RadiusPt + 16), 2 * (RadiusPt + 16)),
            "Circle of directions to draw the obstacles into: the horizon is the outer circle, straight up the middle", g => Polar(g, middle, RadiusPt));
        flow.Y = top + LeadHeight;
    }

    /// <summary>The horizon is the outer circle, straight up the middle; circles every 15 degrees.</summary>
    private static void Polar(XGraphics g, XPoint middle, double radius)
    {
        for (var i = 1; i <= 6; i++)
        {
            var r = radius * i / 6;
            g.DrawEllipse(Ink.Pen(i == 6 ? Ink.FirmPt : Ink.HairPt, i == 6 ? Ink.Black : Ink.Mid), middle.X - r, middle.Y - r, 2 * r, 2 * r);
            if (i is > 1 and < 6) Drawings.Pencil.Text(g, FormattableString.Invariant($"{90 - (15 * i)}°"), Drawings.Pencil.QuietLabel, middle.X + 2, middle.Y - r, whiteGround: true);
        }

        for (var i = 0; i < 12; i++)
        {
            var (sin, cos) = Math.SinCos(i * Math.PI / 6);
            g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Mid), middle.X, middle.Y, middle.X + (radius * sin), middle.Y - (radius * cos));
            var name = _winds[i].Length > 0 ? _winds[i] : FormattableString.Invariant($"{i * 30}");
            Drawings.Pencil.Text(g, name, _winds[i].Length > 0 ? Drawings.Pencil.StrongLabel : Drawings.Pencil.QuietLabel, middle.X + ((radius + 9) * sin), middle.Y - ((radius + 8) * cos), Drawings.Anchor.Middle);
        }
    }
}
