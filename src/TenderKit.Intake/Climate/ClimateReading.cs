using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>What a climate file holds.</summary>
/// <param name="Monthly">Twelve months, always.</param>
/// <param name="Series">Whole years of hours, where the file holds hours.</param>
/// <param name="Days">Whole years of days, where the file holds days.</param>
public sealed record ClimateReading(MonthlyClimate Monthly, HourlySeries? Series = null, DailySeries? Days = null);

/// <summary>Limits the readers go by; each is a design rule.</summary>
/// <param name="MissingDaysAllowed">Days of a month that may lack values; beyond it the year is left out.</param>
/// <param name="FarKm">Distance of the file's place from the site beyond which a warning is given, km.</param>
/// <param name="TypicalYearMarginK">Taken beyond the temperatures that 0.4 % of the hours of a typical year pass for the record temperatures, K. Assumption, no source.</param>
/// <param name="NoonToleranceH">Greatest difference between the middle of the day's energy and solar noon, h. Assumption, no source.</param>
public sealed record ClimateLimits(int MissingDaysAllowed = 3, double FarKm = 50, double TypicalYearMarginK = 5, double NoonToleranceH = 0.75);
