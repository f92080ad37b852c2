using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Days of the NASA POWER service: T2M_MAX and T2M_MIN are those of the day, so that their month means are mean daily extremes.</summary>
/// <param name="factor">To kWh/m2 a day.</param>
internal sealed class PowerDays(ClimateText text, PowerFile file, ClimateLimits limits, double factor)
{
    /// <summary>The climate and its days, or null with errors.</summary>
    public ClimateReading? Read()
    {
        var stated = file.ValuesOf(PowerFile.Global)!.Keys.Select(s => s.Year).Distinct().Order();
        var years = YearChoice.Of(stated.Select(y => (y, MissingDays(y))), true, limits, text);
        if (years.Count == 0) return null;
        var global = Daily(years, PowerFile.Global, v => v * factor, v => v >= 0);
        var (mean, max, min) = (Air(PowerFile.MeanC), Air(PowerFile.MaxC), Air(PowerFile.MinC));
        Gaps(("irradiation", global), ("mean temperature", mean), ("highest temperature", max), ("lowest temperature", min));
        var series = new DailySeries([.. years], file.LatitudeDegrees, file.LongitudeDegrees, global, mean, max, min, file.Source);
        var months = new TwelveMonths(DailySeries.MonthMeans(global), Whole(mean), Whole(max), Whole(min), min.Min(), max.Max(), years.Count);
        text.Found.Add(Diagnostic.Note(
            "TK148",
            "days give the monthly means and, from eight years on, their spread between years; the energy is simulated on synthetic years made from these. "
            + "Get the hours of the same years to have them simulated as they were",
            new Place(text.File)));
        return months.Read(text, file) is { } monthly ? new ClimateReading(monthly with { YearSpreadFraction = YearSpread.Of(global) }, null, series) : null;

        ImmutableArray<double?> Air(string name) => Daily(years, name, v => v, SeriesMonths.IsCredible);
    }

    /// <summary>Month means, or none where a month holds no value.</summary>
    private static ImmutableArray<double> Whole(ImmutableArray<double?> days) =>
        DailySeries.MonthMeans(days) is var means && means.All(double.IsFinite) ? means : [];

    private void Gaps(params (string Name, ImmutableArray<double?> Days)[] quantities)
    {
        var gaps = quantities.Select(q => (q.Name, Count: q.Days.Count(d => d is null))).Where(q => q.Count > 0).ToList();
        if (gaps.Count == 0) return;
        text.Found.Add(Diagnostic.Warning(
            "TK146",
            "days that are missing or impossible are left out of the means: " + string.Join(", ", gaps.Select(g => FormattableString.Invariant($"{g.Count} of {g.Name}"))),
            new Place(text.File)));
    }

    private int[] MissingDays(int year)
    {
        var missing = new int[12];
        var quantities = new[] { PowerFile.Global, PowerFile.MeanC }.Select(file.ValuesOf).Where(v => v is { Count: > 0 }).ToList();
        for (var d = 0; d < MonthDays.DaysCount; d++)
        {
            var stamp = Stamp(year, d);
            if (quantities.Exists(q => !q!.TryGetValue(stamp, out var v) || double.IsNaN(v))) missing[MonthDays.MonthOf(d) - 1]++;
        }

        return missing;
    }

    private ImmutableArray<double?> Daily(List<int> years, string name, Func<double, double> convert, Func<double, bool> isCredible)
    {
        if (file.ValuesOf(name) is not { Count: > 0 } values) return [];
        return [.. years.SelectMany(y => Enumerable.Range(0, MonthDays.DaysCount).Select(d => Of(Stamp(y, d))))];

        double? Of(PowerStamp stamp) => values.TryGetValue(stamp, out var value) && isCredible(value) ? convert(value) : null;
    }

    private static PowerStamp Stamp(int year, int dayIndex)
    {
        var month = MonthDays.MonthOf(dayIndex);
        return new PowerStamp(year, month, dayIndex - MonthDays.FirstDayIndex(month) + 1, 0);
    }
}
