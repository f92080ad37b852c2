using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Climate;

/// <summary>
/// Monthly climatology of the NASA POWER service (csv): turned into the layout of <see cref="MonthlyClimateFile"/>. The unit depends on the community
/// asked for and is read from the heading. T2M_MAX and T2M_MIN of a climatology are mean monthly extremes, some 4 K beyond the mean daily ones, and are not used.
/// </summary>
internal static partial class PowerClimatology
{
    private const string Irradiation = "ALLSKY_SFC_SW_DWN";
    private const string MeanC = "T2M";
    private const string Source = "NASA POWER climatology (these data were obtained from the NASA Langley Research Center POWER Project)";

    /// <summary>The same table in our layout, or the table itself where it is not of this kind.</summary>
    public static Table Normalised(Table table, List<Diagnostic> found)
    {
        var lines = table.Rows.Select(r => string.Join(' ', r.Where(c => !c.IsEmpty).Select(c => c.Text))).ToList();
        var heading = table.Rows.FirstOrDefault(r => r.Length > 12 && r[0].Text == "PARAMETER" && MonthNames.Of(r[1].Text) == 1);
        if (heading.IsDefault || !lines.Exists(l => l.Contains("NASA", StringComparison.Ordinal))) return table;
        if (table.Rows.Any(r => r.Length > 0 && r[0].Text is "T2M_MAX" or "T2M_MIN"))
        {
            found.Add(ExtremesNotUsed(new Place(table.File, table.Sheet)));
        }

        var unit = lines.FirstOrDefault(l => l.StartsWith(Irradiation + " ", StringComparison.Ordinal) && l.EndsWith(')'));
        var period = lines.Select(l => Period().Match(l)).FirstOrDefault(m => m.Success)?.Value;
        var rows = new List<ImmutableArray<Cell>> { Line(heading, "# source: " + Source + (period is null ? "" : " " + period)) };
        rows.Add(Line(heading, "# kind: satellite"));
        if (lines.Select(l => Location().Match(l)).FirstOrDefault(m => m.Success) is { } place)
        {
            rows.Add(Line(heading, "# latitude: " + place.Groups["lat"].Value));
            rows.Add(Line(heading, "# longitude: " + place.Groups["lon"].Value));
        }

        rows.Add(heading);
        rows.AddRange(table.Rows.Where(r => r.Length > 0 && r[0].Text == Irradiation).Select(r => Named(r, "irradiation " + UnitOf(unit))));
        rows.AddRange(table.Rows.Where(r => r.Length > 0 && r[0].Text == MeanC).Select(r => Named(r, "t_mean_c")));
        return table with { Rows = [.. rows] };
    }

    /// <summary>The note on T2M_MAX and T2M_MIN of months.</summary>
    public static Diagnostic ExtremesNotUsed(Place place) => Diagnostic.Note(
        "TK140", "T2M_MAX and T2M_MIN of this climatology are mean monthly extremes, some 4 K beyond the mean daily maximum and minimum; they are not used", place);

    private static string UnitOf(string? line) => line is null ? "" : line[(line.LastIndexOf('(') + 1)..^1];

    private static ImmutableArray<Cell> Named(ImmutableArray<Cell> row, string heading) => row.SetItem(0, row[0] with { Text = heading });

    private static ImmutableArray<Cell> Line(ImmutableArray<Cell> like, string text) =>
        [.. like.Select((c, i) => c with { Text = i == 0 ? text : "", Number = null })];

    [GeneratedRegex(@"Latitude\s+(?<lat>-?\d+(?:\.\d+)?)\s+Longitude\s+(?<lon>-?\d+(?:\.\d+)?)")]
    private static partial Regex Location();

    [GeneratedRegex(@"\([A-Z][a-z]+ \d{4} - [A-Z][a-z]+ \d{4}\)")]
    private static partial Regex Period();
}
