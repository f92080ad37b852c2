using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace TenderKit.Documents.Languages;

/// <summary>A sentence with numbered holes and its translation.</summary>
internal sealed class Pattern
{
    private readonly ImmutableArray<string> _pieces;
    private readonly ImmutableArray<int> _holes;
    private readonly ImmutableArray<string> _saidPieces;
    private readonly ImmutableArray<int> _saidHoles;

    public Pattern(string english, string said)
    {
        English = english;
        (_pieces, _holes) = Cut(english);
        (_saidPieces, _saidHoles) = Cut(said);
        Letters = _pieces.Sum(p => p.Count(char.IsLetter));
        Words = [.. _pieces.SelectMany((p, i) => WholeWords(p, i > 0, i < _pieces.Length - 1)).Distinct(StringComparer.Ordinal)];
    }

    public static IComparer<Pattern> ByRank { get; } = Comparer<Pattern>.Create((a, b) => a.Rank.CompareTo(b.Rank));

    public string English { get; }

    /// <summary>Letters outside the holes.</summary>
    public int Letters { get; }

    /// <summary>Words that stand in every text it fits.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>Place among all patterns of its list.</summary>
    public int Rank { get; set; }

    public static bool HasHoles(string text) => Cut(text).Holes.Length > 0;

    /// <summary>Numbers of the holes in a text, in order.</summary>
    public static ImmutableArray<int> HolesOf(string text) => Cut(text).Holes;

    public bool Starts(string text) => text.StartsWith(_pieces[0], StringComparison.Ordinal);

    /// <summary>What fills each hole, each as far as the first place where the next piece stands; null where the text does not fit.</summary>
    public string[]? Match(string text)
    {
        var (first, last) = (_pieces[0], _pieces[^1]);
        if (text.Length < first.Length + last.Length || !Starts(text) || !text.EndsWith(last, StringComparison.Ordinal)) return null;
        var filled = new string[_holes.Length];
        var (at, end) = (first.Length, text.Length - last.Length);
        for (var i = 0; i < _holes.Length; i++)
        {
            var isLast = i == _holes.Length - 1;
            var next = isLast ? end : text.IndexOf(_pieces[i + 1], at, end - at, StringComparison.Ordinal);
            if (next < at) return null;
            filled[i] = text[at..next];
            at = next + (isLast ? 0 : _pieces[i + 1].Length);
        }

        return filled;
    }

    /// <summary>The letters right before a hole of the English sentence.</summary>
    public string Before(int hole) => _pieces[hole];

    /// <param name="said">What each hole of the English sentence holds, in its order, said.</param>
    public string Fill(IReadOnlyList<string> said)
    {
        var text = new StringBuilder(_saidPieces[0]);
        for (var i = 0; i < _saidHoles.Length; i++)
        {
            var hole = _holes.IndexOf(_saidHoles[i]);
            text.Append(hole >= 0 ? said[hole] : "").Append(_saidPieces[i + 1]);
        }

        return text.ToString();
    }

    public static IEnumerable<Range> WordRanges(string text)
    {
        for (var i = 0; i < text.Length;)
        {
            var start = i;
            while (i < text.Length && char.IsLetter(text[i])) i++;
            if (i > start) yield return start..i;
            else i++;
        }
    }

    /// <summary>Words of a piece that do not touch a hole.</summary>
    private static IEnumerable<string> WholeWords(string piece, bool holeBefore, bool holeAfter) =>
        WordRanges(piece).Where(r => (r.Start.Value > 0 || !holeBefore) && (r.End.Value < piece.Length || !holeAfter)).Select(r => piece[r]);

    private static (ImmutableArray<string> Pieces, ImmutableArray<int> Holes) Cut(string text)
    {
        var pieces = ImmutableArray.CreateBuilder<string>();
        var holes = ImmutableArray.CreateBuilder<int>();
        var start = 0;
        for (var open = text.IndexOf('{', StringComparison.Ordinal); open >= 0; open = text.IndexOf('{', open + 1))
        {
            var close = text.IndexOf('}', open);
            if (close < 0) break;
            if (!int.TryParse(text.AsSpan(open + 1, close - open - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var hole)) continue;
            pieces.Add(text[start..open]);
            holes.Add(hole);
            start = close + 1;
        }

        pieces.Add(text[start..]);
        return (pieces.ToImmutable(), holes.ToImmutable());
    }
}
