using TenderKit.Documents.Layout;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

public class LineBreakerTests
{
    [Fact]
    public void No_line_is_wider_than_the_measure_and_no_word_is_lost()
    {
        const string text = "The lamp burns from dusk for four hours at full level, then at three tenths, then for the last two hours before dawn at full level again.";
        foreach (var measure in new double[] { 60, 90, 140, 300 })
        {
            var lines = LineBreaker.Break(text, TextStyle.Body, measure);
            Assert.All(lines, l => Assert.True(TextStyle.Body.Width(l) <= measure, l));
            Assert.Equal(text, string.Join(' ', lines));
        }
    }

    [Fact]
    public void A_word_wider_than_the_measure_is_cut_and_all_of_it_kept()
    {
        const string word = "IEC-60364-7-712/ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        var lines = LineBreaker.Break(word, TextStyle.Small, 50);

        Assert.True(lines.Length > 2);
        Assert.All(lines, l => Assert.True(TextStyle.Small.Width(l) <= 50, l));
        Assert.Equal(word, string.Concat(lines));
    }

    [Fact]
    public void A_number_is_not_parted_from_its_unit()
    {
        for (var measure = 40.0; measure < 200; measure += 7)
        {
            foreach (var line in LineBreaker.Break("a load of 768 Wh at 12.8 V and 80 %, 5.9 A", TextStyle.Small, measure)) Assert.DoesNotMatch(@"^(Wh|V|%|A)\b|^%", line);
        }
    }
}
