using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>
/// Reads a climate file of any kind that is read here, told apart by content and not by name: an EnergyPlus weather file, a TMY3 file, csv or JSON of the
/// NASA POWER service (hours, days, months, climatology), or the 12-month table of <see cref="MonthlyClimateFile"/> (csv or workbook).
/// </summary>
public static class ClimateFile
{
    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="latitude">Latitude of the site, degrees, or null; a warning is given where the file's place is far from it.</param>
    /// <param name="longitude">Longitude of the site, degrees, or null.</param>
    /// <param name="airPlace">Latitude and longitude to take missing temperatures for, where neither the file nor the caller knows the place of the irradiation.</param>
    public static Outcome<ClimateReading> Read(
        string fileName, byte[] bytes, double? latitude, double? longitude, ClimateLimits? limits = null, (double LatitudeDegrees, double LongitudeDegrees)? airPlace = null)
    {
        if (latitude is { } lat) Require.InRange(lat, -90, 90, nameof(latitude));
        if (longitude is { } lon) Require.InRange(lon, -180, 180, nameof(longitude));
        var rules = limits ?? new ClimateLimits();
        if (bytes.Length == 0) return Outcome.None<ClimateReading>(Diagnostic.Error("TK105", "the file is empty; save it again from the program that made it", new Place(fileName)));
        var outcome = ByContent(fileName, bytes, latitude, longitude, rules, airPlace);
        if (outcome.Value is not { } reading) return outcome;
        var found = outcome.Diagnostics.ToList();
        if (reading.Monthly is not { LatitudeDegrees: 0, LongitudeDegrees: 0 }) StatedPlace.Compare(reading.Monthly, fileName, latitude, longitude, rules, found);
        return Outcome.Of(reading, found);
    }

    private static Outcome<ClimateReading> ByContent(
        string fileName, byte[] bytes, double? latitude, double? longitude, ClimateLimits limits, (double LatitudeDegrees, double LongitudeDegrees)? airPlace)
    {
        if (bytes is [(byte)'P', (byte)'K', ..] or [0xD0, 0xCF, ..]) return Table(fileName, bytes, latitude, longitude, airPlace);
        var text = ClimateText.Of(fileName, bytes);
        if (EpwFile.IsOne(text.Lines[0])) return Hours(EpwFile.Read(fileName, bytes, limits), fileName, limits);
        if (Tmy3File.IsOne(text.Lines)) return Hours(Tmy3File.Read(fileName, bytes, limits), fileName, limits);
        if (PowerCsv.IsOne(text.Lines)) return PowerReading.Of(text, PowerCsv.Read(text), limits);
        return PowerJson.IsOne(text.Lines[0]) ? PowerReading.Of(text, PowerJson.Read(text), limits) : Table(fileName, bytes, latitude, longitude, airPlace);
    }

    private static Outcome<ClimateReading> Hours(Outcome<HourlySeries> outcome, string fileName, ClimateLimits limits)
    {
        if (outcome.Value is not { } series) return Outcome.None<ClimateReading>(outcome.Diagnostics);
        var found = outcome.Diagnostics.ToList();
        return Outcome.Of(SeriesFindings.Reading(series, fileName, limits, found), found);
    }

    private static Outcome<ClimateReading> Table(
        string fileName, byte[] bytes, double? latitude, double? longitude, (double LatitudeDegrees, double LongitudeDegrees)? airPlace)
    {
        if (!(Path.GetExtension(fileName).ToUpperInvariant() is ".CSV" or ".TSV" or ".TXT" or ".XLSX" or ".XLS"))
        {
            return Outcome.None<ClimateReading>(Diagnostic.Error(
                "TK141",
                "the content is none of: EnergyPlus weather file, TMY3 csv, NASA POWER csv or JSON, "
                + "and the name is no table of twelve months (.csv, .xlsx, .xls); get it in one of these",
                new Place(fileName)));
        }

        var tables = TableReader.Read(bytes, fileName);
        if (tables.Value is not { } file) return Outcome.None<ClimateReading>(tables.Diagnostics);
        var monthly = MonthlyClimateFile.Read(file.Tables[0], latitude, longitude, airPlace: airPlace);
        List<Diagnostic> found = [.. tables.Diagnostics, .. monthly.Diagnostics];
        return monthly.Value is { } climate ? Outcome.Of(new ClimateReading(climate), found) : Outcome.None<ClimateReading>(found);
    }
}
