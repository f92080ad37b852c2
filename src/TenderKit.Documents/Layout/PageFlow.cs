using PdfSharp.Drawing;
using TenderKit.Documents.Languages;

namespace TenderKit.Documents.Layout;

/// <summary>One page being filled: what is to be drawn on it and which areas lead to a heading.</summary>
internal sealed class Sheet
{
    public List<TaggedMark> Marks { get; } = [];

    public List<(XRect Area, int Heading)> Links { get; } = [];

    /// <summary>Every line of text placed, for reading without drawing.</summary>
    public List<PlacedLine> Lines { get; } = [];
}

/// <summary>A line of text as placed, points from the left and top edges.</summary>
internal readonly record struct PlacedLine(double X, double Top, string Text, TextStyle Style)
{
    /// <summary>What it is.</summary>
    public Tag? Tag { get; init; }

    /// <summary>Edges of the cell it stands in, points; null outside of tables.</summary>
    public (double Left, double Right)? Cell { get; init; }

    public double Right => X + Style.Width(Text);

    /// <summary>Top of the letters themselves, less than the line's height.</summary>
    public double InkTop => PageFlow.Baseline(Style, Top) - (0.72 * Style.Size);

    public double InkBottom => PageFlow.Baseline(Style, Top) + (0.2 * Style.Size);
}

/// <summary>A heading as placed.</summary>
/// <param name="Page">1-based.</param>
internal sealed record PlacedHeading(int Level, string Number, string Text, int Page, double TopPt)
{
    public string Full => Number.Length == 0 ? Text : Number + "  " + Text;
}

/// <summary>
/// Fills pages from top to bottom. Nothing is drawn while the text flows: marks are kept, so that what depends on the
/// end (page n of m, the contents page) is known when they are drawn.
/// </summary>
internal sealed class PageFlow
{
    private readonly int[] _counters = new int[3];
    private Tag? _tag;
    private int _tags;
    private int _figures;
    private int _tables;

    public PageFlow() => NewPage();

    public List<Sheet> Sheets { get; } = [];

    public List<PlacedHeading> Headings { get; } = [];

    /// <summary>Where the next thing goes, points from the top edge.</summary>
    public double Y { get; set; }

    public bool AtTop => Y <= Paper.TopPt + 0.01;

    public double Left => Paper.BottomPt - Y;

    private Sheet Current => Sheets[^1];

    public void NewPage()
    {
        Sheets.Add(new Sheet());
        Y = Paper.TopPt;
    }

    /// <summary>Starts a page when less than this height is left; a thing taller than a page starts wherever it may.</summary>
    public void Need(double height)
    {
        if (Left + 0.01 < height && !AtTop) NewPage();
    }

    /// <summary>Space between blocks; none at the top of a page.</summary>
    public void Space(double height)
    {
        if (!AtTop) Y += height;
    }

    /// <summary>Back to the line grid after something that does not keep to it.</summary>
    public void Snap() => Y = Paper.TopPt + (Math.Ceiling((Y - Paper.TopPt - 0.01) / TextStyle.Step) * TextStyle.Step);

    public void Mark(Action<XGraphics> draw) => Current.Marks.Add(new TaggedMark(_tag ?? NewTag(TagKind.Artifact), draw));

    /// <summary>An element inside the one that is open, in the order of reading.</summary>
    public Tag NewTag(TagKind kind) => new(kind, _tag, ++_tags);

    /// <summary>Places something as an element.</summary>
    public void Tagged(TagKind kind, Action place) => In(NewTag(kind), place);

    /// <summary>Places something, or more of it, inside an element.</summary>
    public void In(Tag tag, Action place)
    {
        var before = _tag;
        _tag = tag;
        place();
        _tag = before;
    }

    /// <summary>Places a drawing, which needs words for those who do not see it.</summary>
    public void Figure(XRect area, string alternative, Action<XGraphics> draw) =>
        In(NewTag(TagKind.Figure) with { Alternative = Fonts.Drawable(Wording.Current.Say(alternative)), Area = area }, () => Mark(draw));

    public void Link(XRect area, int heading) => Current.Links.Add((area, heading));

    /// <summary>One line of text whose top is at <paramref name="top"/>.</summary>
    /// <param name="cell">Edges of the cell it stands in.</param>
    public void Line(string text, TextStyle style, double x, double top, (double Left, double Right)? cell = null)
    {
        if (text.Length == 0) return;
        var tag = _tag ?? NewTag(TagKind.Paragraph);
        Current.Lines.Add(new PlacedLine(x, top, text, style) { Tag = tag, Cell = cell });
        In(tag, () => Mark(g => g.DrawString(text, style.Font, style.Brush, x, Baseline(style, top))));
    }

    /// <summary>One line of text, said in the language of the document.</summary>
    /// <inheritdoc cref="Line" path="/param"/>
    public void Say(string text, TextStyle style, double x, double top, (double Left, double Right)? cell = null) =>
        Line(Fonts.Drawable(Wording.Current.Say(text)), style, x, top, cell);

    public void LineRight(string text, TextStyle style, double right, double top, (double Left, double Right)? cell = null) =>
        Line(text, style, right - style.Width(text), top, cell);

    public void Rule(double x1, double x2, double y, double width, double grey) =>
        Tagged(TagKind.Artifact, () => Mark(g => g.DrawLine(Ink.Pen(width, grey), x1, y, x2, y)));

    public PlacedHeading AddHeading(int level, string text, bool numbered)
    {
        var heading = new PlacedHeading(level, numbered ? NextNumber(level) : "", Fonts.Drawable(Wording.Current.Say(text)), Sheets.Count, Y);
        Headings.Add(heading);
        return heading;
    }

    public string NextFigure() => FormattableString.Invariant($"Figure {++_figures}");

    public string NextTable() => FormattableString.Invariant($"Table {++_tables}");

    internal static double Baseline(TextStyle style, double top) => top + (style.Leading / 2) + (style.Size * 0.36);

    private string NextNumber(int level)
    {
        _counters[level - 1]++;
        for (var i = level; i < _counters.Length; i++) _counters[i] = 0;
        return string.Join('.', _counters.Take(level).Select(c => FormattableString.Invariant($"{c}")));
    }
}
