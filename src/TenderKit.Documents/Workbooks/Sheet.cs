using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Documents.Languages;
using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks;

/// <summary>What stands in a cell: a text, a number, or a cell of the ledger (its home, or shown again elsewhere).</summary>
internal abstract record Content
{
    public sealed record Words(string Text) : Content;

    public sealed record Figure(double Value) : Content;

    public sealed record Home(CellId Cell) : Content;

    public sealed record Shown(CellId Cell) : Content;
}

/// <summary>One sheet in the making. Rows and columns count from 1.</summary>
internal sealed class Sheet(Book book, string name)
{
    /// <summary>Digits that the indent of a cell takes.</summary>
    private const double Indent = 1.5;

    private readonly SortedDictionary<(int Row, int Column), (Content Content, Look Look)> _cells = [];
    private readonly SortedDictionary<int, double> _heightsPt = [];
    private readonly List<(int Row, int FirstColumn, int LastColumn)> _merges = [];

    public string Name => name;

    /// <summary>Says texts in the language of the workbook.</summary>
    public Wording Wording => book.Wording;

    public ImmutableArray<double> Widths { get; private set; } = [];

    public bool Landscape { get; init; }

    /// <summary>Rows that stay in sight and are printed on every page: first and last.</summary>
    public (int First, int Last)? RepeatedRows { get; private set; }

    /// <summary>Columns that stay in sight.</summary>
    public int FrozenColumns { get; private set; }

    /// <summary>Bars drawn where cells hold a number.</summary>
    public List<BarArea> Bars { get; } = [];

    /// <summary>Cells that lead to another: where they stand and the ledger cell they lead to.</summary>
    public SortedDictionary<(int Row, int Column), CellId> Links { get; } = [];

    /// <summary>Least numbers of inputs that must be above zero.</summary>
    public Dictionary<(int Row, int Column), decimal> Leasts { get; } = [];

    /// <summary>The table of this sheet, or null.</summary>
    public TableArea? Table { get; set; }

    public SortedSet<int> BreaksBefore { get; } = [];

    public IReadOnlyDictionary<(int Row, int Column), (Content Content, Look Look)> Cells => _cells;

    public IReadOnlyDictionary<int, double> HeightsPt => _heightsPt;

    public IReadOnlyList<(int Row, int FirstColumn, int LastColumn)> Merges => _merges;

    public int LastRow => _cells.Count == 0 ? 1 : _cells.Keys.Max(k => k.Row);

    public void Columns(params ReadOnlySpan<double> widths) => Widths = [.. widths];

    /// <summary>A text, said in the language of the workbook.</summary>
    public void Words(int row, int column, string text, Look? look = null)
    {
        var said = book.Wording.Say(text);
        Put(row, column, new Content.Words(said), look ?? Look.Text, said, Width(column));
    }

    /// <summary>Wrapped text over several columns.</summary>
    public void Paragraph(int row, int column, int lastColumn, string text, Look? look = null)
    {
        var width = Enumerable.Range(column, lastColumn - column + 1).Sum(Width);
        var said = book.Wording.Say(text);
        Put(row, column, new Content.Words(said), look ?? Look.Paragraph, said, width);
        for (var c = column + 1; c <= lastColumn; c++) _cells.TryAdd((row, c), (new Content.Words(""), look ?? Look.Paragraph));
        if (lastColumn > column) _merges.Add((row, column, lastColumn));
    }

    /// <summary>A number that no formula gives; one that is not finite prints as a dash, since a cell cannot hold it.</summary>
    public void Figure(int row, int column, double value, Look look) =>
        Put(row, column, double.IsFinite(value) ? new Content.Figure(value) : new Content.Words("-"), look, null, 0);

    /// <summary>The place where a ledger cell lives; a literal becomes an input cell.</summary>
    public void Home(int row, int column, CellId cell, Look look)
    {
        book.Bind(cell, new Address(name, row, column));
        Put(row, column, new Content.Home(cell), book.IsLiteral(cell) ? look.AsInput() : look, null, 0);
    }

    /// <summary>A number that formulas may name but nobody is asked to change.</summary>
    public CellId Fixed(int row, int column, decimal value, Look look)
    {
        var cell = book.Own(string.Create(CultureInfo.InvariantCulture, $"sheet.{name}.{row}.{column}"), new Literal(value));
        book.Bind(cell, new Address(name, row, column));
        Put(row, column, new Content.Home(cell), look, null, 0);
        return cell;
    }

    /// <summary>A ledger cell that lives elsewhere, shown here as a link; formulas of this sheet name it here.</summary>
    public void Show(int row, int column, CellId cell, Look look)
    {
        book.Mirror(cell, new Address(name, row, column));
        Put(row, column, new Content.Shown(cell), look, null, 0);
    }

    /// <summary>A formula of the workbook's own.</summary>
    public CellId Formula(int row, int column, Expression expression, Look look)
    {
        var cell = book.Own(string.Create(CultureInfo.InvariantCulture, $"sheet.{name}.{row}.{column}"), expression);
        Home(row, column, cell, look);
        return cell;
    }

    /// <summary>Fills the empty cells of a row so that its rule and shade run through.</summary>
    public void Fill(int row, int firstColumn, int lastColumn, Look look)
    {
        for (var column = firstColumn; column <= lastColumn; column++) _cells.TryAdd((row, column), (new Content.Words(""), look));
    }

    public void Header(int row, params ReadOnlySpan<string> titles)
    {
        for (var i = 0; i < Math.Min(titles.Length, Widths.Length); i++) Widths = Widths.SetItem(i, Math.Max(Widths[i], WordWidth(titles[i])));
        for (var i = 0; i < titles.Length; i++)
        {
            var right = titles[i].StartsWith('>');
            Words(row, i + 1, titles[i].TrimStart('>'), right ? Look.HeadRight : Look.Head);
        }
    }

    /// <summary>Width in which the longest word of a bold heading is not broken.</summary>
    private static double WordWidth(string title) => (title.Split(' ').Max(w => w.Length) * 1.1) + 1.5;

    public void Repeat(int firstRow, int lastRow, int frozenColumns = 0) => (RepeatedRows, FrozenColumns) = ((firstRow, lastRow), frozenColumns);

    /// <summary>A row of turned headings is as high as the longest of them.</summary>
    public void Height(int row, double pt) => _heightsPt[row] = Math.Max(_heightsPt.GetValueOrDefault(row), pt);

    private double Width(int column) => column <= Widths.Length ? Widths[column - 1] : 10;

    private void Put(int row, int column, Content content, Look look, string? text, double width)
    {
        look = look with { Format = book.Wording.SayFormat(look.Format) };
        if (!_cells.TryAdd((row, column), (content, look))) throw new InvalidOperationException($"{new Address(name, row, column).From("")} is written twice");
        var height = text is not null && look.Wrap ? TextFit.HeightPt(text, look.Side is Side.Left or Side.Right ? width - Indent : width, look.SizePt, look.Bold) : (look.SizePt * 1.3) + 2.5;
        _heightsPt[row] = Math.Max(_heightsPt.GetValueOrDefault(row), Math.Min(409, height));
    }
}
