using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Recognises irradiation in another unit than the one stated, by the clearness of the median month: no place on earth has a clearness outside 0.15 to 0.82.</summary>
internal static class UnitSlips
{
    public const double LeastClearness = 0.15;
    public const double GreatestClearness = 0.82;

    /// <summary>About the median clearness of the world; of two units that would both fit the one nearer to it is named.</summary>
    private const double UsualClearness = 0.5;

    /// <summary>No place is so dull that its median month lies below this: with months below the least clearness it is a slip of the unit.</summary>
    private const double LeastMedianClearness = 0.22;

    private const double MjPerKWh = 3.6;
    private const double DaysAMonth = 365.0 / 12;

    private sealed record Slip(string Code, double Factor, string LooksLike, string Cure);

    private static readonly Slip[] Slips =
    [
        new("TK302", MjPerKWh, "MJ/m2 a day where kWh/m2 a day is meant", "State the unit MJ/m2/day, or divide each value by 3.6."),
        new("TK302", 1000, "Wh/m2 a day where kWh/m2 a day is meant", "State the unit Wh/m2/day, or divide each value by 1000."),
        new("TK309", DaysAMonth, "totals of a month where the mean of one day is meant", "State the unit kWh/m2/month, or divide each value by the days of its month, 31 for January."),
        new("TK309", MjPerKWh * DaysAMonth, "totals of a month in MJ/m2 where the mean of one day in kWh/m2 is meant", "State the unit MJ/m2/month, or divide each value by 3.6 and by the days of its month."),
        new("TK302", 1 / MjPerKWh, "kWh/m2 a day where MJ/m2 a day is stated", "State the unit kWh/m2/day."),
        new("TK302", 1.0 / 1000, "kWh/m2 a day where Wh/m2 a day is stated", "State the unit kWh/m2/day."),
        new("TK309", 1 / DaysAMonth, "means of one day where totals of the month are stated", "State the unit kWh/m2/day."),
    ];

    /// <summary>An error that names the unit the values are likely in, or null where the median month is possible or no known slip explains it.</summary>
    public static Diagnostic? Of(MonthlyClimate climate, IReadOnlyList<(int Month, double Value)> clearness, Place place)
    {
        var median = clearness.OrderBy(c => c.Value).ElementAt(clearness.Count / 2);
        if (median.Value is >= LeastMedianClearness and <= GreatestClearness or <= 0 || clearness.All(c => c.Value is >= LeastClearness and <= GreatestClearness)) return null;
        var likely = Slips.Where(s => median.Value / s.Factor is >= LeastClearness and <= GreatestClearness)
            .MinBy(s => Math.Abs(Math.Log(median.Value / s.Factor / UsualClearness)));
        if (likely is null) return null;
        var value = climate.IrradiationKWhPerM2[median.Month - 1];
        return Diagnostic.Error(likely.Code, string.Create(
            CultureInfo.InvariantCulture,
            $"Irradiation of {CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(median.Month)} is {value:0.###} kWh/m2 a day as read, where the sun above the atmosphere gives {value / median.Value:0.00} at latitude {climate.LatitudeDegrees:0.00}; {Times(likely.Factor)} it would be {value / likely.Factor:0.00}. The values look like {likely.LooksLike}. {likely.Cure}"), place);
    }

    private static string Times(double factor) => factor > 1
        ? string.Create(CultureInfo.InvariantCulture, $"divided by {factor:0.#}")
        : string.Create(CultureInfo.InvariantCulture, $"{1 / factor:0.#} times");
}
