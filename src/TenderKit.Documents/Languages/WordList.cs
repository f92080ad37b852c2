using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Collections.Immutable;
using Sylvan.Data.Csv;

namespace TenderKit.Documents.Languages;

/// <summary>The texts of one language by their English sentence: whole sentences, and sentences with holes <c>{0}</c>.</summary>
internal sealed class WordList
{
    private static readonly ConcurrentDictionary<string, WordList> _loaded = new(StringComparer.Ordinal);
    private readonly FrozenDictionary<string, string> _sentences;
    private readonly FrozenDictionary<string, ImmutableArray<Pattern>> _byWord;
    private readonly ImmutableArray<Pattern> _wordless;

    /// <param name="texts">English and translation; a row without a translation is passed over.</param>
    public WordList(IEnumerable<KeyValuePair<string, string>> texts)
    {
        var rows = texts.Where(t => t.Value.Length > 0).ToList();
        _sentences = rows.Where(r => !Pattern.HasHoles(r.Key)).ToFrozenDictionary(r => r.Key, r => r.Value, StringComparer.Ordinal);
        var patterns = rows.Where(r => Pattern.HasHoles(r.Key)).Select(r => new Pattern(r.Key, r.Value))
            .OrderByDescending(p => p.Letters).ThenBy(p => p.English, StringComparer.Ordinal).ToList();
        for (var i = 0; i < patterns.Count; i++) patterns[i].Rank = i;
        var frequency = patterns.SelectMany(p => p.Words).CountBy(w => w).ToDictionary(StringComparer.Ordinal);
        _byWord = patterns.Where(p => p.Words.Length > 0)
            .GroupBy(p => p.Words.MinBy(w => (frequency[w], w))!)
            .ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray(), StringComparer.Ordinal);
        _wordless = [.. patterns.Where(p => p.Words.Length == 0)];
    }

    /// <summary>The list of a language, read once.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static WordList Of(string language) => _loaded.GetOrAdd(language, l => new WordList(Read(Open(l))));

    /// <summary>Rows of a word file: English, translation; the first row is its heading.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Read(TextReader text)
    {
        using var csv = CsvDataReader.Create(text, new CsvDataReaderOptions { HasHeaders = true, Delimiter = ',', BufferSize = 1 << 20, MaxBufferSize = 1 << 22 });
        while (csv.Read()) yield return new(csv.GetString(0), csv.FieldCount > 1 ? csv.GetString(1) : "");
    }

    public bool Find(string english, out string said) => _sentences.TryGetValue(english, out said!);

    /// <summary>Patterns that may fit a text, those with most letters of their own first.</summary>
    public List<Pattern> Candidates(string text)
    {
        var found = new SortedSet<Pattern>(_wordless, Pattern.ByRank);
        var words = _byWord.GetAlternateLookup<ReadOnlySpan<char>>();
        foreach (var range in Pattern.WordRanges(text))
        {
            if (!words.TryGetValue(text.AsSpan()[range], out var patterns)) continue;
            foreach (var pattern in patterns)
            {
                if (pattern.Starts(text)) found.Add(pattern);
            }
        }

        return [.. found];
    }

    private static StreamReader Open(string language) =>
        new(typeof(WordList).Assembly.GetManifestResourceStream($"words.{language}.csv")
            ?? throw new InvalidOperationException($"the program lacks its words of the language '{language}'"));
}
