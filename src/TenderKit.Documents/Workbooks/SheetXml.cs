using System.Globalization;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Tendering.Bill;
using Xlsx = DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>Streams one sheet into its part.</summary>
internal static class SheetXml
{
    private const uint A4 = 9;
    private const int LongestText = 32767;

    public static void Write(WorksheetPart part, Sheet sheet, Book book, IReadOnlyDictionary<CellId, decimal> values, StyleTable styles)
    {
        using var writer = OpenXmlWriter.Create(part);
        writer.WriteStartElement(new Worksheet());
        writer.WriteElement(new SheetProperties(new PageSetupProperties { FitToPage = true }));
        writer.WriteElement(new SheetDimension { Reference = "A1:" + new Address("", sheet.LastRow, Math.Max(1, sheet.Widths.Length)).Local });
        writer.WriteElement(Views(sheet));
        writer.WriteElement(new SheetFormatProperties { DefaultRowHeight = 15 });
        if (sheet.Widths.Length > 0) writer.WriteElement(Columns(sheet));
        writer.WriteStartElement(new SheetData());
        var formulas = new FormulaText(sheet.Name, cell => book.Nearest(sheet.Name, cell));
        var besideNumbers = BesideNumbers(sheet);
        foreach (var row in sheet.Cells.GroupBy(c => c.Key.Row)) writer.WriteElement(RowOf(row, sheet, book, values, styles, formulas, besideNumbers));
        writer.WriteEndElement();
        writer.WriteElement(new SheetProtection { Sheet = true, Objects = true, Scenarios = true, FormatColumns = false, FormatRows = false });
        if (sheet.Merges.Count > 0) writer.WriteElement(Merges(sheet));
        var priority = 0;
        foreach (var bar in sheet.Bars) writer.WriteElement(Conditional(bar, sheet, book, ++priority));
        if (SheetInputs.Of(sheet) is { } inputs) writer.WriteElement(inputs);
        if (sheet.Links.Count > 0) writer.WriteElement(Links(sheet, book));
        PrintSetting(writer, sheet, book);
        if (sheet.Table is { } table) writer.WriteElement(SheetTable.Write(part, sheet, table, book.NumberOf(sheet)));
        writer.WriteEndElement();
    }

    /// <summary>Text without the characters an XML file cannot hold, cut to what a cell can.</summary>
    public static string Clean(string text)
    {
        var clean = new string([.. text.Where((c, i) => XmlConvert.IsXmlChar(c) || IsPair(text, i))]);
        return clean.Length <= LongestText ? clean : clean[..LongestText];
    }

    private static bool IsPair(string text, int i) =>
        (i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1])) || (i > 0 && char.IsSurrogatePair(text[i - 1], text[i]));

    private static SheetViews Views(Sheet sheet)
    {
        var view = new SheetView { ShowGridLines = false, WorkbookViewId = 0 };
        if (sheet.RepeatedRows is { } rows) view.Append(Frozen(rows.Last, sheet.FrozenColumns));
        return new SheetViews(view);
    }

    private static Pane Frozen(int rows, int columns)
    {
        var pane = new Pane
        {
            VerticalSplit = rows,
            TopLeftCell = new Address("", rows + 1, columns + 1).Local,
            ActivePane = columns > 0 ? PaneValues.BottomRight : PaneValues.BottomLeft,
            State = PaneStateValues.Frozen,
        };
        if (columns > 0) pane.HorizontalSplit = columns;
        return pane;
    }

    private static Columns Columns(Sheet sheet) =>
        new(sheet.Widths.Select((w, i) => new Column { Min = (uint)i + 1, Max = (uint)i + 1, Width = w, CustomWidth = true }));

    private static Row RowOf(
        IGrouping<int, KeyValuePair<(int Row, int Column), (Content Content, Look Look)>> cells,
        Sheet sheet,
        Book book,
        IReadOnlyDictionary<CellId, decimal> values,
        StyleTable styles,
        FormulaText formulas,
        HashSet<int> besideNumbers)
    {
        var row = new Row { RowIndex = (uint)cells.Key };
        if (sheet.HeightsPt.TryGetValue(cells.Key, out var height)) (row.Height, row.CustomHeight) = (Math.Round(height, 1), true);
        foreach (var ((r, c), (content, look)) in cells)
        {
            var cell = new Cell { CellReference = new Address("", r, c).Local, StyleIndex = styles.Number(content is Content.Words && look.Side == Side.General && besideNumbers.Contains(c) ? look with { Side = Side.Left } : look) };
            Fill(cell, content, sheet, book, values, formulas);
            row.Append(cell);
        }

        return row;
    }

    /// <summary>Columns of words right of a column of numbers: their words are set off, or number and word would touch.</summary>
    private static HashSet<int> BesideNumbers(Sheet sheet) =>
    [
        .. sheet.Cells.Where(c => c.Value.Content is Content.Words { Text.Length: > 0 } && c.Value.Look.Side == Side.General && c.Key.Column > 1
            && sheet.Cells.TryGetValue((c.Key.Row, c.Key.Column - 1), out var left) && left.Content is not Content.Words).Select(c => c.Key.Column).Distinct(),
    ];

    private static void Fill(Cell cell, Content content, Sheet sheet, Book book, IReadOnlyDictionary<CellId, decimal> values, FormulaText formulas)
    {
        switch (content)
        {
            case Content.Words { Text.Length: > 0 } words:
                cell.DataType = CellValues.InlineString;
                cell.InlineString = new InlineString(new Text(Clean(words.Text)) { Space = SpaceProcessingModeValues.Preserve });
                break;
            case Content.Figure figure:
                cell.CellValue = new CellValue(figure.Value.ToString("R", CultureInfo.InvariantCulture));
                break;
            case Content.Home home:
                if (book.ExpressionOf(home.Cell) is var expression and not Literal) cell.CellFormula = new CellFormula(formulas.Print(expression));
                cell.CellValue = Number(values[home.Cell]);
                break;
            case Content.Shown shown:
                cell.CellFormula = new CellFormula(book.HomeOf(shown.Cell).From(sheet.Name));
                cell.CellValue = Number(values[shown.Cell]);
                break;
        }
    }

    private static CellValue Number(decimal value) => new(value.ToString("0.############################", CultureInfo.InvariantCulture));

    private static MergeCells Merges(Sheet sheet) => new(
        sheet.Merges.Select(m => new MergeCell { Reference = new Address("", m.Row, m.FirstColumn).Local + ":" + new Address("", m.Row, m.LastColumn).Local }));

    /// <summary>The most pressing shade has the lowest number: late before dark before light.</summary>
    private static ConditionalFormatting Conditional(BarArea bar, Sheet sheet, Book book, int order)
    {
        var first = new Address("", bar.FirstRow, bar.FirstColumn).Local;
        var least = string.Create(CultureInfo.InvariantCulture, $"{first}>={bar.Least}");
        var heading = Address.ColumnName(bar.FirstColumn) + "$" + bar.HeaderRow.ToString(CultureInfo.InvariantCulture);
        var formula = bar.After is { } after ? $"AND({least},{heading}>{book.Nearest(sheet.Name, after).Fixed(sheet.Name)})" : least;
        var rule = new ConditionalFormattingRule(new Formula(formula)) { Type = ConditionalFormatValues.Expression, FormatId = (uint)bar.Shade, Priority = order, StopIfTrue = true };
        return new ConditionalFormatting(rule) { SequenceOfReferences = new ListValue<StringValue> { InnerText = first + ":" + new Address("", bar.LastRow, bar.LastColumn).Local } };
    }

    private static Hyperlinks Links(Sheet sheet, Book book) => new(
        sheet.Links.Select(l => new Hyperlink { Reference = new Address("", l.Key.Row, l.Key.Column).Local, Location = Address.Quoted(book.HomeOf(l.Value).Sheet) + "!" + book.HomeOf(l.Value).Local }));

    private static void PrintSetting(OpenXmlWriter writer, Sheet sheet, Book book)
    {
        writer.WriteElement(new PrintOptions { HorizontalCentered = true });
        writer.WriteElement(new PageMargins { Left = 0.6, Right = 0.6, Top = 0.8, Bottom = 0.8, Header = 0.4, Footer = 0.4 });
        writer.WriteElement(new PageSetup
        {
            PaperSize = A4,
            Orientation = sheet.Landscape ? OrientationValues.Landscape : OrientationValues.Portrait,
            FitToWidth = 1,
            FitToHeight = 0,
        });
        writer.WriteElement(new HeaderFooter(
            new OddHeader("&L&8" + Escaped(book.Head.Reference) + "&R&8" + Escaped(book.Title)),
            new OddFooter("&L&8" + Escaped(book.Head.Bidder) + "&C&8" + Escaped(sheet.Name) + "&R&8" + book.Wording.Say("Page &P of &N"))));
        if (sheet.BreaksBefore.Count > 0) writer.WriteElement(Breaks(sheet));
    }

    private static Xlsx.RowBreaks Breaks(Sheet sheet) => new(sheet.BreaksBefore.Select(row => new Break { Id = (uint)row - 1, Max = 16383, ManualPageBreak = true }))
    {
        Count = (uint)sheet.BreaksBefore.Count, ManualBreakCount = (uint)sheet.BreaksBefore.Count,
    };

    /// <summary>A digit right after a font size would be read as part of it, so a text that starts with one is set off by a space.</summary>
    private static string Escaped(string text)
    {
        var cut = Clean(text) is { Length: > 60 } longer ? longer[..57] + "..." : Clean(text);
        var clean = cut.Replace("&", "&&", StringComparison.Ordinal);
        return clean.Length > 0 && char.IsDigit(clean[0]) ? " " + clean : clean;
    }
}
