using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>The lines <c># key: value</c> or <c>key,value</c> of a climate file.</summary>
internal sealed record ClimateSettings(string? Source, double? LowC, double? HighC, double? LatitudeDegrees, double? LongitudeDegrees, StatedKind Stated)
{
    private static readonly string[] Keys = ["source", "record_low_c", "record_high_c", "latitude", "longitude", "kind", "years"];

    public static ClimateSettings Of(Table table, List<Diagnostic> found)
    {
        var settings = new ClimateSettings(null, null, null, null, null, new StatedKind(null, null));
        foreach (var row in table.Rows)
        {
            if (Line(row) is not { } line) continue;
            settings = line.Key switch
            {
                "source" => settings with { Source = line.Value },
                "record_low_c" => settings with { LowC = Number(table, row[0].Row, line, found) },
                "record_high_c" => settings with { HighC = Number(table, row[0].Row, line, found) },
                "latitude" => settings with { LatitudeDegrees = Degrees(table, row[0].Row, line, 90, found) },
                "longitude" => settings with { LongitudeDegrees = Degrees(table, row[0].Row, line, 180, found) },
                "kind" => settings with { Stated = settings.Stated with { Kind = Kind(table, row[0].Row, line, found) } },
                "years" => settings with { Stated = settings.Stated with { YearCount = Years(table, row[0].Row, line, found) } },
                _ => settings,
            };
        }

        return settings;
    }

    /// <summary>Key and value of a row that is not part of the grid, or null.</summary>
    public static (string Key, string Value)? Line(IReadOnlyList<Cell> row)
    {
        var cells = row.Where(c => !c.IsEmpty).Select(c => c.Text).ToList();
        if (cells.Count == 0) return null;
        var text = cells[0].TrimStart('#', ' ');
        var colon = text.IndexOf(':');
        var key = Key(colon > 0 ? text[..colon] : text);
        if (!Keys.Contains(key)) return cells[0].StartsWith('#') ? (key, "") : null;
        var first = colon > 0 ? text[(colon + 1)..].Trim() : "";
        var value = string.Join(", ", cells.Skip(1).Prepend(first).Where(t => t.Length > 0));
        return value.Length == 0 ? (key + "?", "") : (key, value);
    }

    private static SeriesKind? Kind(Table table, int row, (string Key, string Value) line, List<Diagnostic> found)
    {
        if (StatedKind.KindOf(line.Value) is { } kind) return kind;
        found.Add(Diagnostic.Error("TK134", $"kind '{line.Value}' is not known; {StatedKind.Cure}", new Place(table.File, table.Sheet, row)));
        return null;
    }

    private static int? Years(Table table, int row, (string Key, string Value) line, List<Diagnostic> found)
    {
        if (StatedKind.YearsOf(line.Value) is { } count) return count;
        found.Add(Diagnostic.Error("TK134", $"years '{line.Value}' is neither a first and a last year nor a number of years; write 2005-2019, or 15", new Place(table.File, table.Sheet, row)));
        return null;
    }

    private static string Key(string text) => MonthNames.Plain(text).Replace(' ', '_');

    private static double? Degrees(Table table, int row, (string Key, string Value) line, double limit, List<Diagnostic> found)
    {
        var value = Number(table, row, line, found);
        if (value is null || Math.Abs(value.Value) <= limit) return value;
        found.Add(Diagnostic.Error("TK134", FormattableString.Invariant($"{line.Key} {line.Value} is beyond {limit:0} degrees; write decimal degrees, south and west negative"), new Place(table.File, table.Sheet, row)));
        return null;
    }

    private static double? Number(Table table, int row, (string Key, string Value) line, List<Diagnostic> found)
    {
        var reading = UserNumber.Read(line.Value.Replace(", ", ".", StringComparison.Ordinal), QuantityKind.Number, DecimalMark.Comma);
        if (reading.Value is { } value) return value;
        found.Add(Diagnostic.Error("TK134", $"{line.Key} '{line.Value}' {reading.Problem}", new Place(table.File, table.Sheet, row)));
        return null;
    }
}
