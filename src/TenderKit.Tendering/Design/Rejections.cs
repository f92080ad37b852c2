using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Collects why candidates of one stage were refused, so that "no part fits" can name the nearest miss: the candidate whose worst
/// failing check is least short.
/// </summary>
public sealed class Rejections
{
    private readonly CheckList _numbers = new(false);
    private (string Candidate, Check Check, int Step, int FailedCount, double Shortfall)? _nearest;

    /// <summary>Whether all checks comply; a failing candidate is remembered if it is nearer than those before.</summary>
    /// <param name="candidate">Makes the candidate's name, asked for only when it is remembered.</param>
    public bool Accept(Func<string> candidate, ImmutableArray<Check> checks)
    {
        Check? worst = null;
        var failed = 0;
        foreach (var check in checks)
        {
            if (check.Complies) continue;
            failed++;
            if (worst is null || Shortfall(check) > Shortfall(worst)) worst = check;
        }

        if (worst is null) return true;
        Remember(candidate, worst, failed);
        return false;
    }

    /// <summary>The same with checks that are made as numbers, and again as records only when the candidate is the nearest miss so far.</summary>
    /// <param name="checks">Adds the checks of the candidate to a list.</param>
    public bool Accept(Func<string> candidate, Action<CheckList> checks)
    {
        checks(_numbers.Clear());
        if (_numbers.Complies) return true;
        if (_nearest is { } n && (0, _numbers.FailedCount, _numbers.WorstShortfall).CompareTo(Rank(n)) >= 0) return false;
        return Accept(candidate, CheckList.Record(checks));
    }

    /// <summary>Takes over the nearest miss of another collection, if it came further or is nearer than its own.</summary>
    /// <param name="step">How far its candidates came: one that passed earlier steps tells more than one that did not; 0 for what is refused here.</param>
    public void Take(Rejections other, int step)
    {
        if (other._nearest is not { } theirs) return;
        theirs = theirs with { Step = step };
        if (_nearest is { } n && Rank(theirs).CompareTo(Rank(n)) >= 0) return;
        _nearest = theirs;
    }

    private static (int, int, double) Rank((string Candidate, Check Check, int Step, int FailedCount, double Shortfall) miss) => (-miss.Step, miss.FailedCount, miss.Shortfall);

    /// <summary>Whether anything was refused.</summary>
    public bool HasAny => _nearest is not null;

    /// <summary>The nearest miss in words, or a plain statement that nothing was there to try.</summary>
    public string NearestMiss =>
        _nearest is { } n
            ? $"nearest miss {n.Candidate}: {n.Check.Item.ToLowerInvariant()}, {n.Check.Property} {n.Check.OfferedText}, required {n.Check.RequiredText} ({n.Check.Basis})"
            : "the catalogue holds no such part";

    private void Remember(Func<string> candidate, Check worst, int failed)
    {
        var shortfall = Shortfall(worst);
        if (_nearest is { } n && (0, failed, shortfall).CompareTo(Rank(n)) >= 0) return;
        _nearest = (candidate(), worst, 0, failed, shortfall);
    }

    private static double Shortfall(Check check) => -(check.MarginFraction ?? -1);
}
