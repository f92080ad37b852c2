using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Month means laid out as a <see cref="MonthlyClimateFile"/>, so that what is missing is completed, and told, in one way. An empty array is a quantity that is not held.</summary>
internal sealed record TwelveMonths(
    ImmutableArray<double> IrradiationKWhPerM2, ImmutableArray<double> MeanC, ImmutableArray<double> DailyMaxC, ImmutableArray<double> DailyMinC, double? LowC, double? HighC, int? YearCount)
{
    /// <summary>The climate, or null with errors.</summary>
    public MonthlyClimate? Read(ClimateText text, PowerFile file)
    {
        var columns = new[] { ("irradiation_kwh_m2_day", IrradiationKWhPerM2), ("t_mean_c", MeanC), ("t_max_c", DailyMaxC), ("t_min_c", DailyMinC) }.Where(c => !c.Item2.IsEmpty).ToList();
        List<string[]> lines =
        [
            ["# source: " + file.Source],
            ["# kind: satellite"],
            .. YearCount is { } years ? new[] { new[] { "# years: " + years.ToString(CultureInfo.InvariantCulture) } } : [],
            ["# latitude: " + Text(file.LatitudeDegrees)],
            ["# longitude: " + Text(file.LongitudeDegrees)],
            .. LowC is { } low ? new[] { new[] { "# record_low_c: " + Text(low) } } : [],
            .. HighC is { } high ? new[] { new[] { "# record_high_c: " + Text(high) } } : [],
            ["month", .. columns.Select(c => c.Item1)],
            .. Enumerable.Range(0, 12).Select(m => new[] { MonthNames.Name(m + 1) }.Concat(columns.Select(c => Text(c.Item2[m]))).ToArray()),
        ];
        var rows = lines.Select((line, r) => line.Select((t, c) => new Cell(t, r + 1, c + 1)).ToList()).ToList();
        var outcome = MonthlyClimateFile.Read(TableReader.Rectangle(text.File, null, rows));
        text.Found.AddRange(outcome.Diagnostics.Select(d => d with { Place = new Place(text.File) }));
        return outcome.Value;
    }

    private static string Text(double value) => value.ToString("0.0#######", CultureInfo.InvariantCulture);
}
