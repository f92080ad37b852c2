using System.Collections.Immutable;

namespace TenderKit.Documents.Layout;

internal enum Side
{
    Start,
    End,
}

/// <summary>A column: heading with its unit on a line of its own, share of the free width or a fixed width, and side.</summary>
internal sealed record Column(string Head, string Unit = "", double Share = 1, Side Side = Side.Start, double? FixedPt = null);

/// <summary>A row; a <paramref name="Strong"/> row is set in the heavier weight, a row of one cell is a title and spans the table.</summary>
/// <param name="LeastHeightPt">Room to write in by hand, points; 0 for none.</param>
internal sealed record Row(ImmutableArray<string> Cells, bool Strong = false, double LeastHeightPt = 0)
{
    public bool IsTitle => Cells.Length == 1;

    public static Row Of(params string[] cells) => new([.. cells]);
}

/// <summary>
/// A table. Its head is repeated on every page; a row is kept together unless it is taller than a page; a title row is kept with
/// the row after it, and the last row with the one before. A table without heads is a list of names and values.
/// </summary>
internal sealed record TableBlock(string? Caption, ImmutableArray<Column> Columns, ImmutableArray<Row> Rows) : Block
{

    /// <summary>Whether the cells hold running text and are set in its size.</summary>
    public bool Large { get; init; }

    /// <summary>Whether the table is set small and close, for many short rows.</summary>
    public bool Compact { get; init; }

    /// <summary>Whether the rows of a compact table stand closer still, to spare a page.</summary>
    public bool Tight { get; init; }

    /// <summary>Whether a table shorter than a page is never split.</summary>
    public bool KeepTogether { get; init; }

    /// <summary>How many rows must stand on the page the table begins on.</summary>
    public int LeadRows { get; init; } = 2;

    private readonly Lazy<ImmutableArray<double>> _widths = new(() => Share(Columns));

    public override double LeadHeight => CaptionHeight + HeadHeight + Rows.Take(KeepTogether ? Rows.Length : LeadRows)
        .Sum(r => Math.Min(Height(r, Broken(r)), KeepTogether ? Paper.TextHeightPt : 120));

    private double PadXPt => Compact ? 3 : 4;

    private double PadYPt => Tight ? 0.4 : Compact ? 1 : 2.5;

    private TextStyle PlainStyle => Compact ? TextStyle.Fine : Large ? TextStyle.Body : TextStyle.Small;

    private TextStyle StrongStyle => Compact ? TextStyle.FineStrong : Large ? TextStyle.BodyStrong : TextStyle.SmallStrong;

    private double CaptionHeight => Caption is null ? 0 : TextStyle.Section.Leading;

    private bool HasHead => Columns.Any(c => c.Head.Length > 0);

    private double HeadHeight => HasHead ? (HeadLines * PlainStyle.Leading) + (2 * PadYPt) : 0;

    private int HeadLines => Columns.Select((_, i) => HeadText(i).Length).Max();

    public override void Place(PageFlow flow)
    {
        flow.Need(LeadHeight);
        var label = Caption is null ? "" : flow.NextTable() + ". " + Caption;
        flow.Tagged(TagKind.Table, () =>
        {
            PlaceHead(flow, label);
            for (var i = 0; i < Rows.Length; i++)
            {
                var lines = Broken(Rows[i]);
                var withNext = i + 1 < Rows.Length && (Rows[i].IsTitle || i + 2 == Rows.Length);
                var needed = Height(Rows[i], lines) + (withNext ? Height(Rows[i + 1], Broken(Rows[i + 1])) : 0);
                if (flow.Left < needed && !flow.AtTop) Continue(flow, label);
                PlaceRow(flow, Rows[i], lines, label);
            }
        });
        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.ThinPt, Ink.Black);
        flow.Snap();
        flow.Y += (Compact ? 1 : 2) * TextStyle.Step;
    }

    private static ImmutableArray<double> Share(ImmutableArray<Column> columns)
    {
        var free = Paper.MeasurePt - columns.Sum(c => c.FixedPt ?? 0);
        var shares = columns.Where(c => c.FixedPt is null).Sum(c => c.Share);
        return [.. columns.Select(c => c.FixedPt ?? (free * c.Share / shares))];
    }

    private void Continue(PageFlow flow, string label)
    {
        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.HairPt, Ink.Mid);
        flow.NewPage();
        flow.Tagged(TagKind.Artifact, () => PlaceHead(flow, label.Length == 0 ? "" : label + " (continued)", repeated: true));
    }

    private void PlaceHead(PageFlow flow, string label, bool repeated = false)
    {
        void Tagged(TagKind kind, Action place) => flow.Tagged(repeated ? TagKind.Artifact : kind, place);
        if (label.Length > 0)
        {
            Tagged(TagKind.Caption, () => flow.Line(LineBreaker.Break(label, TextStyle.Quiet, Paper.MeasurePt)[0], TextStyle.Quiet, Paper.LeftPt, flow.Y));
            flow.Y += CaptionHeight;
        }

        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.FirmPt, Ink.Black);
        if (!HasHead) return;
        Tagged(TagKind.TableRow, () =>
        {
            for (var c = 0; c < Columns.Length; c++)
            {
                var column = c;
                Tagged(TagKind.HeadCell, () => PlaceHeadCell(flow, column));
            }
        });
        flow.Y += HeadHeight;
        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.ThinPt, Ink.Black);
    }

    private void PlaceHeadCell(PageFlow flow, int column)
    {
        flow.Mark(_ => { });
        var lines = HeadText(column);
        for (var l = 0; l < lines.Length; l++)
        {
            var unit = l >= lines.Length - UnitText(column).Length;
            Cell(flow, column, lines[l], unit ? TextStyle.Quiet : StrongStyle, flow.Y + PadYPt + ((HeadLines - lines.Length + l) * PlainStyle.Leading));
        }
    }

    private void PlaceRow(PageFlow flow, Row row, ImmutableArray<ImmutableArray<string>> lines, string label)
    {
        var style = row.Strong || row.IsTitle ? StrongStyle : PlainStyle;
        var count = lines.Max(l => l.Length);
        var top = flow.Y;
        flow.Y += PadYPt;
        var cells = CellTags(flow, lines.Length);
        for (var l = 0; l < count; l++)
        {
            if (flow.Left < PlainStyle.Leading + PadYPt) Continue(flow, label);
            for (var c = 0; c < lines.Length; c++)
            {
                var (column, line) = (c, l);
                if (l < lines[c].Length) flow.In(cells[c], () => Cell(flow, column, lines[column][line], style, flow.Y, row.IsTitle));
            }

            flow.Y += PlainStyle.Leading;
        }

        flow.Y = Math.Max(flow.Y + PadYPt, top + row.LeastHeightPt);
        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.HairPt, Ink.Light);
    }

    /// <summary>The cells of a row, an empty one too, so that columns stay columns.</summary>
    private static ImmutableArray<Tag> CellTags(PageFlow flow, int count)
    {
        var cells = ImmutableArray<Tag>.Empty;
        flow.Tagged(TagKind.TableRow, () => cells = [.. Enumerable.Range(0, count).Select(_ => flow.NewTag(TagKind.Cell))]);
        foreach (var cell in cells) flow.In(cell, () => flow.Mark(_ => { }));
        return cells;
    }

    /// <param name="title">A title row spans the table.</param>
    private void Cell(PageFlow flow, int column, string text, TextStyle style, double top, bool title = false)
    {
        var start = Paper.LeftPt + _widths.Value.Take(column).Sum();
        var edges = (start, title ? Paper.RightPt : start + _widths.Value[column]);
        if (!title && Columns[column].Side == Side.End) flow.LineRight(text, style, start + _widths.Value[column] - Pad(column, last: true), top, edges);
        else flow.Line(text, style, start + (title ? 0 : Pad(column, last: false)), top, edges);
    }

    /// <summary>Text of the outer columns stands on the edge of the measure.</summary>
    private double Pad(int column, bool last) => (last ? column == Columns.Length - 1 : column == 0) ? 0 : PadXPt;

    private ImmutableArray<string> HeadText(int c)
    {
        var lines = LineBreaker.Break(Columns[c].Head, StrongStyle, Inner(c));
        return [.. lines, .. UnitText(c)];
    }

    private ImmutableArray<string> UnitText(int c) => Columns[c].Unit.Length == 0 ? [] : LineBreaker.Break(Columns[c].Unit, TextStyle.Quiet, Inner(c));

    private double Inner(int column) => _widths.Value[column] - Pad(column, last: false) - Pad(column, last: true);

    private ImmutableArray<ImmutableArray<string>> Broken(Row row) =>
        row.IsTitle
            ? [LineBreaker.Break(row.Cells[0], StrongStyle, Paper.MeasurePt)]
            : [.. row.Cells.Select((cell, c) => LineBreaker.Break(cell, row.Strong ? StrongStyle : PlainStyle, Inner(c)))];

    private double Height(Row row, ImmutableArray<ImmutableArray<string>> lines) =>
        Math.Max(row.LeastHeightPt, (lines.Max(l => l.Length) * PlainStyle.Leading) + (2 * PadYPt));
}
