using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Tendering.Sites.Positions;

/// <summary>Reads a line or an area as survey forms write it in one cell: latitude longitude altitude accuracy, points apart by semicolons.</summary>
public static class TraceText
{
    private const int MostPoints = 10_000;

    /// <summary>The points, or why not. Points that repeat the one before are left out, and so is the closing point of an area.</summary>
    /// <param name="shape">A line or an area.</param>
    public static (ImmutableArray<GeoPoint> Points, double WorstAccuracyM, string? Problem) Read(string text, MapShape shape)
    {
        var (points, worstM) = (new List<GeoPoint>(), 0.0);
        foreach (var piece in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var numbers = piece.Split([' ', ',', '\t'], StringSplitOptions.RemoveEmptyEntries);
            if (numbers.Length is < 2 or > 4 || numbers.Any(n => Number(n) is null)) return ([], 0, $"holds '{Short(piece)}', which is no latitude and longitude; write the points as 14.25 -4.25; 14.26 -4.25");
            var point = new GeoPoint(Number(numbers[0])!.Value, Number(numbers[1])!.Value);
            if (Math.Abs(point.LatitudeDegrees) > 90 || Math.Abs(point.LongitudeDegrees) > 180) return ([], 0, $"holds '{Short(piece)}', which lies outside the earth; write latitude, then longitude");
            if (points.Count == MostPoints) return ([], 0, FormattableString.Invariant($"holds more than {MostPoints} points; walk it again with fewer"));
            if (points.Count == 0 || points[^1] != point) points.Add(point);
            if (numbers.Length == 4) worstM = Math.Max(worstM, Number(numbers[3])!.Value);
        }

        if (shape == MapShape.Area && points.Count > 1 && points[0] == points[^1]) points.RemoveAt(points.Count - 1);
        var needed = shape == MapShape.Line ? 2 : 3;
        return points.Count >= needed ? ([.. points], worstM, null) : ([], 0, FormattableString.Invariant($"holds {points.Count} different points, {needed} are needed; walk it again"));
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] : text;

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
