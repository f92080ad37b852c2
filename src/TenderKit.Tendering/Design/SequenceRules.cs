using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>How synthetic years are made: by the design rules and, where a site's own series of several years says better, by that.</summary>
public static class SequenceRules
{
    /// <summary>Greatest spread between years that years can be made with, fraction.</summary>
    private const double GreatestSpread = 0.5;

    /// <summary>Greatest correlation that years can be made with.</summary>
    private const double GreatestCorrelation = 0.95;

    /// <summary>The rules alone.</summary>
    /// <param name="yearSpreadFraction">Spread between the years of the site's own series; null takes the rule.</param>
    public static SequenceSettings Of(RuleSet rules, double? yearSpreadFraction = null) => new(
        (int)rules["climate.years"],
        (int)rules["climate.seed"],
        rules["climate.day_correlation"],
        Math.Min(GreatestSpread, yearSpreadFraction ?? rules["climate.year_spread"]),
        MonthToMonthCorrelation: rules["climate.month_correlation"],
        DispersionFactor: rules["climate.day_dispersion"]);

    /// <summary>
    /// The site's own spread between years and correlations, and its own width of days in place of the fit by latitude; the rule
    /// <c>climate.day_dispersion</c> multiplies either. A negative correlation counts as none.
    /// </summary>
    /// <param name="own">What the site's own series says; null takes the rules.</param>
    /// <param name="latitudeDegrees">Latitude of the site, degrees.</param>
    public static SequenceSettings Of(RuleSet rules, SeriesStatistics? own, double latitudeDegrees) => own is null ? Of(rules) : Of(rules, own.YearSpreadFraction) with
    {
        DayToDayCorrelation = Math.Clamp(own.DayToDayCorrelation, 0, GreatestCorrelation),
        MonthToMonthCorrelation = Math.Clamp(own.MonthToMonthCorrelation, 0, GreatestCorrelation),
        DispersionFactor = Math.Clamp(
            rules["climate.day_dispersion"] * own.DispersionFactor / DailyDispersion.Factor(latitudeDegrees), SequenceSettings.LeastDispersionFactor, SequenceSettings.GreatestDispersionFactor),
    };
}
