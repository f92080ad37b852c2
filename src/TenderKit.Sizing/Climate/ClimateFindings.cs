using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Findings about a monthly climate.</summary>
internal static class ClimateFindings
{
    private const double TropicsDegrees = 23.5;
    private const double LeastSkyKWhPerM2 = 0.5;
    private const double FarTemperatureKm = 1000;

    public static IReadOnlyList<Diagnostic> Of(MonthlyClimate climate, Place place) =>
        [.. Units(climate, place), .. Hemisphere(climate, place), .. Temperatures(climate, place), .. Grades(climate, place)];

    private static IEnumerable<Diagnostic> Units(MonthlyClimate climate, Place place)
    {
        var values = Clearness(climate);
        if (values.Count > 0 && UnitSlips.Of(climate, values, place) is { } slip) return [slip];
        return values.Where(v => v.Value is < UnitSlips.LeastClearness or > UnitSlips.GreatestClearness).Select(v => Diagnostic.Error(
            "TK301",
            Text($"Irradiation of {MonthName(v.Month)} is {climate.IrradiationKWhPerM2[v.Month - 1]:0.00} kWh/m2 a day, clearness {v.Value:0.00} of the sun above the atmosphere; {UnitSlips.LeastClearness:0.00} to {UnitSlips.GreatestClearness:0.00} is possible. Check the value, its unit and the latitude {climate.LatitudeDegrees:0.00}."),
            place));
    }

    private static IEnumerable<Diagnostic> Hemisphere(MonthlyClimate climate, Place place)
    {
        if (Math.Abs(climate.LatitudeDegrees) <= TropicsDegrees) yield break;
        var here = Correlation(climate, climate.LatitudeDegrees);
        if (here >= 0 || Correlation(climate, -climate.LatitudeDegrees) <= 0) yield break;
        yield return Diagnostic.Error(
            "TK303",
            Text($"Irradiation is highest in the local winter: correlation with the sun above latitude {climate.LatitudeDegrees:0.00} is {here:0.00}, it should be positive. The latitude looks as if it had the wrong sign, or the months start in July."),
            place);
    }

    private static IEnumerable<Diagnostic> Temperatures(MonthlyClimate climate, Place place)
    {
        for (var m = 0; m < 12; m++)
        {
            var (low, mean, high) = (climate.DailyMinC[m], climate.MeanC[m], climate.DailyMaxC[m]);
            if (mean >= low && mean <= high) continue;
            yield return Diagnostic.Error(
                "TK304",
                Text($"Mean temperature of {MonthName(m + 1)} is {mean:0.0} degC, outside its daily minimum {low:0.0} and maximum {high:0.0} degC. Check the columns."),
                place);
        }

        if (climate.RecordLowC > climate.DailyMinC.Min() || climate.RecordHighC < climate.DailyMaxC.Max())
        {
            yield return Diagnostic.Warning(
                "TK305",
                Text($"Record temperatures {climate.RecordLowC:0.0} to {climate.RecordHighC:0.0} degC are milder than the monthly means of the daily minimum {climate.DailyMinC.Min():0.0} and maximum {climate.DailyMaxC.Max():0.0} degC. Enter the lowest and highest temperature on record."),
                place);
        }
    }

    private static IEnumerable<Diagnostic> Grades(MonthlyClimate climate, Place place)
    {
        if (climate.NearestStationKm is { } km && climate.Grade == ClimateGrade.EstimateFar)
        {
            yield return Diagnostic.Warning(
                "TK306", Text($"The nearest station of the reference table is {km:0} km away, limit 300 km: irradiation may be off by 30 %. Obtain monthly irradiation of the place with its source."), place);
        }

        if (climate.TemperatureStationKm is { } air and > FarTemperatureKm)
        {
            yield return Diagnostic.Warning(
                "TK308", Text($"Air temperatures come from a station {air:0} km away, limit {FarTemperatureKm:0} km, and are not corrected for height. Enter the twelve monthly temperatures of the place."), place);
        }
    }

    private static List<(int Month, double Value)> Clearness(MonthlyClimate climate) =>
        [.. Enumerable.Range(1, 12)
            .Where(m => Sky(climate.LatitudeDegrees, m) >= LeastSkyKWhPerM2)
            .Select(m => (m, climate.IrradiationKWhPerM2[m - 1] / Sky(climate.LatitudeDegrees, m)))];

    private static double Sky(double latitudeDegrees, int month) =>
        SunGeometry.DailyExtraterrestrialKWhPerM2(latitudeDegrees, SunGeometry.MeanDayOfMonth(month));

    private static double Correlation(MonthlyClimate climate, double latitudeDegrees)
    {
        var sky = Enumerable.Range(1, 12).Select(m => Sky(latitudeDegrees, m)).ToArray();
        var (meanX, meanY) = (sky.Average(), climate.IrradiationKWhPerM2.Average());
        var (xy, xx, yy) = (0.0, 0.0, 0.0);
        for (var m = 0; m < 12; m++)
        {
            var (x, y) = (sky[m] - meanX, climate.IrradiationKWhPerM2[m] - meanY);
            (xy, xx, yy) = (xy + x * y, xx + x * x, yy + y * y);
        }

        return xx > 0 && yy > 0 ? xy / Math.Sqrt(xx * yy) : 0;
    }

    private static string MonthName(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
