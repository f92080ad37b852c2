using System.Text.RegularExpressions;
using F23.StringSimilarity;
using TenderKit.Intake.Numbers;

namespace TenderKit.Tendering.Columns;

/// <summary>How well one heading fits one meaning.</summary>
/// <param name="UnknownUnit">Words in brackets that are no unit of the meaning's kind.</param>
public readonly record struct HeadingFit(ColumnMeaning Meaning, double Score, string? Unit, string? UnknownUnit);

/// <summary>Compares headings with synonyms: same words first, then likeness in spelling, then words contained.</summary>
public static partial class HeadingMatch
{
    /// <summary>Least likeness at which a heading is understood.</summary>
    public const double LeastScore = 0.7;

    private const double LeastSpellingLikeness = 0.8;

    /// <summary>Score of a synonym whose words all stand in a longer heading, before the share of words is added.</summary>
    private const double ContainedScore = 0.65;

    private const double ContainedShare = 0.2;

    /// <summary>A unit of another kind speaks against a meaning: Spanish "Longitud (m)" is a length, "Longitud" a longitude.</summary>
    private const double ForeignUnitLoss = 0.05;

    private static readonly OptimalStringAlignment Edits = new();

    /// <summary>The best fit of a heading for every meaning that fits at all, best first.</summary>
    public static IReadOnlyList<HeadingFit> Fits(string heading, IReadOnlyList<ColumnMeaning> meanings) =>
        [.. meanings.Select(m => Fit(heading, m)).Where(f => f.Score >= LeastScore).OrderByDescending(f => f.Score)];

    /// <summary>Words of a heading: lower case, no accents, no punctuation.</summary>
    public static string Words(string text) => NotWord().Replace(Spelling.Folded(text), " ").Trim();

    private static HeadingFit Fit(string heading, ColumnMeaning meaning)
    {
        var best = new HeadingFit(meaning, 0, null, null);
        foreach (var (words, unit, isBracket) in Readings(heading))
        {
            var known = unit is not null && meaning.Kind is { } kind && UnitSpellings.IsKnown(kind, unit);
            if (unit is not null && !known && !isBracket) continue;
            var score = meaning.Words.Max(s => Score(words, s));
            if (unit is not null && !known && meaning.Kind is not null && IsForeign(unit)) score -= ForeignUnitLoss;
            if (score > best.Score) best = new(meaning, score, known ? unit : null, known || meaning.Kind is null ? null : unit);
        }

        return best;
    }

    // the letters of the hemispheres are no units, though W is also the watt
    private static bool IsForeign(string unit) =>
        unit.ToUpperInvariant() is not ("N" or "S" or "E" or "W" or "O") && Enum.GetValues<QuantityKind>().Any(k => UnitSpellings.IsKnown(k, unit));

    // "Length (m)": without the bracket, with its content as unit; "Length m", "Longueur en m": without the last word;
    // "Average (maintained) lux": as it stands
    private static IEnumerable<(string Words, string? Unit, bool IsBracket)> Readings(string heading)
    {
        heading = heading.Replace('_', ' ').Trim();
        var bracket = Bracket().Match(heading);
        if (bracket.Success) yield return (Words(Bracket().Replace(heading, " ")), bracket.Groups["in"].Value.Trim(), true);
        yield return (Words(heading), null, false);
        // survey forms write the group before the question: site/road width m
        if (Grouped().Match(heading) is { Success: true } grouped)
        {
            foreach (var reading in Readings(grouped.Groups["last"].Value)) yield return reading;
        }

        var last = LastWord().Match(heading);
        if (!bracket.Success && last.Success) yield return (Words(last.Groups["before"].Value), last.Groups["unit"].Value, false);
    }

    private static double Score(string heading, string synonym)
    {
        if (heading == synonym) return 1;
        if (heading.Length == 0) return 0;
        var (shorter, longer) = (Math.Min(heading.Length, synonym.Length), Math.Max(heading.Length, synonym.Length));
        if (shorter >= 4 && shorter >= LeastSpellingLikeness * longer
            && 1 - (Edits.Distance(heading, synonym) / longer) is >= LeastSpellingLikeness and var likeness) return likeness;
        var (words, wanted) = (heading.Split(' '), synonym.Split(' '));
        if (synonym.Length < 5 || !wanted.All(words.Contains)) return 0;
        return ContainedScore + (ContainedShare * wanted.Length / words.Length);
    }

    [GeneratedRegex(@"(?:[^\p{L}\p{Nd}%]|[\u00BA\u00AA])+")]
    private static partial Regex NotWord();

    [GeneratedRegex(@"[(\[{](?<in>[^)\]}]*)[)\]}]")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"^(?:[^/]{2,}/)+(?<last>[^/()]{2,})$")]
    private static partial Regex Grouped();

    [GeneratedRegex(@"^(?<before>.*?)(?:[\s,;:/-]+(?:en|in|em))?[\s,;:/-]+(?<unit>[^\s,;:]+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LastWord();
}
