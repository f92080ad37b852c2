using System.Collections.Immutable;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.PartsStated;

/// <summary>Parts a tender names in place of a duty, for all sites or for some.</summary>
/// <param name="Name">What the tender calls them, or a number.</param>
/// <param name="Clause">Clause of the tender, or empty.</param>
/// <param name="SiteIds">Sites they are for; empty for all.</param>
/// <param name="Chemistry">Kind of battery, or null when not stated.</param>
/// <param name="ControllerA">Rated charge current, A, or null.</param>
/// <param name="Control">Kind of controller, or null.</param>
/// <param name="FluxLm">Flux of the lamp, lm, or null.</param>
/// <param name="DutyHours">Hours a night the text asks for, or null: the schedule of the site holds.</param>
/// <param name="DutyNights">Nights of reserve the text asks for, or null: those of the tender hold.</param>
public sealed record StatedParts(
    string Name, string Clause, ImmutableArray<string> SiteIds, double ModuleWp, double BatteryV, double BatteryAh, BatteryChemistry? Chemistry, double LampW,
    double? FluxLm, double? ControllerA, ControlKind? Control, double? DutyHours, double? DutyNights)
{
    public double BatteryWh => BatteryV * BatteryAh;
}

/// <summary>What stated parts give at one place.</summary>
/// <param name="LampCode">Luminaire of the catalogue the light is worked out with, or null when none comes near.</param>
/// <param name="FluxLm">Flux it is taken at: the one stated, or its own in proportion to the power, lm.</param>
/// <param name="SpacingM">Spacing at which the light is given, m; the widest that meets the class where one does.</param>
/// <param name="AskedHours">Full hours of lamp a night asked for, mean of the year, h.</param>
/// <param name="LitHours">Those the parts feed, h.</param>
/// <param name="DarkNightsPerYear">Upper 90 % bound of the mean.</param>
/// <param name="AutonomyNights">At end of life in the coldest month.</param>
/// <param name="NeededArrayWp">Array that meets the duty with the battery beside it, Wp; null when none within reason does.</param>
/// <param name="NeededBatteryWh">Battery that gives the nights asked for, at least the one stated, Wh.</param>
public sealed record StatedPartsAtSite(
    string SiteId, string SiteName, string? LampCode, double FluxLm, double SpacingM, double AverageLx, double MinimumLx, string ClassName, double AskedLx, bool IsLightMet, double AskedHours, double LitHours,
    double DarkNightsPerYear, double AutonomyNights, double? NeededArrayWp, double NeededBatteryWh);

/// <summary>One set of stated parts, studied at every place it is for.</summary>
/// <param name="ChargeA">Greatest current the controller must carry by the design rule, A.</param>
/// <param name="AskedDarkNights">Dark nights a year allowed.</param>
/// <param name="AskedNights">Nights of reserve asked for.</param>
/// <param name="Chemistry">Kind of battery reckoned with.</param>
public sealed record StatedPartsStudy(
    StatedParts Parts, ImmutableArray<StatedPartsAtSite> Sites, double ChargeA, double AskedDarkNights, double AskedNights, BatteryChemistry Chemistry, ControlKind Control)
{
    /// <summary>The place that stays dark most, of equals the one with the least reserve.</summary>
    public StatedPartsAtSite Hardest => Sites.OrderByDescending(s => s.DarkNightsPerYear).ThenBy(s => s.AutonomyNights).First();
}

/// <summary>A question to the employer.</summary>
/// <param name="Found">What was found, with numbers.</param>
/// <param name="Why">Why it matters.</param>
/// <param name="Proposal">What is proposed.</param>
public sealed record Clarification(int Number, string Clause, string Kit, string Question, string Found, string Why, string Proposal);

/// <summary>All stated parts of a tender with the questions they raise.</summary>
public sealed record StatedPartsResult(ImmutableArray<StatedPartsStudy> Studies, ImmutableArray<Clarification> Questions);
