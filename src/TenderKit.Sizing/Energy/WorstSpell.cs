using System.Collections.Immutable;

namespace TenderKit.Sizing.Energy;

/// <summary>
/// The worst 30 consecutive days simulated: those with the most lamp energy not served; where nothing was missed, those with the lowest mean of the
/// days' least states of charge; the first of equals.
/// </summary>
/// <param name="FirstDayOfYear">First day, 1 to 365.</param>
/// <param name="Year">Its year in the sequence, 1-based.</param>
/// <param name="States">Hourly state of charge, fraction of the capacity at end of life; empty where nothing was simulated.</param>
/// <param name="DisconnectByDay">State of charge at which the lamp is disconnected, by day, fraction: it rises with cold.</param>
/// <param name="ReconnectByDay">State of charge at which it comes back after a disconnect, by day, fraction.</param>
public sealed record WorstSpell(
    int FirstDayOfYear, int Year, ImmutableArray<double> States, ImmutableArray<double> DisconnectByDay, ImmutableArray<double> ReconnectByDay)
{
    /// <summary>Length of the spell, days.</summary>
    public const int DayCount = 30;

    public static readonly WorstSpell None = new(1, 1, [], [], []);
}

/// <summary>
/// How long the battery takes to recover. A recovery belongs to a spell that begins on a day with dark hours and ends on the first day after it
/// that reaches full charge; it is counted in days from the day the store was lowest in that spell (the last of equals) to that full charge.
/// A spell that is not over when the years end counts from its first dark day, for as long as it was seen: a battery that never recovers shows all those days.
/// </summary>
/// <param name="Count">Spells, one not over among them.</param>
/// <param name="LongestDays">Longest recovery, days.</param>
/// <param name="MeanDays">Mean recovery, days.</param>
public sealed record RecoveryTimes(int Count, double LongestDays, double MeanDays)
{
    /// <summary>No dark night, so nothing to recover from.</summary>
    public static readonly RecoveryTimes None = new(0, 0, 0);

    /// <summary>Whether the last spell was not over when the years ended.</summary>
    public bool IsUnfinished { get; init; }
}
