using System.Collections.Immutable;
using PdfSharp.Drawing;

namespace TenderKit.Documents.Layout;

/// <summary>A piece of a document that knows how to flow.</summary>
internal abstract record Block
{
    /// <summary>Height that must stand on the same page as what goes before it.</summary>
    public abstract double LeadHeight { get; }

    public abstract void Place(PageFlow flow);
}

/// <summary>Starts a new page.</summary>
internal sealed record PageBreak : Block
{
    public override double LeadHeight => 0;

    public override void Place(PageFlow flow)
    {
        if (!flow.AtTop) flow.NewPage();
    }
}

/// <summary>Empty space, in steps of the line grid.</summary>
internal sealed record Gap(double Steps) : Block
{
    public override double LeadHeight => 0;

    public override void Place(PageFlow flow) => flow.Y += Steps * TextStyle.Step;
}

/// <summary>A heading of level 1 to 3; levels 1 and 2 are numbered and stand in the contents.</summary>
internal sealed record Heading(int Level, string Text, bool Numbered = true) : Block
{
    public override double LeadHeight => Before + (Lines.Length * Style.Leading) + After;

    private TextStyle Style => Level switch { 1 => TextStyle.Chapter, 2 => TextStyle.Section, _ => TextStyle.BodyStrong };

    private double Before => (Level switch { 1 => 4, 2 => 3, _ => 2 }) * TextStyle.Step;

    private double After => (Level switch { 1 => 2, 2 => 1, _ => 0 }) * TextStyle.Step;

    private double IndentPt => Level < 3 && Numbered ? 30 : 0;

    private ImmutableArray<string> Lines => LineBreaker.Break(Text, Style, Paper.MeasurePt - IndentPt);

    public override void Place(PageFlow flow)
    {
        flow.Space(Before);
        var placed = flow.AddHeading(Level, Text, Numbered && Level < 3);
        flow.Tagged(Level switch { 1 => TagKind.Heading1, 2 => TagKind.Heading2, _ => TagKind.Heading3 }, () =>
        {
            flow.Line(placed.Number, Style, Paper.LeftPt, flow.Y);
            foreach (var line in Lines)
            {
                flow.Line(line, Style, Paper.LeftPt + IndentPt, flow.Y);
                flow.Y += Style.Leading;
            }
        });
        flow.Y += After;
    }
}

/// <summary>Running text.</summary>
internal sealed record Paragraph(string Text, TextStyle Style, double IndentPt = 0, double AfterSteps = 1) : Block
{
    private const double GreatestMeasurePt = 440;

    public Paragraph(string text)
        : this(text, TextStyle.Body)
    {
    }

    /// <summary>Whether it leads to the block after it, as a heading does.</summary>
    public bool KeepWithNext { get; init; }

    public override double LeadHeight => KeepWithNext ? (Lines.Length * Style.Leading) + (AfterSteps * TextStyle.Step)
        : Math.Min(Lines.Length, 2) * Style.Leading;

    private ImmutableArray<string> Lines => LineBreaker.Break(Text, Style, (Style.Size == TextStyle.Body.Size ? GreatestMeasurePt : Paper.MeasurePt) - IndentPt);

    public override void Place(PageFlow flow)
    {
        flow.Tagged(TagKind.Paragraph, () => Flow(flow, Lines, Style, Paper.LeftPt + IndentPt));
        flow.Snap();
        flow.Y += AfterSteps * TextStyle.Step;
    }

    /// <summary>Places lines; never leaves a single line of several alone at the foot or the head of a page.</summary>
    internal static void Flow(PageFlow flow, ImmutableArray<string> lines, TextStyle style, double x)
    {
        for (var i = 0; i < lines.Length; i++)
        {
            var together = i == 0 && lines.Length <= 3 ? lines.Length : i == 0 || i == lines.Length - 2 ? 2 : 1;
            flow.Need(Math.Min(together, lines.Length - i) * style.Leading);
            flow.Line(lines[i], style, x, flow.Y);
            flow.Y += style.Leading;
        }
    }
}

/// <summary>A list, with numbers or dashes in the margin of the text.</summary>
internal sealed record ItemList(ImmutableArray<string> Items, bool Numbered = false) : Block
{
    private const double IndentPt = 16;

    public override double LeadHeight => Items.IsEmpty ? 0 : Math.Min(Lines(Items[0]).Length, 2) * TextStyle.Body.Leading;

    public override void Place(PageFlow flow)
    {
        flow.Tagged(TagKind.List, () =>
        {
            for (var i = 0; i < Items.Length; i++)
            {
                var (label, lines) = (Numbered ? FormattableString.Invariant($"{i + 1}") : "–", Lines(Items[i]));
                flow.Tagged(TagKind.ListItem, () => PlaceItem(flow, label, lines));
            }
        });
        flow.Y += TextStyle.Step;
    }

    private static void PlaceItem(PageFlow flow, string label, ImmutableArray<string> lines)
    {
        flow.Need((lines.Length <= 3 ? lines.Length : 2) * TextStyle.Body.Leading);
        flow.Tagged(TagKind.ListLabel, () => flow.Line(label, TextStyle.Body, Paper.LeftPt, flow.Y));
        flow.Tagged(TagKind.ListBody, () => Paragraph.Flow(flow, lines, TextStyle.Body, Paper.LeftPt + IndentPt));
    }

    private static ImmutableArray<string> Lines(string item) => LineBreaker.Break(item, TextStyle.Body, Math.Min(Paper.MeasurePt, 440) - IndentPt);
}

/// <summary>A drawing of a given height over the full measure, with its caption below.</summary>
internal sealed record Figure(double HeightPt, Action<XGraphics, XRect> Draw, string Caption) : Block
{
    public override double LeadHeight => HeightPt + TextStyle.Step + (CaptionLines("Figure 00").Length * TextStyle.Small.Leading);

    public override void Place(PageFlow flow)
    {
        flow.Need(LeadHeight);
        var area = new XRect(Paper.LeftPt, flow.Y, Paper.MeasurePt, HeightPt);
        flow.Figure(area, Caption, g => Draw(g, area));
        flow.Y += HeightPt + TextStyle.Step;
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
}
