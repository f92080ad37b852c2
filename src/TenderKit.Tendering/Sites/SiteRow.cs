using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using F23.StringSimilarity;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Sites.Positions;

namespace TenderKit.Tendering.Sites;

/// <summary>One row under reading: cells by meaning, with the echo and the diagnostics they give rise to.</summary>
internal sealed partial class SiteRow(ColumnMapping mapping, ImmutableArray<Cell> cells, ImmutableArray<DecimalMark> marks)
{
    /// <summary>A position known less well than this is said, m. Common practice, no source.</summary>
    public const double GreatestAccuracyM = 50;

    private readonly List<Diagnostic> diagnostics = [];
    private readonly List<CellEcho> echo = [];

    public int Row => cells[0].Row;

    public string SiteId { get; set; } = "";

    /// <summary>Settled position, or null when it could not be had.</summary>
    public GeoPoint? Position { get; set; }

    /// <summary>The line or area that stands in a cell of the row, or null.</summary>
    public MapFeature? Drawing { get; private set; }

    /// <summary>Whether a line or an area stands in a cell and cannot be read, which has been reported.</summary>
    public bool IsDrawingBroken => Drawing is null && (IsFilled(SiteColumns.Outline) || IsFilled(SiteColumns.Trace));

    /// <summary>Reads the line or the area of the row, where there is one.</summary>
    public void ReadDrawing()
    {
        foreach (var (meaning, shape) in new[] { (SiteColumns.Outline, MapShape.Area), (SiteColumns.Trace, MapShape.Line) })
        {
            if (!IsFilled(meaning) || Drawing is not null) continue;
            var (points, worstM, problem) = TraceText.Read(Text(meaning), shape);
            if (problem is not null)
            {
                Error("TK183", meaning, problem);
                continue;
            }

            Drawing = new MapFeature(Row, shape, [points], "", []);
            Understood(meaning, string.Create(CultureInfo.InvariantCulture, $"{points.Length} points, {Drawing.LengthM:0.0} m"));
            if (worstM > GreatestAccuracyM)
                Warning("TK178", meaning, FormattableString.Invariant($"holds a point taken to {worstM:0} m only; its length and its place are no better"));
        }
    }

    /// <summary>False when the position was taken from the other sites.</summary>
    public bool IsPositionStated { get; set; } = true;

    /// <summary>Sheet of the row; null for csv.</summary>
    public string? Sheet => mapping.Table.Sheet;

    public string File => mapping.Table.File;

    public bool HasErrors => diagnostics.Exists(d => d.Severity == Severity.Error);

    public ImmutableArray<Diagnostic> Diagnostics => [.. diagnostics];

    public SiteRowEcho Echo(bool isRead) => new(Row, SiteId, isRead, [.. echo]);

    public bool IsFilled(string meaning) => Text(meaning).Length > 0;

    public bool HasColumn(string meaning) => mapping.Of(meaning) is not null;

    public string Text(string meaning) => Cell(meaning)?.Text ?? "";

    /// <summary>The cell of a meaning; null when the list has no column for it.</summary>
    public Cell? Cell(string meaning) => mapping.Of(meaning) is { } column ? cells[column.Column - 1] : null;

    /// <summary>The text of a cell, echoed as it stands.</summary>
    public string Echoed(string meaning)
    {
        var text = Text(meaning);
        if (text.Length > 0) Understood(meaning, text);
        return text;
    }

    /// <summary>The number of a cell inside its limits; null when the cell is empty or wrong.</summary>
    public double? Number(string meaning, QuantityKind kind, double low, double high, bool isEchoed = true)
    {
        if (!IsFilled(meaning)) return null;
        var column = mapping.Of(meaning)!;
        var cell = cells[column.Column - 1];
        return Accept(meaning, UserNumber.Read(cell, kind, Mark(meaning), column.Unit), kind, low, high, isEchoed);
    }

    /// <summary>The number of a cell, the greater end where a range such as 5-6 m is written, which errs on the side of more light.</summary>
    public double? NumberOrGreater(string meaning, QuantityKind kind, double low, double high)
    {
        if (Cell(meaning) is not { Number: null, Text.Length: > 0 } cell) return Number(meaning, kind, low, high);
        var (from, to) = UserNumber.ReadRange(cell.Text, kind, Mark(meaning), mapping.Of(meaning)!.Unit);
        if (from.Value is null || to.Value is null || from.Value == to.Value) return Number(meaning, kind, low, high);
        if (Accept(meaning, from.Value > to.Value ? from : to, kind, low, high) is not { } greater) return null;
        Warning("TK189", meaning, "is a range; the greater end is taken");
        return greater;
    }

    private DecimalMark Mark(string meaning) => mapping.Of(meaning) is { } column && column.Column <= marks.Length ? marks[column.Column - 1] : DecimalMark.Unknown;

    /// <summary>An angle, with the hemisphere letter where written; a heading such as "Longitude (W)" gives it to all its cells.</summary>
    public NumberReading? Degrees(string meaning, string text)
    {
        var reading = UserNumber.Read(text, QuantityKind.Degrees, Mark(meaning));
        if (reading.Hemisphere is null && HeadingHemisphere().Match(Heading(meaning)) is { Success: true } heading)
            reading = UserNumber.Read(text + " " + heading.Groups["h"].Value, QuantityKind.Degrees, Mark(meaning));
        if (reading.Problem is null) return reading;
        Error("TK183", meaning, reading.Problem);
        return null;
    }

    /// <summary>Heights of a cell: one, several separated by ';', or the two ends of a range.</summary>
    public ImmutableArray<double>? Heights(string meaning)
    {
        var column = mapping.Of(meaning)!;
        if (cells[column.Column - 1].Number is not null)
            return Number(meaning, QuantityKind.Length, SiteLimits.LeastHeightM, SiteLimits.GreatestHeightM) is { } single ? [single] : null;
        var heights = new SortedSet<double>();
        foreach (var item in Text(meaning).Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var (low, high) = UserNumber.ReadRange(item, QuantityKind.Length, Mark(meaning), column.Unit);
            if (Accept(meaning, low, QuantityKind.Length, SiteLimits.LeastHeightM, SiteLimits.GreatestHeightM, false) is not { } from
                || Accept(meaning, high, QuantityKind.Length, from, SiteLimits.GreatestHeightM, false) is not { } to) return null;
            heights.UnionWith(Steps(from, to));
        }

        Understood(meaning, string.Join(", ", heights.Select(h => h.ToString("0.##", CultureInfo.InvariantCulture))) + " m");
        return [.. heights];
    }

    /// <summary>A word of a closed choice; null when empty or unknown.</summary>
    public T? Choice<T>(string meaning, Func<string, T?> find, Func<T, string> print, IEnumerable<string> known)
        where T : class
    {
        if (!IsFilled(meaning)) return null;
        if (find(Text(meaning)) is not { } value)
        {
            Error("TK185", meaning, $"is not known{Nearest(Text(meaning), [.. known])}");
            return null;
        }

        Understood(meaning, print(value));
        return value;
    }

    /// <summary>A word of an enumeration; null when empty or unknown.</summary>
    public T? Choice<T>(string meaning, Func<string, T?> find)
        where T : struct, Enum =>
            Choice(meaning, t => find(t) is { } v ? (object)v : null, v => v.ToString()!, Enum.GetNames<T>()) is T found ? found : null;

    public void Understood(string meaning, string understood) => echo.Add(new(Heading(meaning), Text(meaning), understood));

    public void Error(string code, string meaning, string what) =>
        diagnostics.Add(Diagnostic.Error(code, Message(meaning, what), PlaceOf(meaning)));

    public void Warning(string code, string meaning, string what) =>
        diagnostics.Add(Diagnostic.Warning(code, Message(meaning, what), PlaceOf(meaning)));

    public void Note(string code, string what) => diagnostics.Add(Diagnostic.Note(code, what, Place(null)));

    private double? Accept(string meaning, NumberReading reading, QuantityKind kind, double low, double high, bool isEchoed = true)
    {
        if (reading.Problem is not null)
        {
            Error("TK183", meaning, reading.Problem);
            return null;
        }

        if (reading.Value is not { } value || value < low || value > high)
        {
            var unit = UnitSpellings.BaseSymbol(kind);
            Error("TK184", meaning, string.Create(CultureInfo.InvariantCulture, $"is {reading.Understood}, outside {low} to {high} {unit}")
                .TrimEnd() + "; correct it, or write its unit");
            return null;
        }

        // a comma that would give less than the least length or the like can only be a thousands mark
        if (reading.Note is { } note && !(reading.Ambiguous && value / 1000 < low))
            diagnostics.Add(new("TK189", reading.Ambiguous ? Severity.Warning : Severity.Note, Message(meaning, note), PlaceOf(meaning)));
        if (isEchoed) Understood(meaning, reading.Understood);
        return value;
    }

    private static IEnumerable<double> Steps(double from, double to)
    {
        yield return from;
        for (var h = (Math.Floor(from / SiteLimits.HeightStepM) + 1) * SiteLimits.HeightStepM; h < to; h += SiteLimits.HeightStepM) yield return h;
        yield return to;
    }

    private static string Nearest(string text, IReadOnlyList<string> known)
    {
        if (known.Count == 0) return "; correct it";
        var likeness = new NormalizedLevenshtein();
        var nearest = known.MinBy(k => likeness.Distance(HeadingMatch.Words(text), HeadingMatch.Words(k)))!;
        return $"; the nearest is '{nearest}', known are {string.Join(", ", known)}";
    }

    private string Heading(string meaning) => mapping.Of(meaning)?.Heading ?? meaning;

    private string Message(string meaning, string what) =>
        IsFilled(meaning) ? $"{Heading(meaning)} '{Text(meaning)}' {what}" : $"{Heading(meaning)} {what}";

    private Place PlaceOf(string meaning) => Place(Heading(meaning)) with { Cell = Cell(meaning)?.Address };

    private Place Place(string? column) => new(mapping.Table.File, mapping.Table.Sheet, Row, column, SiteId.Length == 0 ? null : SiteId);

    [GeneratedRegex(@"[\s(\[](?<h>south|west|sud|sur|sul|ouest|oeste|[swo])\s*[)\]]?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HeadingHemisphere();
}
