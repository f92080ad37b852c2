using PdfSharp.Drawing;

namespace TenderKit.Documents.Layout;

/// <summary>The contents page: one line for each numbered heading, leading to it. Its length is known before the headings are placed.</summary>
internal sealed record Contents(int Count) : Block
{
    public static Contents For(IEnumerable<Block> body) => new(body.Count(b => b is Heading { Numbered: true, Level: < 3 }));

    public override double LeadHeight => 2 * TextStyle.Body.Leading;

    public override void Place(PageFlow flow)
    {
        flow.Tagged(TagKind.Heading1, () => flow.Say("Contents", TextStyle.Chapter, Paper.LeftPt, flow.Y));
        flow.Y += TextStyle.Chapter.Leading + (2 * TextStyle.Step);
        flow.Tagged(TagKind.Contents, () =>
        {
            for (var i = 0; i < Count; i++) PlaceEntry(flow, i);
        });
    }

    private static void PlaceEntry(PageFlow flow, int index)
    {
        flow.Need(TextStyle.Body.Leading);
        var top = flow.Y;
        flow.Tagged(TagKind.ContentsItem, () => flow.Mark(g => Draw(g, Entry(flow, index), top)));
        flow.Link(new XRect(Paper.LeftPt, top, Paper.MeasurePt, TextStyle.Body.Leading), index);
        flow.Y += TextStyle.Body.Leading;
    }

    /// <summary>The heading behind a line of the contents.</summary>
    internal static PlacedHeading Entry(PageFlow flow, int index) => flow.Headings.Where(h => h.Number.Length > 0).ElementAt(index);

    private static void Draw(XGraphics g, PlacedHeading heading, double top)
    {
        var style = heading.Level == 1 ? TextStyle.BodyStrong : TextStyle.Body;
        var baseline = PageFlow.Baseline(style, top);
        var page = FormattableString.Invariant($"{heading.Page}");
        var x = Paper.LeftPt + (heading.Level == 1 ? 0 : 24);
        var textX = x + (heading.Level == 1 ? 24 : 30);
        var text = LineBreaker.BreakSaid(heading.Text, style, Paper.RightPt - textX - 40)[0];
        g.DrawString(heading.Number, style.Font, style.Brush, x, baseline);
        g.DrawString(text, style.Font, style.Brush, textX, baseline);
        g.DrawString(page, style.Font, style.Brush, Paper.RightPt - style.Width(page), baseline);
        g.DrawLine(Ink.Dashed(Ink.HairPt, Ink.Mid, 0.7, 2.5), textX + style.Width(text) + 6, baseline, Paper.RightPt - style.Width(page) - 6, baseline);
    }
}
