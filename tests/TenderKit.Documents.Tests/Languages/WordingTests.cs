using TenderKit.Documents.Languages;
using Xunit;

namespace TenderKit.Documents.Tests.Languages;

/// <summary>How a text is found by its English sentence, on a few words of French of the test's own.</summary>
public class WordingTests
{
    private static readonly WordList _words = new(new Dictionary<string, string>
    {
        ["Poles"] = "Poteaux",
        ["poles"] = "poteaux",
        ["light"] = "lumière",
        ["the end"] = "la fin",
        ["{0} poles at {1}"] = "{0} poteaux à {1}",
        ["{0} at {1}"] = "{0} près de {1}",
        ["spacing {0}"] = "espacement {0}",
        ["{1} before {0}"] = "{0} après {1}",
        ["clause {0} asks for {1}"] = "la clause {0} demande {1}",
        ["March"] = "mars",
        [Calendar.DateKey] = "{0} {1} {2}",
        ["not stated"] = "non indiqué",
        ["and"] = "et",
    });

    [Theory]
    [InlineData("Poles", "Poteaux")]
    [InlineData("poles:", "poteaux:")]
    [InlineData("Light", "Lumière")]
    [InlineData("12 poles at Market Square", "12 poteaux à Market Square")]
    [InlineData("light at the end", "lumière près de la fin")]
    [InlineData("poles before light", "lumière après poteaux")]
    [InlineData("Poles, spacing 12.5 m; not stated", "Poteaux, espacement 12,5 m; non indiqué")]
    [InlineData("poles (not stated)", "poteaux (non indiqué)")]
    [InlineData("poles and light", "poteaux et lumière")]
    [InlineData("3 poles", "3 poteaux")]
    [InlineData("5 March 2027", "5 mars 2027")]
    [InlineData("clause 4.2 asks for 1,250.5 Wh", "la clause 4.2 demande 1\u00A0250,5 Wh")]
    [InlineData("2027-02-15", "2027-02-15")]
    [InlineData("EN 13201-2:2015", "EN 13201-2:2015")]
    [InlineData("", "")]
    public void Says_what_the_language_knows(string english, string said)
    {
        var wording = Wording.With("fr", _words, ["Market Square"]);
        Assert.Equal(said, wording.Say(english));
        Assert.Empty(wording.Missing);
    }

    [Theory]
    [InlineData("1,234.5", "1\u00A0234,5")]
    [InlineData("-0.25 m", "-0,25 m")]
    [InlineData("2 × 2.5 mm²", "2 × 2,5 mm²")]
    [InlineData("≥ 7.5 lx", "≥ 7,5 lx")]
    [InlineData("98.5%", "98,5%")]
    [InlineData("1.2.3", null)]
    [InlineData("1,23", null)]
    [InlineData("MOD-1.5", null)]
    public void Numbers_take_a_decimal_comma_only_where_they_stand_alone(string english, string? said) => Assert.Equal(said, NumberWords.Say(english));

    [Fact]
    public void What_is_not_known_stays_and_is_kept_as_missing()
    {
        var wording = Wording.With("fr", _words, []);
        Assert.Equal("poteaux, wholly unknown words", wording.Say("poles, wholly unknown words"));
        Assert.Equal("wholly unknown words", Assert.Single(wording.Missing));
    }

    [Fact]
    public void What_the_user_wrote_is_never_said()
    {
        var wording = Wording.With("fr", _words, ["the end", "light at the end"]);
        Assert.Equal("the end", wording.Say("the end"));
        Assert.Equal("light at the end", wording.Say("light at the end"));
        Assert.Equal("poles", wording.Say(Verbatim.Of("poles")));
        Assert.Equal("poles", Wording.English.Say(Verbatim.Of("poles")));
    }

    [Fact]
    public void Words_of_a_number_format_are_said() =>
        Assert.Equal("0 \"poteaux\"", Wording.With("fr", _words, []).SayFormat("0 \"poles\""));

    [Fact]
    public void A_hostile_text_costs_no_more_than_its_length()
    {
        var wording = Wording.With("fr", _words, []);
        var text = string.Concat(Enumerable.Repeat("poles at poles, and (at: ", 150));
        var watch = System.Diagnostics.Stopwatch.StartNew();
        wording.Say(text);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(2), $"{watch.Elapsed.TotalSeconds:0.0} s");
    }

    [Fact]
    public void An_unknown_language_is_refused_with_the_four_known()
    {
        var refused = Assert.Throws<ArgumentException>(() => Wording.In("de"));
        Assert.Contains("en (English), fr (French), es (Spanish) or pt (Portuguese)", refused.Message, StringComparison.Ordinal);
    }
}
