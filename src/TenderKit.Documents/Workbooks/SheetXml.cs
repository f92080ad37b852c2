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
        foreach (var row in sheet.Cells.GroupBy(c => c.Key.Row)) writer.WriteElement(RowOf(row, sheet, book, values, styles, formulas));
        writer.WriteEndElement();
        writer.WriteElement(new SheetProtection { Sheet = true, Objects = true, Scenarios = true, FormatColumns = false, FormatRows = false });
        if (sheet.Merges.Count > 0) writer.WriteElement(Merges(sheet));
        if (InputRanges(sheet) is { Length: > 0 } inputs) writer.WriteElement(Validation(inputs));
        PrintSetting(writer, sheet, book);
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
        FormulaText formulas)
    {
        var row = new Row { RowIndex = (uint)cells.Key };
        if (sheet.HeightsPt.TryGetValue(cells.Key, out var height)) (row.Height, row.CustomHeight) = (Math.Round(height, 1), true);
        foreach (var ((r, c), (content, look)) in cells)
        {
            var cell = new Cell { CellReference = new Address("", r, c).Local, StyleIndex = styles.Number(look) };
            Fill(cell, content, sheet, book, values, formulas);
            row.Append(cell);
        }

        return row;
    }

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

    /// <summary>Input cells, column by column, neighbours drawn together.</summary>
    private static string[] InputRanges(Sheet sheet) =>
    [
        .. sheet.Cells.Where(c => c.Value.Look.IsInput && c.Value.Content is Content.Home).GroupBy(c => c.Key.Column).OrderBy(g => g.Key)
            .SelectMany(g => Runs([.. g.Select(c => c.Key.Row).Order()]).Select(r => Range(r.First, r.Last, g.Key))),
    ];

    private static string Range(int first, int last, int column)
    {
        var start = new Address("", first, column).Local;
        return first == last ? start : start + ":" + new Address("", last, column).Local;
    }

    private static IEnumerable<(int First, int Last)> Runs(int[] rows)
    {
        for (var i = 0; i < rows.Length;)
        {
            var j = i;
            while (j + 1 < rows.Length && rows[j + 1] == rows[j] + 1) j++;
            yield return (rows[i], rows[j]);
            i = j + 1;
        }
    }

    private static DataValidations Validation(string[] ranges) => new(new DataValidation(new Formula1("0"))
    {
        Type = DataValidationValues.Decimal,
        Operator = DataValidationOperatorValues.GreaterThanOrEqual,
        AllowBlank = false,
        ShowErrorMessage = true,
        ErrorTitle = "Number wanted",
        Error = "Enter a number of zero or more.",
        SequenceOfReferences = new ListValue<StringValue>(ranges.Select(r => new StringValue(r))),
    })
    { Count = 1 };

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
