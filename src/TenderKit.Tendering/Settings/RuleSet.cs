using System.Collections.Frozen;
using System.Collections.Immutable;

namespace TenderKit.Tendering.Settings;

/// <summary>The design rules by id.</summary>
public sealed class RuleSet
{
    private readonly FrozenDictionary<string, DesignRule> _byId;

    public RuleSet(ImmutableArray<DesignRule> rules)
    {
        Rules = rules;
        _byId = rules.ToFrozenDictionary(r => r.Id, r => r, StringComparer.Ordinal);
    }

    /// <summary>All rules in the order of the rules file.</summary>
    public ImmutableArray<DesignRule> Rules { get; }

    /// <summary>Value of a rule, or null when there is none of that id.</summary>
    public double? Find(string id) => _byId.TryGetValue(id, out var rule) ? rule.Value : null;

    /// <summary>Value of a rule.</summary>
    /// <exception cref="KeyNotFoundException">No rule of that id: a bug, since the reader refuses a rules file that lacks one.</exception>
    public double this[string id] => _byId.TryGetValue(id, out var rule) ? rule.Value : throw new KeyNotFoundException($"no design rule '{id}'");
}
