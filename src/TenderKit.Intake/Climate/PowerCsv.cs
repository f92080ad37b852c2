using System.Text.RegularExpressions;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Reads a csv file of the NASA POWER service: a head between two marks with place, clock and units, then a heading row and rows of values.</summary>
internal static partial class PowerCsv
{
    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    public static bool IsOne(string[] lines) =>
        lines.Take(3).Any(l => l.StartsWith("-BEGIN HEADER-", StringComparison.Ordinal) || l.StartsWith("NASA/POWER", StringComparison.Ordinal));

    /// <summary>The file, or null with errors.</summary>
    public static PowerFile? Read(ClimateText text)
    {
        var end = Array.FindIndex(text.Lines, l => l.StartsWith("-END HEADER-", StringComparison.Ordinal));
        var row = end < 0 ? -1 : Array.FindIndex(text.Lines, end + 1, l => l.Trim().Length > 0);
        if (row < 0)
        {
            text.Head("the file has no '-END HEADER-' with a heading row below it; get it again, with its header");
            return null;
        }

        var delimiter = text.Lines[row].Contains(';') ? ';' : text.Lines[row].Contains('\t') ? '\t' : ',';
        var columns = Array.ConvertAll(text.Lines[row].Split(delimiter), c => c.Trim());
        var head = text.Lines.Take(end).Select(l => l.TrimEnd(delimiter, ' ', '\t')).ToList();
        if (StepOf(columns) is not { } step)
        {
            text.Head("the heading row is none of YEAR,MO,DY,HR or YEAR,MO,DY or YEAR,DOY or PARAMETER,YEAR,JAN or PARAMETER,JAN followed by quantities; get the file again", row + 1);
            return null;
        }

        var location = head.Select(l => Location().Match(l)).FirstOrDefault(m => m.Success);
        if (StatedPlace.Of(text, null, location?.Groups["lat"].Value ?? "", location?.Groups["lon"].Value ?? "", "0") is not { } place) return null;
        var file = new PowerFile(step, place.LatitudeDegrees, place.LongitudeDegrees, head.Exists(l => InUtc().IsMatch(l)), PeriodOf(head), Quantities(head));
        var body = new Body(text, file, columns, delimiter);
        for (var i = row + 1; i < text.Lines.Length && text.Found.Count == 0; i++)
        {
            if (text.Lines[i].Trim(delimiter, ' ').Length > 0) body.Take(text.Lines[i].Split(delimiter), i + 1);
        }

        return text.Found.Count == 0 ? file : null;
    }

    private static PowerStep? StepOf(string[] columns)
    {
        if (columns.Length > 12 && columns[0] == "PARAMETER") return columns[1] == "YEAR" ? PowerStep.Months : columns[1] == "JAN" ? PowerStep.Climatology : null;
        if (!columns.Contains("YEAR") || !(columns.Contains("DOY") || (columns.Contains("MO") && columns.Contains("DY")))) return null;
        return columns.Contains("HR") ? PowerStep.Hours : PowerStep.Days;
    }

    private static string PeriodOf(List<string> head)
    {
        var dates = head.Select(l => Dates().Match(l)).FirstOrDefault(m => m.Success);
        return dates?.Value ?? head.Select(l => Period().Match(l)).FirstOrDefault(m => m.Success)?.Value ?? "";
    }

    private static SortedDictionary<string, PowerQuantity> Quantities(List<string> head)
    {
        var quantities = new SortedDictionary<string, PowerQuantity>(StringComparer.Ordinal);
        foreach (var line in head.Select(l => Quantity().Match(l)).Where(m => m.Success && PowerFile.IsUsed(m.Groups["name"].Value)))
        {
            quantities[line.Groups["name"].Value] = new PowerQuantity(line.Groups["unit"].Value, []);
        }

        return quantities;
    }

    /// <summary>The rows below the headings.</summary>
    private sealed class Body(ClimateText text, PowerFile file, string[] columns, char delimiter)
    {
        private readonly int year = Array.IndexOf(columns, "YEAR");
        private readonly int month = Array.IndexOf(columns, "MO");
        private readonly int day = Array.IndexOf(columns, "DY");
        private readonly int dayOfYear = Array.IndexOf(columns, "DOY");
        private readonly int hour = Array.IndexOf(columns, "HR");

        public void Take(string[] fields, int line)
        {
            if (fields.Length < columns.Length) text.Data(FormattableString.Invariant($"the line has {fields.Length} fields, the headings {columns.Length}; get the file again"), line);
            else if (file.Step is PowerStep.Months or PowerStep.Climatology) Across(fields, line);
            else if (StampOf(fields) is { } stamp) Down(fields, stamp, line);
            else text.Data($"'{string.Join(' ', fields.Take(4))}' is no date or hour under {string.Join(',', columns.Take(4))}; get the file again", line);
        }

        private void Down(string[] fields, PowerStamp stamp, int line)
        {
            for (var c = 0; c < columns.Length && text.Found.Count == 0; c++) Keep(columns[c], stamp, fields[c], line);
        }

        private void Across(string[] fields, int line)
        {
            var of = year >= 0 ? ClimateText.Whole(fields[year]) ?? 0 : 0;
            for (var m = 1; m <= 12; m++)
            {
                if (Array.IndexOf(columns, Months[m - 1]) is var c and >= 0) Keep(fields[0].Trim(), new PowerStamp(of, m, 0, 0), fields[c], line);
            }
        }

        private void Keep(string name, PowerStamp stamp, string cell, int line)
        {
            if (!file.Quantities.TryGetValue(name, out var quantity)) return;
            var number = ClimateText.Number(delimiter == ';' ? cell.Replace(',', '.') : cell);
            if (number is not { } value) text.Data($"{name} '{cell.Trim()}' is not a number; get the file again", line);
            else if (!quantity.Values.TryAdd(stamp, PowerFile.OrMissing(value))) text.Data($"{name} stands twice for the same time; get the file again", line);
        }

        private PowerStamp? StampOf(string[] fields)
        {
            if (ClimateText.Whole(fields[year]) is not { } y || y is < 1900 or > 2200) return null;
            var h = hour < 0 ? 0 : ClimateText.Whole(fields[hour]) ?? -1;
            if (h is < 0 or > 23) return null;
            var date = dayOfYear >= 0 ? Day(y, ClimateText.Whole(fields[dayOfYear]) ?? 0) : Date(y, ClimateText.Whole(fields[month]) ?? 0, ClimateText.Whole(fields[day]) ?? 0);
            return date is { } d ? new PowerStamp(y, d.Month, d.Day, h) : null;
        }

        private static DateOnly? Day(int year, int dayOfYear) =>
            dayOfYear >= 1 && dayOfYear <= (DateTime.IsLeapYear(year) ? MonthDays.DaysCount + 1 : MonthDays.DaysCount) ? new DateOnly(year, 1, 1).AddDays(dayOfYear - 1) : null;

        private static DateOnly? Date(int year, int month, int day) =>
            month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month) ? new DateOnly(year, month, day) : null;
    }

    [GeneratedRegex(@"latitude\s+(?<lat>-?\d+(?:\.\d+)?)\s+longitude\s+(?<lon>-?\d+(?:\.\d+)?)", RegexOptions.IgnoreCase)]
    private static partial Regex Location();

    [GeneratedRegex(@"\bin UTC\b")]
    private static partial Regex InUtc();

    [GeneratedRegex(@"\d\d/\d\d/\d{4} through \d\d/\d\d/\d{4}")]
    private static partial Regex Dates();

    [GeneratedRegex(@"\([A-Z][a-z]+ \d{4} - [A-Z][a-z]+ \d{4}\)")]
    private static partial Regex Period();

    [GeneratedRegex(@"^""?(?<name>[A-Z0-9_]+)\s+.*\((?<unit>[^()]*)\)\s*""?$")]
    private static partial Regex Quantity();
}
