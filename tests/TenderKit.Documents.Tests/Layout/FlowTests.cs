using System.Collections.Immutable;
using CsCheck;
using TenderKit.Documents.Layout;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

public class FlowTests
{
    private static readonly ImmutableArray<Column> _columns = [new("Site"), new("Spacing", "m", 1, Side.End), new("Text", Share: 2)];

    [Fact]
    public void A_long_table_repeats_its_head_and_says_it_continues()
    {
        var flow = PdfPrinter.Lay([Table(150)]);

        Assert.True(flow.Sheets.Count > 2);
        Assert.All(flow.Sheets, sheet => Assert.Contains(sheet.Lines, l => l.Text == "Spacing"));
        Assert.All(flow.Sheets.Skip(1), sheet => Assert.Contains(sheet.Lines, l => l.Text.EndsWith("(continued)", StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_row_of_a_long_table_stands_once_and_in_order()
    {
        var cells = PdfPrinter.Lay([Table(400)]).Sheets.SelectMany(s => s.Lines).Select(l => l.Text).Where(t => t.StartsWith("S-", StringComparison.Ordinal));

        Assert.Equal(Enumerable.Range(1, 400).Select(n => $"S-{n}"), cells);
    }

    [Fact]
    public void A_row_taller_than_a_page_is_split_and_nothing_is_lost()
    {
        var words = string.Join(' ', Enumerable.Range(1, 4000).Select(n => $"word{n}"));
        var flow = PdfPrinter.Lay([new TableBlock(null, _columns, [Row.Of("S-1", "1", words)])]);

        var text = string.Join(' ', flow.Sheets.SelectMany(s => s.Lines).Where(l => l.Text.StartsWith("word", StringComparison.Ordinal)).Select(l => l.Text));
        Assert.True(flow.Sheets.Count > 1);
        Assert.Equal(words, text);
    }

    [Fact]
    public void Nothing_is_placed_below_the_last_line_of_a_page_and_no_heading_stands_last() =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[1, 900]).Array[1, 40].Sample(plan =>
        {
            var flow = PdfPrinter.Lay([.. plan.SelectMany(p => p.Item1 < 2 ? [BlockOf(p.Item1, p.Item2), new Paragraph("Text.")] : new[] { BlockOf(p.Item1, p.Item2) })]);
            Assert.All(flow.Sheets.SelectMany(s => s.Lines), l => Assert.True(l.Top < Paper.BottomPt, l.Text));
            foreach (var heading in flow.Headings)
            {
                Assert.Contains(flow.Sheets[heading.Page - 1].Lines, l => l.Top > heading.TopPt + 1 && !flow.Headings.Any(h => h.Text == l.Text || h.Number == l.Text));
            }
        }, iter: 300);

    [Fact]
    public void A_table_that_asks_for_room_does_not_begin_with_a_row_or_two_at_the_foot()
    {
        Block[] above = [.. Enumerable.Repeat(new Paragraph("x"), 26)];
        int FirstPage(int leadRows) => PdfPrinter.Lay([.. above, new Heading(1, "Rules"), Table(60) with { LeadRows = leadRows }]).Headings.Single().Page;

        Assert.Equal((1, 2), (FirstPage(2), FirstPage(16)));
    }

    [Fact]
    public void A_drawing_with_facts_beside_it_keeps_to_one_page_with_its_heading()
    {
        var facts = new FigureBeside(150, 200, (_, _) => { }, [.. Enumerable.Range(1, 12).Select(n => Row.Of($"name {n}", $"value {n}"))], "Caption");
        var flow = PdfPrinter.Lay([.. Enumerable.Repeat(new Paragraph("x"), 30), new Heading(2, "Luminaire"), facts]);

        Assert.Equal(2, flow.Headings.Single().Page);
        Assert.Equal(24, flow.Sheets[1].Lines.Count(l => l.Text.StartsWith("name ", StringComparison.Ordinal) || l.Text.StartsWith("value ", StringComparison.Ordinal)));
        Assert.True(flow.Sheets[1].Lines.Max(l => l.Top) > 150 + Paper.TopPt);
    }

    [Fact]
    public void Headings_are_numbered_by_level()
    {
        var flow = PdfPrinter.Lay([new Heading(1, "A"), new Heading(2, "B"), new Heading(2, "C"), new Heading(1, "D"), new Heading(2, "E"), new Paragraph("x")]);

        Assert.Equal(["1", "1.1", "1.2", "2", "2.1"], flow.Headings.Select(h => h.Number));
    }

    private static TableBlock Table(int rows) => new("Sample", _columns, [.. Enumerable.Range(1, rows).Select(n => Row.Of($"S-{n}", "12.5", "text of a row"))]);

    private static Block BlockOf(int kind, int size) => kind switch
    {
        0 => new Heading(1, $"H {size}"),
        1 => new Heading(2, $"h {size}"),
        2 => Table(1 + (size / 20)),
        3 => new ItemList([.. Enumerable.Repeat("item of a list", 1 + (size / 90))]),
        4 => new Figure(Math.Min(size, 600), (_, _) => { }, "Caption"),
        _ => new Paragraph(string.Join(' ', Enumerable.Repeat("text", size))),
    };
}
