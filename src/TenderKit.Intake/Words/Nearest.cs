using F23.StringSimilarity;

namespace TenderKit.Intake.Words;

/// <summary>The known word nearest to one that was written, for messages.</summary>
public static class Nearest
{
    private const double FarthestFraction = 0.5;

    /// <summary>The nearest word, or null when none is within half its length.</summary>
    public static string? Of(string written, IEnumerable<string> known)
    {
        var measure = new NormalizedLevenshtein();
        return known
            .Select(word => (word, distance: measure.Distance(written.ToUpperInvariant(), word.ToUpperInvariant())))
            .Where(p => p.distance <= FarthestFraction)
            .OrderBy(p => p.distance)
            .ThenBy(p => p.word, StringComparer.Ordinal)
            .Select(p => p.word)
            .FirstOrDefault();
    }
}
