using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>
/// Reads the 12-month climate file. Layout: a heading row <c>month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c</c> and one row per month,
/// or the same turned round (a heading row of months, one row per quantity). The unit of irradiation stands in its heading:
/// kWh/m2/day, Wh/m2/day, MJ/m2/day, or kWh/m2 or MJ/m2 a month. An annual row or column is left out.
/// Lines <c># key: value</c> or <c>key,value</c> anywhere give <c>source</c>, <c>kind</c> (measured record, satellite or typical year), <c>years</c>,
/// <c>record_low_c</c>, <c>record_high_c</c>, <c>latitude</c> and <c>longitude</c>.
/// A csv climatology of the NASA POWER service is read as it comes.
/// Temperatures may be left out where the place is known: they are then taken from the reference stations, and a note says so.
/// </summary>
public static class MonthlyClimateFile
{
    /// <summary>Reads one table.</summary>
    /// <param name="latitudeDegrees">Latitude of the place, null where only the file may know it; the file's own goes first. Left at 0 in the result when unknown.</param>
    /// <param name="longitudeDegrees">Longitude of the place, likewise.</param>
    /// <param name="recordMarginK">Where no record temperatures are given: this much beyond the coldest mean daily minimum and the hottest mean daily maximum, K.</param>
    /// <param name="airPlace">Latitude and longitude to take missing temperatures for, where the place of the irradiation is not known.</param>
    public static Outcome<MonthlyClimate> Read(
        Table table, double? latitudeDegrees = null, double? longitudeDegrees = null, double recordMarginK = 10, (double LatitudeDegrees, double LongitudeDegrees)? airPlace = null)
    {
        if (latitudeDegrees is { } givenLatitude) Require.InRange(givenLatitude, -90, 90, nameof(latitudeDegrees));
        if (longitudeDegrees is { } givenLongitude) Require.InRange(givenLongitude, -180, 180, nameof(longitudeDegrees));
        Require.NotNegative(recordMarginK, nameof(recordMarginK));
        var found = new List<Diagnostic>();
        table = PowerClimatology.Normalised(table, found);
        var settings = ClimateSettings.Of(table, found);
        var columns = ClimateGrid.Read(table, found);
        if (columns is null || found.Any(d => d.Severity == Severity.Error)) return Outcome.None<MonthlyClimate>(found);
        var irradiation = columns[ClimateQuantity.Irradiation];
        var (latitude, longitude) = (settings.LatitudeDegrees ?? latitudeDegrees, settings.LongitudeDegrees ?? longitudeDegrees);
        if (Temperatures(table, columns, latitude ?? airPlace?.LatitudeDegrees, longitude ?? airPlace?.LongitudeDegrees, found) is not { } temperatures) return Outcome.None<MonthlyClimate>(found);
        var (mean, max, min, stationKm) = temperatures;
        if (settings.Source is null) found.Add(Diagnostic.Warning("TK137", "no source is named, so nobody can check the climate and it is taken with the caution of a value without source; add a line '# source: who measured it and when' to the file, or 'source:' beside values typed in the tender", new Place(table.File, table.Sheet)));
        if (settings.LowC is null || settings.HighC is null)
        {
            found.Add(Diagnostic.Note(
                "TK138", FormattableString.Invariant($"record_low_c or record_high_c is missing: taken {recordMarginK:0.#} K beyond the monthly means, {min.Min() - recordMarginK:0.0} and {max.Max() + recordMarginK:0.0} degC; add the records of the place"), new Place(table.File, table.Sheet)));
        }

        return Outcome.Of(
            new MonthlyClimate(
                latitude ?? 0,
                longitude ?? 0,
                irradiation,
                mean,
                max,
                min,
                settings.LowC ?? min.Min() - recordMarginK,
                settings.HighC ?? max.Max() + recordMarginK,
                settings.Stated.Grade(settings.Source is not null, new Place(table.File, table.Sheet), found),
                settings.Source ?? "supplied without a source (" + table.File + ")",
                null,
                stationKm)
            {
                YearCount = settings.Stated.YearCount,
            },
            found);
    }

    private static (ImmutableArray<double> Mean, ImmutableArray<double> Max, ImmutableArray<double> Min, double? StationKm)? Temperatures(
        Table table, SortedDictionary<ClimateQuantity, ImmutableArray<double>> columns, double? latitudeDegrees, double? longitudeDegrees, List<Diagnostic> found)
    {
        var mean = Column(ClimateQuantity.MeanC);
        var max = Column(ClimateQuantity.DailyMaxC);
        var min = Column(ClimateQuantity.DailyMinC);
        if (max is { } hot && min is { } cold) return (mean ?? [.. hot.Zip(cold, (a, b) => (a + b) / 2)], hot, cold, null);

        if (latitudeDegrees is not { } latitude || longitudeDegrees is not { } longitude)
        {
            found.Add(Diagnostic.Error("TK139", "there are no daily maximum and minimum temperatures, nor the place to look them up for; add columns t_max_c and t_min_c, or lines '# latitude: -13.97' and '# longitude: 33.79', to the file", new Place(table.File, table.Sheet)));
            return null;
        }

        var near = ReferenceClimate.AirTemperature(latitude, longitude, ReferenceStations.Load());
        var shift = mean is { } own ? own.Zip(near.MeanC, (a, b) => a - b).ToImmutableArray() : [.. new double[12]];
        found.Add(Diagnostic.Note(
            "TK136", (mean is null ? "no temperatures are given" : "mean temperatures only are given, or no daily maximum and minimum") + ": the rest is taken " + near.Source + "; add columns t_max_c and t_min_c to the file, or max_c and min_c beside values typed in the tender", new Place(table.File, table.Sheet)));
        return (
            mean ?? near.MeanC,
            max ?? [.. near.DailyMaxC.Zip(shift, (t, s) => t + s)],
            min ?? [.. near.DailyMinC.Zip(shift, (t, s) => t + s)],
            near.TemperatureStationKm);

        ImmutableArray<double>? Column(ClimateQuantity quantity) => columns.TryGetValue(quantity, out var values) ? values : null;
    }
}
