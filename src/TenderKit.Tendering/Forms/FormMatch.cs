using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Intake.Numbers;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Forms;

/// <summary>Shares our items of one kind among the lines of the form of that kind.</summary>
internal static partial class FormMatch
{
    private const double QuantityWeight = 1;

    private static readonly HashSet<string> Rest =
        ["other", "others", "remaining", "rest", "autre", "autres", "reste", "otro", "otros", "otra", "otras", "demas", "resto", "outro", "outros", "outra", "outras", "demais", "restante", "restantes"];

    /// <summary>One line takes all; of several lines each item goes to the line that shares most of its ratings, or its quantity, when one line stands out.</summary>
    public static IEnumerable<(FormLine Line, ImmutableArray<OurItem> Items)> Of(ImmutableArray<FormLine> lines, IReadOnlyList<OurItem> items)
    {
        if (items.Count == 0) return [];
        if (lines.Length == 1) return [(lines[0], [.. items])];
        var others = lines.Where(l => IsRest(l.Description)).ToArray();
        var named = lines.Except(others).ToImmutableArray();
        var rest = others.Length == 1 ? others[0] : null;
        var pairs = items.Select(i => (Item: i, Line: Best(i, named, alone: rest is not null) ?? rest)).Where(p => p.Line is not null);
        return pairs.GroupBy(p => p.Line!).Select(g => (g.Key, g.Select(p => p.Item).ToImmutableArray()));
    }

    /// <summary>The line that fits the item best; null when none fits or two fit alike, since a guess could price the wrong thing.</summary>
    /// <param name="alone">Whether a line must share something to take the item, because another takes the rest.</param>
    private static FormLine? Best(OurItem item, ImmutableArray<FormLine> lines, bool alone)
    {
        var scored = lines.Select(l => (Line: l, Score: Score(item, l))).OrderByDescending(p => p.Score).ToArray();
        if (scored.Length == 0 || (alone && scored[0].Score <= 0)) return null;
        return scored.Length == 1 || scored[0].Score > scored[1].Score ? scored[0].Line : null;
    }

    /// <summary>Whether a line speaks of what the lines before it leave.</summary>
    private static bool IsRest(string text) => HeadingMatch.Words(text).Split(' ').Any(Rest.Contains);

    private static double Score(OurItem item, FormLine line)
    {
        var ours = Ratings(item.Description);
        var asked = Ratings(line.Description);
        var shared = asked.Count == 0 ? 0 : (double)asked.Count(ours.Contains) / asked.Count;
        return shared + (item.Quantity == line.Quantity ? QuantityWeight : 0);
    }

    /// <summary>Numbers with the letters that follow them: "30W", "12.8v", "ip66".</summary>
    internal static HashSet<string> Ratings(string text) =>
        [.. Rating().Matches(Spelling.Folded(text)).Select(m => m.Groups["n"].Value.Replace(',', '.').TrimEnd('.') + m.Groups["u"].Value)];

    [GeneratedRegex(@"(?<n>\d+(?:[.,]\d+)?)\s*(?<u>[a-z]{0,3})")]
    private static partial Regex Rating();
}
