using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>How synthetic years are made, from the design rules and, where the site's own series says better, from that.</summary>
public static class SequenceRules
{
    /// <summary>Greatest spread between years that years can be made with, fraction.</summary>
    private const double GreatestSpread = 0.5;

    /// <summary>Greatest correlation that years can be made with.</summary>
    private const double GreatestCorrelation = 0.95;

    /// <param name="yearSpreadFraction">Spread between years of the site's own series; null takes the rule.</param>
    /// <param name="monthCorrelation">Month-to-month correlation of the site's own series; null takes the rule.</param>
    /// <param name="dayCorrelation">Day-to-day correlation of the site's own series; null takes the rule.</param>
    public static SequenceSettings Of(RuleSet rules, double? yearSpreadFraction = null, double? monthCorrelation = null, double? dayCorrelation = null) => new(
        (int)rules["climate.years"],
        (int)rules["climate.seed"],
        Math.Clamp(dayCorrelation ?? rules["climate.day_correlation"], 0, GreatestCorrelation),
        Math.Min(GreatestSpread, yearSpreadFraction ?? rules["climate.year_spread"]),
        MonthToMonthCorrelation: Math.Clamp(monthCorrelation ?? rules["climate.month_correlation"], 0, GreatestCorrelation),
        DispersionFactor: rules["climate.day_dispersion"]);
}
