using System.Collections.Frozen;
using System.Collections.Immutable;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Languages;

/// <summary>
/// Says the texts of one document in its language. A text is looked up by its English sentence where it meets the page: the whole
/// sentence; else a sentence with holes, most letters first, its holes said in turn; else piece by piece; else it stays as it is and
/// is kept as missing. What the user wrote is never said. English is the identity.
/// </summary>
public sealed class Wording
{
    private const int DeepestHole = 8;
    private const int MostCandidates = 24;
    private const int LongestText = 4000;

    /// <summary>Letters from which a pattern may hold what nobody knows; a shorter one ("{0} of {1}") would cut any sentence.</summary>
    private const int StrongPattern = 8;

    private static readonly string[] _joints = ["\n", ". ", "; ", ": ", ", ", " (", " · ", " – ", " and ", " or "];

    private static readonly FrozenSet<string> _beforeCodes = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        "clause", "clauses", "table", "section", "sections", "figure", "equation", "equations", "annex", "version", "edition", "lot", "page", "item", "items", "part", "parts",
        "kit", "row", "sheet", "site", "rule", "form", "bill", "reference", "EN", "IEC", "ISO", "CIE", "IES", "TR");

    [ThreadStatic]
    private static Wording? _current;

    private readonly WordList? _words;
    private readonly FrozenSet<string> _echoed;
    private readonly Dictionary<string, Said> _cache = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _missing = new(StringComparer.Ordinal);

    private Wording(string language, WordList? words, IEnumerable<string> echoed)
    {
        Language = language;
        _words = words;
        _echoed = words is null ? [] : echoed.Where(e => e.Any(char.IsLetter)).ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>English, in which every text is written.</summary>
    public static Wording English { get; } = new(TenderLanguages.English, null, []);

    public string Language { get; }

    /// <summary>Texts, or parts of them, that the language does not know, in order.</summary>
    public ImmutableArray<string> Missing => [.. _missing];

    /// <summary>The wording of the document a thread is laying out.</summary>
    internal static Wording Current => _current ?? English;

    /// <param name="language">One of <see cref="TenderLanguages.All"/>.</param>
    /// <param name="echoed">Texts of the user's, printed as they stand.</param>
    /// <exception cref="ArgumentException">No such language.</exception>
    public static Wording In(string language, IEnumerable<string>? echoed = null)
    {
        if (language == English.Language) return English;
        if (!TenderLanguages.All.Contains(language)) throw new ArgumentException(TenderLanguages.Unknown(language), nameof(language));
        return new Wording(language, WordList.Of(language), echoed ?? []);
    }

    internal static Wording With(string language, WordList words, IEnumerable<string> echoed) => new(language, words, echoed);

    /// <summary>Makes this the wording of what the thread lays out until the scope is closed.</summary>
    internal Scope Enter()
    {
        var scope = new Scope(_current);
        _current = this;
        return scope;
    }

    /// <summary>The text in this language.</summary>
    public string Say(string text)
    {
        if (Verbatim.IsMarked(text)) return Verbatim.Unmarked(text);
        if (_words is null) return text;
        var said = Say(text, 0);
        if (said.Unsaid.IsEmpty) return said.Text;
        lock (_missing) _missing.UnionWith(said.Unsaid);
        return said.Text;
    }

    /// <summary>A number format with its quoted words said.</summary>
    public string SayFormat(string format) =>
        _words is null || !format.Contains('"', StringComparison.Ordinal) ? format
            : string.Join('"', format.Split('"').Select((part, i) => i % 2 == 1 ? Say(part) : part));

    private Said Say(string text, int depth)
    {
        if (text.Length == 0 || text.Length > LongestText) return new Said(text, []);
        lock (_cache)
        {
            if (_cache.TryGetValue(text, out var known)) return known;
        }

        var said = Trimmed(text, depth);
        if (depth <= DeepestHole)
        {
            lock (_cache) _cache[text] = said;
        }

        return said;
    }

    private Said Trimmed(string text, int depth)
    {
        var core = text.Trim(' ');
        if (core.Length == 0 || core.Length == text.Length) return Made(text, depth);
        return Around(text, core, Say(core, depth));
    }

    /// <summary>A text without the marks that join it to what stands before and after it.</summary>
    private static string Inner(string text) => text.Trim(' ', ',', ';', ':');

    private static Said Around(string text, string core, Said said)
    {
        var start = text.IndexOf(core, StringComparison.Ordinal);
        return said with { Text = text[..start] + said.Text + text[(start + core.Length)..] };
    }

    private Said Made(string text, int depth)
    {
        if (_echoed.Contains(text) && (text.Contains(' ', StringComparison.Ordinal) || !_words!.Find(text, out _))) return new Said(text, []);
        if (Whole(text) is { } whole) return new Said(whole, []);
        if (NumberWords.Say(text) is { } number) return new Said(number, []);
        if (!HasWords(text) || text[0] == '#') return new Said(text, []);
        if (Calendar.Cut(text) is { } date) return new Said(DateOf(date), []);
        var best = new Said(text, [text]);
        if (depth > DeepestHole) return best;
        foreach (var way in Ways(text, depth))
        {
            if (way.Left < best.Left) best = way;
            if (best.Left == 0) break;
        }

        return best;
    }

    private IEnumerable<Said> Ways(string text, int depth)
    {
        foreach (var pattern in _words!.Candidates(text).Take(MostCandidates))
        {
            if (pattern.Match(text) is { } filled) yield return Filled(pattern, text, filled, depth);
        }

        if (NumberWords.Lead(text) is (var number, var after))
        {
            var counted = Say(after, depth + 1);
            yield return counted with { Text = number + " " + counted.Text };
        }

        if (Inner(text) is { Length: > 0 } core && core.Length < text.Length) yield return Around(text, core, Say(core, depth + 1));
        if (char.IsUpper(text[0]))
        {
            var lower = Say(char.ToLowerInvariant(text[0]) + text[1..], depth + 1);
            yield return lower with { Text = char.ToUpperInvariant(lower.Text[0]) + lower.Text[1..] };
        }

        foreach (var at in new[] { text.IndexOf(". ", StringComparison.Ordinal), text.LastIndexOf(". ", StringComparison.Ordinal) }.Distinct())
        {
            if (at >= 0) yield return Sentences(text[..(at + 1)], text[(at + 2)..], depth);
        }

        foreach (var joint in _joints)
        {
            if (text.Contains(joint, StringComparison.Ordinal)) yield return Pieces(text, joint, depth);
        }
    }

    private Said Filled(Pattern pattern, string text, string[] filled, int depth)
    {
        var holes = new string[filled.Length];
        var unsaid = ImmutableArray<string>.Empty;
        for (var i = 0; i < filled.Length; i++)
        {
            var said = EndsInCodeWord(pattern.Before(i)) && NumberWords.Say(filled[i]) is not null ? new Said(filled[i], []) : Say(filled[i], depth + 1);
            holes[i] = said.Text;
            unsaid = unsaid.AddRange(said.Unsaid);
        }

        return unsaid.IsEmpty || pattern.Letters >= StrongPattern ? new Said(pattern.Fill(holes), unsaid) : new Said(text, [text]);
    }

    /// <summary>A text in two, each with its full stop: a key may hold several sentences.</summary>
    private Said Sentences(string first, string rest, int depth)
    {
        var (said, after) = (Say(first, depth + 1), Say(rest, depth + 1));
        return new Said(said.Text + " " + after.Text, said.Unsaid.AddRange(after.Unsaid));
    }

    private Said Pieces(string text, string joint, int depth)
    {
        var said = text.Split(joint).Select((p, i) => joint == " (" && i > 0 ? Bracketed(p, depth) : Say(p, depth + 1)).ToList();
        if (joint is " and " or " or " && said.Any(s => !s.Unsaid.IsEmpty)) return new Said(text, [text]);
        var spoken = joint is " and " or " or " ? " " + (Whole(joint.Trim()) ?? joint.Trim()) + " " : joint;
        return new Said(string.Join(spoken, said.Select(s => s.Text)), [.. said.SelectMany(s => s.Unsaid)]);
    }

    /// <summary>What stands between an opening bracket, already taken off, and its closing one, and what follows.</summary>
    private Said Bracketed(string text, int depth)
    {
        var whole = "(" + text;
        if (Whole(whole) is { } said) return new Said(said[1..], []);
        if (depth < DeepestHole && Say(whole, depth + 1) is { Unsaid.IsEmpty: true } filled) return new Said(filled.Text[1..], []);
        var close = text.LastIndexOf(')');
        if (close < 0) return Say(text, depth + 1);
        var (inside, after) = (Say(text[..close], depth + 1), Say(text[(close + 1)..], depth + 1));
        return new Said(inside.Text + ")" + after.Text, inside.Unsaid.AddRange(after.Unsaid));
    }

    /// <summary>A whole sentence, also where only its full stop or the case of its first letter differs.</summary>
    private string? Whole(string text) => Cased(text) ?? (text[^1] is '.' or ':' or ',' or ';' ? Cased(text[..^1]) is { } open ? open + text[^1] : null
        : Cased(text + ".") is { } closed ? closed.TrimEnd('.') : null);

    private string? Cased(string text)
    {
        if (text.Length == 0) return null;
        if (_words!.Find(text, out var said)) return said;
        var other = char.IsUpper(text[0]) ? char.ToLowerInvariant(text[0]) : char.ToUpperInvariant(text[0]);
        if (other == text[0] || !_words.Find(other + text[1..], out said) || said.Length == 0) return null;
        return (char.IsUpper(text[0]) ? char.ToUpperInvariant(said[0]) : char.ToLowerInvariant(said[0])) + said[1..];
    }

    private string DateOf((string Day, string Month, string Year) date)
    {
        var month = Cased(date.Month) ?? date.Month;
        return _words!.Candidates(Calendar.Keyed(date.Day, date.Month, date.Year)).FirstOrDefault(p => p.English == Calendar.DateKey) is { } order
            ? order.Fill([date.Day, month, date.Year])
            : $"{date.Day} {month} {date.Year}";
    }

    private static bool EndsInCodeWord(string piece)
    {
        var word = piece.TrimEnd(' ', '.');
        return _beforeCodes.Contains(word[(word.LastIndexOfAny([' ', '(', ',']) + 1)..]);
    }

    /// <summary>Whether there is anything to say: a word of two letters or more that is no unit and no code.</summary>
    private static bool HasWords(string text) => Pattern.WordRanges(text).Any(r => IsWord(text, r));

    private static bool IsWord(string text, Range range)
    {
        var word = text[range];
        if (word.Length < 2 || NumberWords.IsUnit(word) || word.Skip(1).All(char.IsUpper)) return false;
        var (start, end) = (range.Start.Value, range.End.Value);
        return (start == 0 || !char.IsAsciiDigit(text[start - 1])) && (end == text.Length || !char.IsAsciiDigit(text[end]));
    }

    internal readonly struct Scope(Wording? before) : IDisposable
    {
        public void Dispose() => _current = before;
    }

    private readonly record struct Said(string Text, ImmutableArray<string> Unsaid)
    {
        /// <summary>Letters left in English.</summary>
        public int Left => Unsaid.Sum(u => u.Count(char.IsLetter));
    }
}
