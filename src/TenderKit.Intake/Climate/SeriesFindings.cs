using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Reading and findings about a whole hourly series.</summary>
internal static class SeriesFindings
{
    private const double UsualReachK = 15;

    /// <summary>The twelve months of a series, with what should be said about it.</summary>
    public static ClimateReading Reading(HourlySeries series, string file, ClimateLimits limits, List<Diagnostic> found)
    {
        var typical = series.Kind == SeriesKind.TypicalYear;
        var monthly = series.ToMonthly(typical ? limits.TypicalYearMarginK : 0);
        Noon(series, file, limits, found);
        if (typical) found.Add(Typical(monthly, file, limits));
        Spike(series, monthly, file, found);
        if (monthly.Grade == ClimateGrade.MeansWithSource) found.Add(Short(series, file));
        return new ClimateReading(monthly, series);
    }

    private static Diagnostic Short(HourlySeries series, string file) => series.Kind == SeriesKind.SatelliteYears
        ? StatedKind.Lowered(series.Kind, series.YearCount, new Place(file))
        : Diagnostic.Note(
            "TK130",
            FormattableString.Invariant($"the file does not say that its {series.YearCount} years were measured at the ground, so it is graded as '{ClimateGrades.Words(ClimateGrade.MeansWithSource)}'; weather files of real years are often modelled"),
            new Place(file));

    private static Diagnostic Typical(MonthlyClimate monthly, string file, ClimateLimits limits) => Diagnostic.Note(
        "TK148",
        string.Create(
            CultureInfo.InvariantCulture,
            $"this is a typical year: it leaves out extreme months by construction, and its dullest weeks are not the dullest "
            + $"to come. Record temperatures are taken {limits.TypicalYearMarginK:0.#} K beyond those that 0.4 % of its hours pass, "
            + $"{monthly.RecordLowC:0.0} and {monthly.RecordHighC:0.0} degC; use the records of the place where they are known"),
        new Place(file));

    /// <summary>The middle of a day's energy lies at solar noon, unless offset, longitude or hours are wrong.</summary>
    private static void Noon(HourlySeries series, string file, ClimateLimits limits, List<Diagnostic> found)
    {
        var hours = series.ToYears().GlobalWhPerM2;
        var (sum, moment) = (0.0, 0.0);
        for (var i = 0; i < hours.Length; i++)
        {
            sum += hours[i];
            moment += hours[i] * (i % 24 + 0.5);
        }

        var noonH = sum > 0 ? moment / sum : 12;
        if (Math.Abs(noonH - 12) <= limits.NoonToleranceH) return;
        found.Add(Diagnostic.Warning(
            "TK149",
            string.Create(
                CultureInfo.InvariantCulture,
                $"the middle of the day's energy lies at {noonH:0.0} h of solar time, 12 expected, limit {limits.NoonToleranceH:0.00} "
                + $"h off: longitude {series.LongitudeDegrees:0.00}, offset {series.UtcOffsetH:0.#} h and the hours of the file "
                + $"do not go together. Check the position and the time zone in the head of the file"),
            new Place(file)));
    }

    private static void Spike(HourlySeries series, MonthlyClimate monthly, string file, List<Diagnostic> found)
    {
        var usual = monthly.DailyMaxC.Max();
        var highest = series.AirC.Max();
        if (highest <= usual + UsualReachK) return;
        var kept = series.Kind == SeriesKind.TypicalYear
            ? "No record is taken from single hours of a typical year"
            : "It is kept as the record, which errs on the hot side; enter the record of the place";
        found.Add(Diagnostic.Warning(
            "TK146",
            string.Create(
                CultureInfo.InvariantCulture,
                $"the highest hour, {highest:0.0} degC, is {highest - usual:0.0} K above the mean daily maximum of the hottest "
                + $"month, {usual:0.0} degC, where {UsualReachK:0} K is the usual reach: it may be a fault of the data. "
                + $"{kept}"),
            new Place(file)));
    }
}
