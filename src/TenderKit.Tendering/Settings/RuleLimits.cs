using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Settings;

/// <summary>
/// Values of design rules that nothing can be computed with, or that are surely a slip of the pen. Between the range of a row and these limits
/// the documents warn; beyond them the run stops.
/// </summary>
internal static class RuleLimits
{
    /// <summary>A value may pass the ends of its row's range by this factor.</summary>
    private const double Latitude = 4;

    /// <summary>Limits that the methods themselves set.</summary>
    private static readonly Dictionary<string, (double Least, double Greatest)> Own = new(StringComparer.Ordinal)
    {
        ["climate.factor.measured_record"] = (0.5, 1),
        ["climate.factor.satellite_series"] = (0.5, 1),
        ["climate.factor.typical_year"] = (0.5, 1),
        ["climate.factor.means_with_source"] = (0.5, 1),
        ["climate.factor.unsourced"] = (0.5, 1),
        ["climate.factor.estimate_near"] = (0.5, 1),
        ["climate.factor.estimate_far"] = (0.5, 1),
        ["climate.years"] = (1, 200),
        ["climate.seed"] = (0, int.MaxValue),
        ["climate.day_correlation"] = (0, 0.95),
        ["climate.year_spread"] = (0, 0.5),
        ["climate.month_correlation"] = (0, 0.95),
        ["climate.day_dispersion"] = (0.5, 1.5),
        ["night.switching_elevation"] = (-6, 3),
        ["light.maintenance_hours"] = (1000, 100_000),
        ["light.cleaning_years"] = (0.1, 3),
        ["light.pollution"] = (1, 3),
        ["light.spacing_least"] = (0.5, 4),
        ["light.spacing_most"] = (4, 20),
        ["light.setback"] = (0, 5),
        ["light.junction_clearance"] = (0, 50),
        ["energy.least_tilt"] = (0, 60),
        ["wiring.ambient"] = (10, 60),
        ["wiring.box_height"] = (0.5, 5),
        ["controller.compensation"] = (-8, 0),
        ["structure.bond"] = (0.2, 5),
        ["structure.bolt_factor"] = (1, 2),
        ["structure.wind_factor"] = (1, 2),
        ["structure.steel_factor"] = (1, 1.5),
    };

    /// <summary>An error for a value outside its limits, or null.</summary>
    public static Diagnostic? Problem(DesignRule rule)
    {
        var (least, greatest) = Own.TryGetValue(rule.Id, out var own) ? own : Wide(rule);
        return rule.Value >= least && rule.Value <= greatest
            ? null
            : Diagnostic.Error("TK116", FormattableString.Invariant($"design rule {rule.Id} is {rule.Value} {rule.Unit}, outside {least:0.####} to {greatest:0.####}; correct it"));
    }

    private static (double Least, double Greatest) Wide(DesignRule rule)
    {
        var greatest = rule.High * Latitude;
        return (rule.Low / Latitude, rule.Unit.StartsWith("fraction", StringComparison.Ordinal) ? Math.Min(1, greatest) : greatest);
    }
}
