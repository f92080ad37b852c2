using System.Collections.Immutable;

namespace TenderKit.Tendering.Programme;

/// <summary>What the works are planned with; every figure stands as an input cell in the workbooks.</summary>
/// <param name="OrderDate">Day of the contract, on which goods are ordered; null for the last day the bid holds.</param>
/// <param name="CompletionDate">Last day for completion; null for the order date and the days the tender allows.</param>
/// <param name="MobilisationDays">Calendar days from the order to the first work on site.</param>
/// <param name="ShippingDays">Calendar days to the site store beyond the lead times of the catalogue.</param>
/// <param name="CuringDays">Calendar days from a foundation to its pole.</param>
/// <param name="WorkingDaysAWeek">1 to 7.</param>
/// <param name="Gangs">Gangs for each lot.</param>
/// <param name="FoundationsPerGangDay">Foundations one gang makes in a working day, above zero.</param>
/// <param name="PolesPerGangDay">Poles one gang erects, fits and commissions in a working day, above zero.</param>
/// <param name="MovingDays">Working days a gang loses by moving to a site.</param>
/// <param name="Lots">Lots that differ.</param>
public sealed record ProgrammeSettings(
    DateOnly? OrderDate, DateOnly? CompletionDate, int MobilisationDays, int ShippingDays, int CuringDays, int WorkingDaysAWeek, int Gangs,
    decimal FoundationsPerGangDay, decimal PolesPerGangDay, decimal MovingDays, ImmutableArray<LotPlan> Lots)
{
    /// <summary>What holds where the tender is silent; common practice, no source.</summary>
    public static readonly ProgrammeSettings Usual = new(null, null, 14, 0, 7, 6, 1, 4, 4, 0.5m, []);
}

/// <summary>A lot with gangs or a completion of its own.</summary>
public sealed record LotPlan(string Lot, int? Gangs, DateOnly? CompletionDate);
