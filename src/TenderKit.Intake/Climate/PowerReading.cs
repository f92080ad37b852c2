using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Turns a file of the NASA POWER service into a climate; its units are followed here.</summary>
internal sealed class PowerReading
{
    private const double DegreesAnHour = 15;

    private readonly ClimateText text;
    private readonly PowerFile file;
    private readonly ClimateLimits limits;
    private readonly double factor;

    private PowerReading(ClimateText text, PowerFile file, ClimateLimits limits, double factor) =>
        (this.text, this.file, this.limits, this.factor) = (text, file, limits, factor);

    /// <summary>The climate, or none with errors.</summary>
    public static Outcome<ClimateReading> Of(ClimateText text, PowerFile? file, ClimateLimits limits)
    {
        if (file is null || Factor(text, file) is not { } factor) return Outcome.None<ClimateReading>(text.Found);
        var reading = new PowerReading(text, file, limits, factor);
        var climate = file.Step switch
        {
            PowerStep.Hours => reading.Hours(),
            PowerStep.Days => reading.Days(),
            _ => reading.Months(),
        };
        return climate is null ? Outcome.None<ClimateReading>(text.Found) : Outcome.Of(climate, text.Found);
    }

    private static double? Factor(ClimateText text, PowerFile file)
    {
        foreach (var name in file.Quantities.Keys.Where(n => n != PowerFile.Global && !PowerUnits.IsCelsius(file.Quantities[n].Unit)))
        {
            text.Head($"{name} is in '{file.Quantities[name].Unit}', only C is read; ask the service for it in degrees Celsius");
        }

        var hourly = file.Step == PowerStep.Hours;
        if (!file.Quantities.TryGetValue(PowerFile.Global, out var global) || global.Values.Count == 0)
        {
            text.Head($"{PowerFile.Global} is missing, or its unit is not in the header; ask the service for {PowerFile.Global} and {PowerFile.MeanC}, with the header");
        }
        else if (PowerUnits.KWhFactor(global.Unit, hourly) is null)
        {
            text.Head($"{PowerFile.Global} is in '{global.Unit}'; " + (hourly ? "Wh/m^2, W/m^2, kW-hr/m^2 and MJ/hr" : "kW-hr/m^2/day, Wh/m^2/day, MJ/m^2/day and W/m^2") + " are read. Get the file again in one of them");
        }

        return text.Found.Exists(d => d.Severity == Severity.Error) ? null : PowerUnits.KWhFactor(global!.Unit, hourly);
    }

    private ClimateReading? Hours()
    {
        if (file.ValuesOf(PowerFile.MeanC) is not { Count: > 0 } air)
        {
            text.Head($"{PowerFile.MeanC} is missing; ask the service for {PowerFile.Global} and {PowerFile.MeanC} together");
            return null;
        }

        // the service's own local time is universal time and the whole hours nearest to a fifteenth of the longitude (from memory)
        var offsetH = Math.Round(file.LongitudeDegrees / DegreesAnHour, MidpointRounding.AwayFromZero);
        var clock = LocalClock.Of(file.ValuesOf(PowerFile.Global)!.Keys.Select(Time), file.Utc ? offsetH : 0);
        var buffer = new HourBuffer(text, limits);
        foreach (var (stamp, value) in file.ValuesOf(PowerFile.Global)!)
        {
            var time = clock.At(Time(stamp));
            buffer.Add(time.Year, time.Month, time.Day, time.Hour, value * factor * 1000, air.GetValueOrDefault(stamp, double.NaN), 0);
        }

        if (buffer.Whole(calendar: true) is not { } whole) return null;
        if (YearChoice.LongestRun(whole.Years) is var (first, count) && count < whole.Years.Count) TellRun(whole.Years, first, count);
        var series = new HourlySeries(
            SeriesKind.SatelliteYears, [.. whole.Years], file.LatitudeDegrees, file.LongitudeDegrees, offsetH, [.. whole.Global], [.. whole.Air], file.Source);
        return SeriesFindings.Reading(series, text.File, limits, text.Found);
    }

    private static DateTime Time(PowerStamp stamp) => new(stamp.Year, stamp.Month, stamp.Day, stamp.Hour, 0, 0, DateTimeKind.Unspecified);

    /// <summary>Turns universal into local time; the hours that pass an end of the file come in at the other, at the same hour and season.</summary>
    private sealed record LocalClock(DateTime First, DateTime Last, double OffsetH)
    {
        public static LocalClock Of(IEnumerable<DateTime> times, double offsetH)
        {
            var (first, last) = (DateTime.MaxValue, DateTime.MinValue);
            foreach (var time in times) (first, last) = (time < first ? time : first, time > last ? time : last);
            return new LocalClock(first, last, offsetH);
        }

        public DateTime At(DateTime time)
        {
            var local = time.AddHours(OffsetH);
            var span = Last - First + TimeSpan.FromHours(1);
            return local > Last ? local - span : local < First ? local + span : local;
        }
    }

    private void TellRun(List<int> years, int first, int count) => text.Found.Add(Diagnostic.Note(
        "TK148",
        FormattableString.Invariant($"the {years.Count} whole years do not all follow one another, {count} do from {first}; they are joined as if they did"),
        new Place(text.File)));

    private ClimateReading? Days()
    {
        var stated = file.ValuesOf(PowerFile.Global)!.Keys.Select(s => s.Year).Distinct().Order();
        var years = YearChoice.Of(stated.Select(y => (y, MissingDays(y))), true, limits, text);
        if (years.Count == 0) return null;
        var global = Daily(years, PowerFile.Global, v => v * factor, v => v >= 0);
        var (mean, max, min) = (Air(PowerFile.MeanC), Air(PowerFile.MaxC), Air(PowerFile.MinC));
        Gaps(("irradiation", global), ("mean temperature", mean), ("highest temperature", max), ("lowest temperature", min));
        var series = new DailySeries([.. years], file.LatitudeDegrees, file.LongitudeDegrees, global, mean, max, min, file.Source);
        var months = new TwelveMonths(DailySeries.MonthMeans(global), Whole(mean), Whole(max), Whole(min), min.Min(), max.Max());
        return months.Read(text, file) is { } monthly ? new ClimateReading(monthly, null, series) : null;

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
        return [.. years.SelectMany(y => Enumerable.Range(0, MonthDays.DaysCount).Select(d => values.TryGetValue(Stamp(y, d), out var v) && isCredible(v) ? convert(v) : (double?)null))];
    }

    private static PowerStamp Stamp(int year, int dayIndex)
    {
        var month = MonthDays.MonthOf(dayIndex);
        return new PowerStamp(year, month, dayIndex - MonthDays.FirstDayIndex(month) + 1, 0);
    }

    private ClimateReading? Months()
    {
        var values = file.ValuesOf(PowerFile.Global)!;
        var empty = Enumerable.Range(1, 12).Where(m => !values.Any(v => v.Key.Month == m && !double.IsNaN(v.Value))).Select(MonthNames.Name).ToList();
        if (empty.Count > 0)
        {
            text.Found.Add(Diagnostic.Error("TK145", "irradiation holds no value for " + string.Join(", ", empty) + "; all twelve months are needed. Get whole years", new Place(text.File)));
            return null;
        }

        if (file.Quantities.ContainsKey(PowerFile.MaxC) || file.Quantities.ContainsKey(PowerFile.MinC)) text.Found.Add(PowerClimatology.ExtremesNotUsed(new Place(text.File)));
        var lost = values.Where(v => double.IsNaN(v.Value)).Select(v => v.Key).OrderBy(k => k.Year).ThenBy(k => k.Month).Select(k => FormattableString.Invariant($"{MonthNames.Name(k.Month)} {k.Year}")).ToList();
        if (lost.Count > 0) text.Found.Add(Diagnostic.Warning("TK144", "irradiation is missing for " + string.Join(", ", lost) + "; the months of the other years are averaged", new Place(text.File)));
        var months = new TwelveMonths([.. MonthMeans(values)!.Value.Select(v => v * factor)], MonthMeans(file.ValuesOf(PowerFile.MeanC)) ?? [], [], [], null, null);
        return months.Read(text, file) is { } monthly ? new ClimateReading(monthly) : null;
    }

    private static ImmutableArray<double>? MonthMeans(Dictionary<PowerStamp, double>? values)
    {
        if (values is null) return null;
        ImmutableArray<double> means = [.. Enumerable.Range(1, 12).Select(m => values.Where(v => v.Key.Month == m && !double.IsNaN(v.Value)).OrderBy(v => v.Key.Year).Select(v => v.Value).DefaultIfEmpty(double.NaN).Average())];
        return means.All(double.IsFinite) ? means : null;
    }
}
