using System.Text;
using TenderKit.Documents.Layout;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

[Collection("world")]
public class EqualBytesTests
{
    [Fact]
    public void Two_runs_write_equal_bytes_under_every_culture_and_time_zone()
    {
        var first = PdfPrinter.Print(Sample());

        Assert.All(SameEverywhere.Run(() => PdfPrinter.Print(Sample())), bytes => Assert.Equal(first, bytes));
    }

    [Fact]
    public void The_only_date_in_the_file_is_the_date_of_issue()
    {
        var text = Encoding.Latin1.GetString(PdfPrinter.Print(Sample()));

        Assert.Equal(["20270315120000+00'00'"], Matches(text, @"(?<=D:)\d{14}[^)]*").Distinct());
        Assert.Equal(["2027-03-15T12:00:00Z"], Matches(text, @"(?<=<xmp:\w+Date>)[^<]+").Distinct());
    }

    [Fact]
    public void Another_text_gives_another_identifier()
    {
        var identifiers = new[] { Sample(), Sample() with { Title = "Other" } }
            .Select(d => Matches(Encoding.Latin1.GetString(PdfPrinter.Print(d)), @"/ID\[[^\]]*\]").Single());

        Assert.Equal(2, identifiers.Distinct().Count());
    }

    private static IEnumerable<string> Matches(string text, string pattern) => System.Text.RegularExpressions.Regex.Matches(text, pattern).Select(m => m.Value);

    private static PaperDocument Sample()
    {
        Block[] body = [new Heading(1, "Première"), new Paragraph("Text ² ≥ –"), new Heading(2, "İki"), new Paragraph("1,234.5")];
        return new PaperDocument("Title", "Author", "Subject", "Running", new DateOnly(2027, 3, 15), [Contents.For(body), .. body]);
    }
}
