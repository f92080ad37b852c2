using System.Text;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

/// <summary>The tags of a written file, read back by another program.</summary>
[Collection("world")]
public class TagTests
{
    [SkippableFact]
    public void Headings_tables_rows_and_drawings_of_the_schedule_are_tagged_in_the_order_of_reading()
    {
        var document = TechnicalSchedule.Document(HandMadeDesign.Small());
        var flow = PdfPrinter.Lay(document.Blocks);
        var lines = PdfReader.Structure(PdfPrinter.Print(document)).Split('\n').Select(l => l.Trim()).ToList();
        int Count(string tag) => lines.Count(l => l == tag || l.StartsWith(tag + " ", StringComparison.Ordinal) || l.StartsWith(tag + ":", StringComparison.Ordinal));

        Assert.Equal(flow.Headings.Count(h => h.Level == 1) + 1, Count("H1"));
        Assert.Equal(flow.Headings.Count(h => h.Level == 2), Count("H2"));
        Assert.Equal(flow.Headings.Count(h => h.Level == 3), Count("H3"));
        Assert.Equal(document.Blocks.OfType<TableBlock>().Count() + document.Blocks.OfType<FigureBeside>().Count(), Count("Table"));
        Assert.Equal(document.Blocks.Count(b => b is Figure or FigureBeside), Count("Figure"));
        Assert.True(Count("TR") >= document.Blocks.OfType<TableBlock>().Sum(t => t.Rows.Length), "rows are missing");
        var headed = lines.Select((l, i) => (Line: l, Next: string.Concat(lines.Skip(i + 1).TakeWhile(n => n.StartsWith('"')))))
            .Where(p => p.Line.StartsWith("H1", StringComparison.Ordinal) || p.Line.StartsWith("H2", StringComparison.Ordinal) || p.Line.StartsWith("H3", StringComparison.Ordinal))
            .Select(p => p.Next.Replace("\"", "", StringComparison.Ordinal)).Skip(1).ToList();
        Assert.Equal(flow.Headings.Count, headed.Count);
        Assert.All(flow.Headings.Zip(headed), p => Assert.EndsWith(Plain(p.First.Text), Plain(p.Second), StringComparison.Ordinal));
    }

    private static string Plain(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    [Fact]
    public void The_file_names_its_language_gives_every_drawing_words_and_claims_no_conformance()
    {
        var document = TechnicalSchedule.Document(HandMadeDesign.Small());
        var text = Encoding.Latin1.GetString(PdfPrinter.Print(document));

        Assert.Contains("/Lang(en)", text, StringComparison.Ordinal);
        Assert.Contains("/MarkInfo", text, StringComparison.Ordinal);
        Assert.DoesNotContain("pdfuaid", text, StringComparison.Ordinal);
        Assert.DoesNotContain("pdfaid", text, StringComparison.Ordinal);
        var drawings = PdfPrinter.Lay(document.Blocks).Sheets.SelectMany(s => s.Marks).Where(m => m.Tag.Kind == TagKind.Figure).ToList();
        Assert.NotEmpty(drawings);
        Assert.All(drawings, d => Assert.True(d.Tag.Alternative.Length > 20 && d.Tag.Area.Width > 0));
    }

    [SkippableFact]
    public void What_goes_on_over_a_page_stays_one_element_and_an_empty_cell_stays_a_cell()
    {
        var row = Row.Of("first", "", "third");
        var document = new PaperDocument("t", "a", "s", "r", null, [new Paragraph(string.Join(' ', Enumerable.Repeat("a long paragraph", 900))), new TableBlock("Cells", [new("One"), new("Two"), new("Three")], [row, row])]);
        Assert.True(PdfPrinter.Lay(document.Blocks).Sheets.Count > 1);
        var lines = PdfReader.Structure(PdfPrinter.Print(document)).Split('\n').Select(l => l.Trim()).ToList();

        Assert.Equal(1, lines.Count(l => l.StartsWith("P (", StringComparison.Ordinal) || l == "P"));
        Assert.Equal(6, lines.Count(l => l.StartsWith("TD", StringComparison.Ordinal)));
        Assert.Equal(3, lines.Count(l => l.StartsWith("TH", StringComparison.Ordinal)));
    }
}
