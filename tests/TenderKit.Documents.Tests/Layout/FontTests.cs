using System.Security.Cryptography;
using TenderKit.Documents.Layout;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

public class FontTests
{
    /// <summary>The lock file does not hold the font package, so its files are pinned here.</summary>
    [Theory]
    [InlineData(Fonts.RegularFile, "41ab0f707a2bfab8133ccdfcdab52282f5f79e5751f43a264805451c7bb95fb8")]
    [InlineData(Fonts.StrongFile, "e8cbc2b88bc4268237ff5e251776d3c54edcb14e015a9e66e4883bde4b55f13f")]
    public void The_font_files_are_the_ones_expected(string file, string sha256) =>
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(InterFiles.Bytes(file))));

    [Theory]
    [InlineData("²³°×≥≤–−·µΩ€éñçÉÑÇãõøßğışŁőșțẹọ")]
    [InlineData("ΑΒΓαβγЖдиЯ")]
    public void The_font_draws_what_the_documents_write(string characters)
    {
        foreach (var rune in characters.EnumerateRunes())
        {
            Assert.True(Fonts.Face(false).Draws(rune.Value), rune.ToString());
            Assert.True(Fonts.Face(true).Draws(rune.Value), rune.ToString());
        }

        Assert.Equal(characters.Normalize(), Fonts.Drawable(characters));
    }

    [Theory]
    [InlineData("fi\u0000le\tname", "fi le name")]
    [InlineData("\u5e02\u5834", "??")]
    [InlineData("\u3315\u30a0 x", "?? x")]
    [InlineData("\u2075\u2474", "\u2075(1)")]
    [InlineData("a\u200fb", "ab")]
    public void A_character_the_font_lacks_becomes_plain_text(string text, string expected) => Assert.Equal(expected, Fonts.Drawable(text));

    [Fact]
    public void Digits_are_equally_wide_so_that_columns_of_numbers_stand_straight()
    {
        foreach (var strong in new[] { false, true })
        {
            var widths = "0123456789".Select(d => Fonts.Face(strong).Width(d.ToString(), 10)).Distinct().ToArray();
            Assert.True(widths.Min() > 5 && widths.Max() < 1.005 * widths.Min(), string.Join(' ', widths));
        }
    }

    [Fact]
    public void Only_the_digits_are_changed_in_the_copy_of_the_font()
    {
        var before = new FontFace(InterFiles.Bytes(Fonts.RegularFile)).Glyphs;
        var after = Fonts.Face(false).Glyphs;
        var changed = before.Where(g => g.Key < 0xFFFF && after[g.Key] != g.Value).Select(g => (char)g.Key).Order();

        Assert.Equal("0123456789", string.Concat(changed));
    }
}
