using System.Globalization;

namespace TenderKit.Tendering.Sites;

/// <summary>Reads whether a site was surveyed: yes, no, or the day of it.</summary>
internal static class SurveyCell
{
    private static readonly string[] _dates =
        ["yyyy-MM-dd", "yyyy/MM/dd", "yyyy.MM.dd", "d MMM yyyy", "d MMMM yyyy", "d-MMM-yyyy", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-ddTHH:mm:ss"];

    /// <summary>Day 1 of the workbook calendar after its false 29 February 1900, and the last day taken (2099).</summary>
    private static readonly (double First, double Last) _serial = (36526, 73050);

    /// <summary>An empty cell means no; a day written with a number for its month only is refused, since its order is not known.</summary>
    public static (bool IsSurveyed, DateOnly? On) Read(SiteRow row)
    {
        if (row.Cell(SiteColumns.Surveyed) is not { Text: { Length: > 0 } text } cell) return (false, null);
        if (DateOf(text, cell.Number) is { } on)
        {
            row.Understood(SiteColumns.Surveyed, on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            return (true, on);
        }

        if (GroundWords.YesNoOf(text) is { } known)
        {
            row.Understood(SiteColumns.Surveyed, known ? "yes" : "no");
            return (known, null);
        }

        row.Error("TK185", SiteColumns.Surveyed, "is neither yes, no nor a day; write yes, no, or the day as 2027-03-15");
        return (false, null);
    }

    private static DateOnly? DateOf(string text, double? number)
    {
        if (DateOnly.TryParseExact(text.Trim(), _dates, CultureInfo.InvariantCulture, DateTimeStyles.None, out var on)) return on;
        var serial = number ?? (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var written) ? written : (double?)null);
        return serial is { } day && day >= _serial.First && day <= _serial.Last ? DateOnly.FromDateTime(DateTime.FromOADate(Math.Floor(day))) : null;
    }
}
