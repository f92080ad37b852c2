using TenderKit.Documents.Languages;
using TenderKit.Words;
using Xunit;

namespace TenderKit.Documents.Tests.Languages;

/// <summary>The resource files against the texts of the sources: nothing missing, nothing left over, the same holes.</summary>
public class WordFileTests
{
    private static readonly Lazy<IReadOnlyList<SourceText>> _texts = new(() => SourceTexts.Of(Root()));

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void Every_text_has_a_translation(string language)
    {
        var known = Rows(language).Where(r => r.Translation.Length > 0).Select(r => r.English).ToHashSet(StringComparer.Ordinal);
        var missing = _texts.Value.Where(t => !known.Contains(t.English)).ToList();
        Assert.True(missing.Count == 0, $"{missing.Count} of {_texts.Value.Count} texts have no translation in {language}:\n" + string.Join('\n', missing.Select(m => $"{m.File}:{m.Line}: {m.English}")));
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void No_row_stands_for_a_text_that_is_gone(string language)
    {
        var texts = _texts.Value.Select(t => t.English).ToHashSet(StringComparer.Ordinal);
        var gone = Rows(language).Select(r => r.English).Where(e => !texts.Contains(e)).ToList();
        Assert.True(gone.Count == 0, $"no source holds these rows of {language} any more:\n" + string.Join('\n', gone));
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void Each_hole_stands_once_on_both_sides(string language)
    {
        var wrong = Rows(language).Where(r => r.Translation.Length > 0 && !Pattern.HolesOf(r.English).Order().SequenceEqual(Pattern.HolesOf(r.Translation).Order()))
            .Select(r => r.English + " | " + r.Translation).ToList();
        Assert.True(wrong.Count == 0, $"the holes differ in {language}:\n" + string.Join('\n', wrong));
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void Rows_are_sorted_and_stand_once_and_the_file_opens_with_its_accents(string language)
    {
        var rows = Rows(language).Select(r => r.English).ToList();
        Assert.Equal(rows.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), rows);
        Assert.Equal([0xEF, 0xBB, 0xBF], File.ReadAllBytes(WordFile.PathOf(Root(), language))[..3]);
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("pt")]
    public void The_program_reads_the_file_as_the_helper_does(string language)
    {
        using var text = new StreamReader(WordFile.PathOf(Root(), language));
        Assert.Equal(Rows(language), WordList.Read(text).Select(p => (p.Key, p.Value)));
    }

    private static List<(string English, string Translation)> Rows(string language) => WordFile.Read(WordFile.PathOf(Root(), language));

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("TenderKit.sln was not found above the tests");
    }
}
