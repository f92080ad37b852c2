using System.Collections.Immutable;
using PdfSharp.Drawing;

namespace TenderKit.Documents.Layout;

/// <summary>A drawing on the left with a list of names and values on the right, and its caption below.</summary>
/// <param name="HeightPt">Height of the drawing, points.</param>
/// <param name="WidthPt">Width of the drawing, points.</param>
/// <param name="Facts">Rows of two cells: name and value.</param>
internal sealed record FigureBeside(double HeightPt, double WidthPt, Action<XGraphics, XRect> Draw, ImmutableArray<Row> Facts, string Caption) : Block
{
    private const double GapPt = 16;
    private const double NamePt = 102;
    private const double PadPt = 1.3;

    public override double LeadHeight => Math.Max(HeightPt, Facts.Sum(Height)) + TextStyle.Step + (CaptionLines("Figure 00").Length * TextStyle.Small.Leading);

    private double LeftPt => Paper.LeftPt + WidthPt + GapPt;

    public override void Place(PageFlow flow)
    {
        flow.Need(LeadHeight);
        var area = new XRect(Paper.LeftPt, flow.Y, WidthPt, HeightPt);
        flow.Figure(area, Caption, g => Draw(g, area));
        var y = flow.Y;
        flow.Tagged(TagKind.Table, () =>
        {
            foreach (var fact in Facts) flow.Tagged(TagKind.TableRow, () => y = PlaceFact(flow, fact, y));
        });
        flow.Y = Math.Max(area.Bottom, y) + TextStyle.Step;
        flow.Tagged(TagKind.Caption, () =>
        {
            foreach (var line in CaptionLines(flow.NextFigure()))
            {
                flow.Line(line, TextStyle.Quiet, Paper.LeftPt, flow.Y);
                flow.Y += TextStyle.Small.Leading;
            }
        });
        flow.Snap();
        flow.Y += TextStyle.Step;
    }

    private ImmutableArray<string> CaptionLines(string label) => LineBreaker.Break(label + ". " + Caption, TextStyle.Quiet, Paper.MeasurePt);

    private double PlaceFact(PageFlow flow, Row fact, double top)
    {
        var values = Values(fact);
        flow.Tagged(TagKind.HeadCell, () => flow.Say(fact.Cells[0], TextStyle.Small, LeftPt, top + PadPt, (LeftPt, LeftPt + NamePt)));
        flow.Tagged(TagKind.Cell, () =>
        {
            for (var l = 0; l < values.Length; l++) flow.Line(values[l], TextStyle.Small, LeftPt + NamePt, top + PadPt + (l * TextStyle.Small.Leading), (LeftPt + NamePt, Paper.RightPt));
        });
        var bottom = top + Height(fact);
        flow.Rule(LeftPt, Paper.RightPt, bottom, Ink.HairPt, Ink.Light);
        return bottom;
    }

    private double Height(Row fact) => (Values(fact).Length * TextStyle.Small.Leading) + (2 * PadPt);

    private ImmutableArray<string> Values(Row fact) => LineBreaker.Break(fact.Cells[1], TextStyle.Small, Paper.RightPt - LeftPt - NamePt);
}
