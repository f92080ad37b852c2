using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>
/// Reads an EnergyPlus weather file (Auxiliary Programs, chapter Weather Data; from memory, checked on three public files): eight header lines, the
/// first <c>LOCATION,city,region,country,source,station,latitude,longitude,offset,elevation</c>; then hours of 35 fields: year, month, day, hour 1 to 24
/// ending, minute, flags, dry bulb degC (99.9 missing), ..., field 14 global horizontal Wh/m2 (9999 missing).
/// </summary>
/// <remarks>The dry bulb stands at the end of its hour and is taken for the hour. The hours are those of standard time.</remarks>
public static class EpwFile
{
    private const int FieldsNeeded = 14;
    private const double MissingAirC = 99.9;
    private const double MissingWh = 9999;

    /// <summary>Reads the bytes of a file.</summary>
    public static Outcome<HourlySeries> Read(string fileName, byte[] bytes, ClimateLimits? limits = null)
    {
        var text = ClimateText.Of(fileName, bytes);
        var head = text.Lines[0].Split(',');
        if (head.Length < 9 || !IsOne(text.Lines[0]))
        {
            text.Head("the first line is not 'LOCATION' with latitude, longitude and offset in its 7th to 9th field; get the file again from its source", 1);
            return Outcome.None<HourlySeries>(text.Found);
        }

        if (StatedPlace.Of(text, 1, head[6], head[7], head[8]) is not { } place) return Outcome.None<HourlySeries>(text.Found);
        var run = new HourRun(text, limits ?? new ClimateLimits());
        for (var i = 0; i < text.Lines.Length && run.Sound; i++)
        {
            if (text.Lines[i].Length > 0 && char.IsAsciiDigit(text.Lines[i][0])) Hour(text, run, i + 1, text.Lines[i].Split(','));
        }

        return run.Series(place, "weather file of " + head[1].Trim() + ", " + head[3].Trim() + ", " + head[4].Trim() + " " + head[5].Trim());
    }

    internal static bool IsOne(string firstLine) => firstLine.StartsWith("LOCATION,", StringComparison.OrdinalIgnoreCase);

    private static void Hour(ClimateText text, HourRun run, int line, string[] fields)
    {
        if (fields.Length < FieldsNeeded)
        {
            text.Data(FormattableString.Invariant($"the line has {fields.Length} fields, at least {FieldsNeeded} are needed; get the file again from its source"), line);
            return;
        }

        int?[] clock = [.. fields.Take(4).Select(ClimateText.Whole)];
        var (air, global) = (ClimateText.Number(fields[6]), ClimateText.Number(fields[13]));
        if (clock.Contains(null) || air is null || global is null)
        {
            text.Data(
                $"year, month, day and hour '{string.Join(' ', fields.Take(4))}', dry bulb '{fields[6]}' and global irradiation '{fields[13]}' "
                + "are to be numbers; get the file again from its source",
                line);
            return;
        }

        run.Add(clock[0]!.Value, clock[1]!.Value, clock[2]!.Value, clock[3]!.Value, global >= MissingWh ? double.NaN : global.Value, air >= MissingAirC ? double.NaN : air.Value, line);
    }
}
