using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Schedule;

/// <summary>The design rules of the technical envelope in the order of their table; pages name a rule by its number there.</summary>
internal sealed partial class RuleNumbers
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    public RuleNumbers(TenderDesign design)
    {
        var money = new MoneyFree(design);
        Shown = [.. design.Rules.Where(r => money.Allows(r.Id + " " + r.Where + " " + r.Unit + " " + r.Source))];
        for (var i = 0; i < Shown.Length; i++) _numbers[Shown[i].Id] = i + 1;
    }

    public ImmutableArray<DesignRule> Shown { get; }

    /// <summary>Number of a rule in the table; empty where it has none.</summary>
    public string Of(string id) => _numbers.TryGetValue(id, out var number) ? FormattableString.Invariant($"{number}") : "";

    /// <summary>A basis with "design rule some.id" replaced by the number of the rule; an id without number is left out.</summary>
    public string InWords(string basis) => Mention().Replace(basis.Replace("lighting schedule", "schedule", StringComparison.Ordinal), m =>
    {
        var numbers = m.Groups["id"].Captures.Select(c => _numbers.TryGetValue(c.Value, out var n) ? FormattableString.Invariant($"{n}") : "")
            .Where(n => n.Length > 0).ToImmutableArray();
        return numbers.Length == 0 ? "design rule" : (numbers.Length == 1 ? "rule " : "rules ") + string.Join(", ", numbers);
    });

    [GeneratedRegex(@"design rules? (?<id>[a-z]+(\.[A-Za-z_]+)+)((, | and )(?<id>[a-z]+(\.[A-Za-z_]+)+))*", RegexOptions.CultureInvariant)]
    private static partial Regex Mention();
}
