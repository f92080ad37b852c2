using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Tests.Climate;

/// <summary>Climates for tests.</summary>
internal static class Climates
{
    /// <summary>The same clearness all year, 20 degC, 15 to 26.</summary>
    public static MonthlyClimate Constant(double latitude, double clearness) => Of(
        latitude, [.. Enumerable.Range(1, 12).Select(m => clearness * SunGeometry.DailyExtraterrestrialKWhPerM2(latitude, SunGeometry.MeanDayOfMonth(m)))]);

    public static MonthlyClimate Of(double latitude, ImmutableArray<double> irradiation) => new(
        latitude, 20, irradiation, [.. Enumerable.Repeat(20.0, 12)], [.. Enumerable.Repeat(26.0, 12)], [.. Enumerable.Repeat(15.0, 12)], 5, 40, ClimateGrade.MeansWithSource, "invented for tests");

    /// <summary>Mean daily sum of one calendar month over all years.</summary>
    public static double MonthMean(ImmutableArray<double> hours, int years, int month) =>
        Enumerable.Range(0, years).Average(y => YearMonthMean(hours, y, month));

    /// <summary>Mean daily sum of a month of one year.</summary>
    public static double YearMonthMean(ImmutableArray<double> hours, int year, int month)
    {
        var from = (year * 365 + MonthDays.FirstDayIndex(month)) * 24;
        var sum = 0.0;
        for (var i = from; i < from + MonthDays.Count(month) * 24; i++) sum += hours[i];
        return sum / MonthDays.Count(month);
    }
}
