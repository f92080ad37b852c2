using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Hours of the NASA POWER service: each value is the energy from its label to an hour later.</summary>
/// <param name="factor">To kWh/m2 an hour.</param>
internal sealed class PowerHours(ClimateText text, PowerFile file, ClimateLimits limits, double factor)
{
    private const double DegreesAnHour = 15;

    /// <summary>The climate and its hours, or null with errors.</summary>
    public ClimateReading? Read()
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
}
