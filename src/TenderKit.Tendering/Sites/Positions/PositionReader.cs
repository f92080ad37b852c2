using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Positions;

/// <summary>Reads the position of a row: two columns of angles, both in one cell, or a UTM grid position.</summary>
internal sealed partial class PositionReader
{
    private readonly UtmZone? zoneOfSheet;

    /// <param name="mapping">The sheet; a zone may stand in its headings or above them.</param>
    public PositionReader(ColumnMapping mapping)
    {
        var headings = mapping.Columns.Where(c => c.Meaning?.Id is SiteColumns.Easting or SiteColumns.Northing or SiteColumns.Latitude or SiteColumns.Longitude or SiteColumns.Coordinates);
        var titles = mapping.Table.Rows.TakeWhile(r => r.Length > 0 && r[0].Row < mapping.FirstDataRow).SelectMany(r => r).Select(c => c.Text);
        zoneOfSheet = headings.Select(c => c.Heading).Concat(titles).Select(UtmText.ZoneWithin).FirstOrDefault(z => z is not null);
    }

    public RowPosition Read(SiteRow row)
    {
        if (row.IsFilled(SiteColumns.Accuracy) && UserNumber.Read(row.Cell(SiteColumns.Accuracy)!.Value, QuantityKind.Length).Value is > SiteRow.GreatestAccuracyM and var knownToM)
            row.Warning("TK178", SiteColumns.Accuracy, FormattableString.Invariant($"says that the position was taken to {knownToM:0} m only; take the position again"));
        if (row.IsFilled(SiteColumns.Easting) || row.IsFilled(SiteColumns.Northing)) return OfGrid(row, SiteColumns.Easting, SiteColumns.Northing);
        var (latitude, longitude) = (row.Text(SiteColumns.Latitude), row.Text(SiteColumns.Longitude));
        if (latitude.Length == 0 && longitude.Length == 0)
            return row.IsFilled(SiteColumns.Coordinates) ? OfOneCell(row) : row.Drawing is { } drawn ? OfDrawing(drawn) : row.IsDrawingBroken ? RowPosition.Bad(SiteColumns.Trace) : RowPosition.Missing(row.HasColumn(SiteColumns.Latitude) ? SiteColumns.Latitude : SiteColumns.Coordinates);
        if (latitude.Length == 0)
            row.Error("TK182", SiteColumns.Latitude, "is missing; the sun cannot be found without it: write decimal degrees such as 14.2508");
        if (longitude.Length == 0) row.Error("TK182", SiteColumns.Longitude, "is missing; write decimal degrees such as -4.2500");
        if (latitude.Length == 0 || longitude.Length == 0) return RowPosition.Bad(SiteColumns.Latitude);
        return IsGrid(row.Cell(SiteColumns.Latitude)!.Value, row.Cell(SiteColumns.Longitude)!.Value)
            ? OfGrid(row, SiteColumns.Longitude, SiteColumns.Latitude)
            : OfAngles(row, SiteColumns.Latitude, latitude, SiteColumns.Longitude, longitude);
    }

    private static RowPosition OfDrawing(MapFeature drawn)
    {
        var (point, column) = (SiteDrawing.PlaceOf(drawn), drawn.Shape == MapShape.Area ? SiteColumns.Outline : SiteColumns.Trace);
        return new(point, false, true, column, column, string.Create(CultureInfo.InvariantCulture, $"site at {point.LatitudeDegrees:0.000000}, {point.LongitudeDegrees:0.000000} degrees"));
    }

    private static RowPosition OfAngles(SiteRow row, string latitudeColumn, string latitudeText, string longitudeColumn, string longitudeText)
    {
        var (read, readToo) = (row.Degrees(latitudeColumn, latitudeText), row.Degrees(longitudeColumn, longitudeText));
        if (read is not { Value: { } latitude } first || readToo is not { Value: { } longitude } second) return RowPosition.Bad(latitudeColumn);
        var hasLetters = first.Hemisphere is not null && second.Hemisphere is not null;
        if (!(first.Hemisphere is 'E' or 'W' && second.Hemisphere is not ('E' or 'W')) && !(second.Hemisphere is 'N' or 'S' && first.Hemisphere is not ('N' or 'S')))
            return new(new(latitude, longitude), false, hasLetters, latitudeColumn, longitudeColumn);
        row.Warning("TK188", latitudeColumn, $"and longitude '{longitudeText}' are exchanged, as their letters say; they were read the other way round");
        return new(new(longitude, latitude), false, hasLetters, latitudeColumn, longitudeColumn);
    }

    private static RowPosition OfOneCell(SiteRow row)
    {
        const string column = SiteColumns.Coordinates;
        var text = Named().Replace(row.Text(column), " ").Trim();
        if (UtmText.OneCell(text) is { } grid) return OfUtm(row, grid, column, column);
        if (SurveyPoint().Match(text) is { Success: true } point)
        {
            NoteAccuracy(row, point.Groups["acc"].Value);
            return OfAngles(row, column, point.Groups["a"].Value, column, point.Groups["b"].Value);
        }

        var pair = Pair().Match(text);
        if (pair.Success) return OfAngles(row, column, pair.Groups["a"].Value, column, pair.Groups["b"].Value);
        row.Error("TK183", column, "is no pair of latitude and longitude; write them as 14.2508; -4.2500");
        return RowPosition.Bad(column);
    }

    private RowPosition OfGrid(SiteRow row, string eastingColumn, string northingColumn)
    {
        var easting = row.Number(eastingColumn, QuantityKind.Length, 0, 100_000_000, isEchoed: false);
        var northing = row.Number(northingColumn, QuantityKind.Length, 0, 100_000_000, isEchoed: false);
        foreach (var missing in new[] { eastingColumn, northingColumn }.Where(c => !row.IsFilled(c))) row.Error("TK182", missing, "is missing; write metres of the grid");
        if (easting is null || northing is null) return RowPosition.Bad(northingColumn);
        var zone = row.IsFilled(SiteColumns.UtmZone) ? UtmText.Zone(row.Text(SiteColumns.UtmZone)) : zoneOfSheet;
        if (zone is { } z)
        {
            // northing written under easting and the other way round: only the northing can pass a million
            var (e, n) = easting > 1_000_000 && northing < 1_000_000 ? (northing.Value, easting.Value) : (easting.Value, northing.Value);
            return OfUtm(row, UtmText.Read(z, e, n), northingColumn, eastingColumn);
        }

        row.Error("TK179", northingColumn, row.IsFilled(SiteColumns.UtmZone)
            ? $"belongs to the zone '{row.Text(SiteColumns.UtmZone)}', which is no zone of the grid; write it as 36S"
            : "is a grid position without its zone; add a column 'Zone' with such as 36S");
        return RowPosition.Bad(northingColumn);
    }

    private static RowPosition OfUtm(SiteRow row, UtmReading reading, string northingColumn, string eastingColumn)
    {
        if (reading.Note is { } note) row.Warning("TK179", northingColumn, "is a grid position: " + note);
        if (reading.Point is not { } point)
        {
            row.Error("TK179", northingColumn, "is no grid position: " + reading.Problem);
            return RowPosition.Bad(northingColumn);
        }

        var understood = string.Create(CultureInfo.InvariantCulture, $"{point.LatitudeDegrees:0.000000}, {point.LongitudeDegrees:0.000000} degrees");
        return new(point, false, true, northingColumn, eastingColumn, understood);
    }

    private static bool IsGrid(Cell latitude, Cell longitude) => IsMetres(latitude) && IsMetres(longitude);

    private static bool IsMetres(Cell cell) => UserNumber.Read(cell, QuantityKind.Length).Value is > 1000;

    private static void NoteAccuracy(SiteRow row, string accuracy)
    {
        if (double.TryParse(accuracy, NumberStyles.Float, CultureInfo.InvariantCulture, out var metres) && metres > SiteRow.GreatestAccuracyM)
            row.Warning("TK178", SiteColumns.Coordinates, FormattableString.Invariant($"was taken to {metres:0} m only; take the position again"));
    }

    // two angles: apart by a semicolon, a slash or a comma with a space after it, or a comma between decimals with points
    [GeneratedRegex(@"^(?<a>[^;/]+?)\s*(?:[;/]|,\s+|(?<=\.\d+\u00B0?),|(?<=[\d'""\u00B0\u2019\u201D]\s*[NS]),?\s*(?=\d)|\s+(?=[EWO]\s*\d)|(?<=^-?\d+\.\d+\u00B0?)\s+(?![NSEWO]))\s*(?<b>[^;/]+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pair();

    // as survey forms write a point: latitude, longitude, altitude, accuracy
    [GeneratedRegex(@"^(?<a>-?\d+(?:\.\d+)?)[\s,]+(?<b>-?\d+(?:\.\d+)?)[\s,]+-?\d+(?:\.\d+)?[\s,]+(?<acc>\d+(?:\.\d+)?)$")]
    private static partial Regex SurveyPoint();

    [GeneratedRegex(@"\b(?:latitude|latitud|longitude|longitud|lat|long|lon|lng)\b\s*[.:=]*|[()\[\]]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}
