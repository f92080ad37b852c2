using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;

namespace TenderKit.Tendering.Columns;

/// <summary>
/// Degrees, minutes and seconds in columns of their own ("Lat deg", "Lat min", "Lat sec", "N/S") become one angle in the first of them.
/// </summary>
public static class AngleParts
{
    private static readonly string[] Latitudes = ["lat", "latitude", "latitud", "northing", "gps latitude", "gps lat"];
    private static readonly string[] Longitudes = ["lon", "long", "lng", "longitude", "longitud", "gps longitude", "gps long", "gps lon"];

    private static readonly (char Part, string Words)[] Parts =
    [
        ('d', "\u00B0|d|deg|degs|degree|degrees|degre|degres|grados|graus|o"), ('m', "'|\u2032|m|min|mins|minute|minutes|minutos"),
        ('s', "\"|''|\u2033|s|sec|secs|second|seconds|seconde|secondes|segundos"), ('h', "n/s|e/w|ns|ew|n s|e w|hem|hemisphere|hemisferio|dir|direction"),
    ];

    /// <summary>Whether two rows of a header name a part of an angle together.</summary>
    internal static bool IsPart(string top, string below) => PartOf(top + " " + below) is not null;

    /// <summary>The table with each angle joined, and its headings; the same when no angle stands in parts.</summary>
    /// <param name="firstDataIndex">0-based row below the headings.</param>
    public static (Table Table, ImmutableArray<string> Headings, ImmutableArray<string> Joined) Join(
        Table table, ImmutableArray<string> headings, int firstDataIndex)
    {
        var parts = headings.Select((h, i) => (Index: i, Part: PartOf(h))).Where(p => p.Part is not null)
            .Select(p => (p.Index, p.Part!.Value.IsLatitude, p.Part.Value.Part)).ToList();
        var (names, joined) = (headings.ToArray(), new List<string>());
        foreach (var group in parts.GroupBy(p => p.IsLatitude).Where(g => g.Any(p => p.Part == 'd') && g.Any(p => p.Part == 'm')))
        {
            var columns = group.DistinctBy(p => p.Part).ToDictionary(p => p.Part, p => p.Index);
            table = Joined(table, columns, firstDataIndex);
            joined.Add(string.Join(", ", columns.Values.Order().Select(i => headings[i])));
            foreach (var (part, index) in columns) names[index] = part != 'd' ? "" : group.Key ? "Latitude" : "Longitude";
        }

        return (table, [.. names], [.. joined]);
    }

    private static Table Joined(Table table, Dictionary<char, int> columns, int firstDataIndex)
    {
        var rows = table.Rows.Select((row, r) => r < firstDataIndex ? row : Joined(row, columns));
        return table with { Rows = [.. rows] };
    }

    private static ImmutableArray<Cell> Joined(ImmutableArray<Cell> row, Dictionary<char, int> columns)
    {
        string Text(char part) => columns.TryGetValue(part, out var i) ? row[i].Text : "";
        var cells = row.ToArray();
        foreach (var i in columns.Values) cells[i] = cells[i] with { Text = "", Number = null };
        if (Text('d').Length == 0) return row;
        var angle = Text('d') + "\u00B0" + (Text('m').Length > 0 ? " " + Text('m') + "'" : "") + (Text('s').Length > 0 ? " " + Text('s') + "\"" : "");
        cells[columns['d']] = cells[columns['d']] with { Text = (angle + " " + Text('h')).TrimEnd(), Number = null };
        return [.. cells];
    }

    private static (bool IsLatitude, char Part)? PartOf(string heading)
    {
        var plain = Spelling.Folded(heading).Replace('(', ' ').Replace(')', ' ').Replace('.', ' ').Replace('_', ' ').Trim();
        if (plain is "n/s" or "e/w") return (plain == "n/s", 'h');
        var cut = plain.LastIndexOf(' ');
        if (cut < 0) return null;
        var (name, part) = (HeadingMatch.Words(plain[..cut]), plain[(cut + 1)..]);
        var found = Parts.FirstOrDefault(p => p.Words.Split('|').Contains(part));
        if (found.Words is null) return null;
        return Latitudes.Contains(name) ? (true, found.Part) : Longitudes.Contains(name) ? (false, found.Part) : null;
    }
}
