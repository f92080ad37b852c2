using System.Collections.Immutable;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Specification;

/// <summary>How a clause compares what is offered with what it asks.</summary>
public enum ClauseComparison
{
    AtLeast,
    AtMost,
    EqualTo,
    OneOf,
    Contains,
    Yes,
}

/// <summary>One clause of the employer's specification that a property decides.</summary>
/// <param name="Number">Clause number as the employer writes it.</param>
/// <param name="Value">Required value in the property's unit, for numbers.</param>
/// <param name="Words">Required words, for words.</param>
/// <param name="Text">The employer's own text.</param>
public sealed record Clause(string Number, ClauseProperty Property, ClauseComparison Comparison, double? Value, ImmutableArray<string> Words, string Text);

/// <summary>A clause without a property: the bidder answers it in words.</summary>
public sealed record StatementClause(string Number, string Item, string Text);

/// <summary>The employer's clauses.</summary>
public sealed record Clauses(ImmutableArray<Clause> All, ImmutableArray<StatementClause> Statements)
{
    public static readonly Clauses None = new([], []);

    /// <summary>The reliability asked for by the tender and by the clauses, whichever is harder.</summary>
    public ReliabilityTarget Harder(ReliabilityTarget asked)
    {
        foreach (var clause in All)
        {
            if (clause.Value is not { } value) continue;
            if (clause.Property == ClauseProperties.Autonomy && clause.Comparison == ClauseComparison.AtLeast)
                asked = asked with { AutonomyNights = Math.Max(asked.AutonomyNights, value) };
            if (clause.Property == ClauseProperties.DarkNights && clause.Comparison == ClauseComparison.AtMost)
                asked = asked with { DarkNightsPerYear = Math.Min(asked.DarkNightsPerYear, value) };
        }

        return asked;
    }
}
