namespace TenderKit.Intake.Numbers;

/// <summary>A user's number as understood, or why it was not.</summary>
/// <param name="Value">Value in the unit of its <see cref="QuantityKind"/>; null when there is a problem.</param>
/// <param name="Understood">Value with unit, to be echoed to the user; empty when there is a problem.</param>
/// <param name="Note">Something the user should look at though the number was read, or null.</param>
/// <param name="Problem">Why it could not be read and what to write instead, or null.</param>
/// <param name="Unit">Unit as written beside the number, or null.</param>
/// <param name="Hemisphere">N, S, E or W where written.</param>
/// <param name="Ambiguous">True when a comma may be a decimal mark or a thousands mark.</param>
public readonly record struct NumberReading(
    double? Value, string Understood, string? Note = null, string? Problem = null, string? Unit = null, char? Hemisphere = null,
    bool Ambiguous = false)
{
    internal static NumberReading Failed(string problem) => new(null, "", Problem: problem);
}

/// <summary>An amount of money as understood, exact.</summary>
/// <param name="Amount">The amount; null when there is a problem.</param>
/// <param name="Currency">Currency word or sign as written, or null.</param>
/// <param name="Note">Something the user should look at though the amount was read, or null.</param>
/// <param name="Problem">Why it could not be read and what to write instead, or null.</param>
/// <param name="Ambiguous">True when a comma may be a decimal mark or a thousands mark.</param>
public readonly record struct MoneyReading(decimal? Amount, string? Currency, string? Note = null, string? Problem = null, bool Ambiguous = false);
