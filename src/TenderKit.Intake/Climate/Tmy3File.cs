using System.Globalization;
using Sylvan.Data.Csv;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>
/// Reads a TMY3 csv file (Wilcox and Marion, Users Manual for TMY3 Data Sets, NREL/TP-581-43156, 2008; from memory, checked on a public file's head):
/// line 1 station, name, state, offset, latitude, longitude, elevation (the offset before the coordinates, unlike an EPW file); line 2 headings with
/// units; then dates MM/DD/YYYY and times 01:00 to 24:00, hour ending. Missing values are -9900.
/// </summary>
public static class Tmy3File
{
    private const string Global = "GHI (W/m^2)";
    private const string Air = "Dry-bulb (C)";
    private const double Missing = -9000;

    /// <summary>Reads the bytes of a file.</summary>
    public static Outcome<HourlySeries> Read(string fileName, byte[] bytes, ClimateLimits? limits = null)
    {
        var text = ClimateText.Of(fileName, bytes);
        var head = Fields(text.Lines[0]);
        var headings = text.Lines.Length > 1 ? Array.ConvertAll(text.Lines[1].Split(','), h => h.Trim()) : [];
        var (global, air) = (Array.IndexOf(headings, Global), Array.IndexOf(headings, Air));
        if (global < 0 || air < 0) text.Head($"the second line lacks the heading '{(global < 0 ? Global : Air)}'; get the file again from its source", 2);
        if (head.Count < 6) text.Head("the first line is not station, name, state, offset, latitude, longitude; get the file again from its source", 1);
        if (text.Found.Count > 0 || StatedPlace.Of(text, 1, head[4], head[5], head[3]) is not { } place) return Outcome.None<HourlySeries>(text.Found);
        var run = new HourRun(text, limits ?? new ClimateLimits());
        for (var i = 2; i < text.Lines.Length && run.Sound; i++)
        {
            if (text.Lines[i].Length > 0) Hour(text, run, i + 1, text.Lines[i].Split(','), global, air);
        }

        return run.Series(place, "typical year TMY3 of " + head[1] + ", " + head[2] + ", station " + head[0]);
    }

    internal static bool IsOne(string[] lines) =>
        lines.Length > 1 && lines[1].StartsWith("Date (MM/DD/YYYY),Time (HH:MM)", StringComparison.OrdinalIgnoreCase);

    private static void Hour(ClimateText text, HourRun run, int line, string[] fields, int global, int air)
    {
        if (fields.Length <= Math.Max(global, air))
        {
            text.Data(FormattableString.Invariant($"the line has {fields.Length} fields, {Math.Max(global, air) + 1} are needed; get the file again from its source"), line);
            return;
        }

        var sound = DateOnly.TryParseExact(fields[0].Trim(), "MM/dd/yyyy", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date);
        var hour = fields[1].Trim() is [_, _, ':', '0', '0'] time ? ClimateText.Whole(time[..2]) : null;
        if (!sound || hour is null || ClimateText.Number(fields[global]) is not { } wh || ClimateText.Number(fields[air]) is not { } c)
        {
            text.Data($"date '{fields[0]}' (MM/DD/YYYY), time '{fields[1]}' (01:00 to 24:00), irradiation and dry bulb are to be readable; get the file again from its source", line);
            return;
        }

        run.Add(date.Year, date.Month, date.Day, hour.Value, wh <= Missing ? double.NaN : wh, c <= Missing ? double.NaN : c, line);
    }

    private static List<string> Fields(string line)
    {
        var options = new CsvDataReaderOptions { HasHeaders = false, Delimiter = ',', CsvStyle = CsvStyle.Lax, Comment = '\0' };
        try
        {
            using var reader = CsvDataReader.Create(new StringReader(line), options);
            return reader.Read() ? [.. Enumerable.Range(0, reader.RowFieldCount).Select(i => reader.GetString(i).Trim())] : [];
        }
        catch (Exception e) when (e is CsvFormatException or CsvRecordTooLargeException or InvalidDataException)
        {
            return [];
        }
    }
}
