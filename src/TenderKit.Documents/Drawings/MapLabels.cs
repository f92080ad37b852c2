using System.Collections.Immutable;
using PdfSharp.Drawing;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Documents.Drawings;

/// <summary>A mark of the map: the sites of one point.</summary>
internal sealed record MapMark(GeoPoint Point, string Text, int Lot);

/// <summary>A mark on the page.</summary>
internal sealed record PlacedMark(XPoint At, string Text, int Sign);

/// <summary>A mark with the room found for its id, or none.</summary>
/// <param name="IsLed">Whether a line leads from the mark to its id.</param>
internal sealed record PlacedLabel(PlacedMark Mark, XRect? Box, bool IsLed);

/// <summary>Finds room for the ids of a map, one after another from the south: beside the mark first, then farther away with a line.</summary>
internal static class MapLabels
{
    private const double SignPt = 3.4;

    private static readonly ImmutableArray<double> _distancesPt = [6, 14, 24, 36];

    private static readonly ImmutableArray<(double X, double Y)> _directions = [(1, 0), (-1, 0), (0.75, -1), (-0.75, -1), (0.75, 1), (-0.75, 1), (0, -1.1), (0, 1.1)];

    public static ImmutableArray<PlacedLabel> Place(ImmutableArray<PlacedMark> marks, XRect frame)
    {
        var taken = marks.Select(m => new XRect(m.At.X - SignPt, m.At.Y - SignPt, 2 * SignPt, 2 * SignPt)).ToList();
        var labels = new List<PlacedLabel>();
        foreach (var mark in marks.OrderByDescending(m => m.At.Y).ThenBy(m => m.At.X).ThenBy(m => m.Text, StringComparer.Ordinal))
        {
            var label = Free(mark, taken, frame);
            if (label.Box is { } box) taken.Add(box);
            labels.Add(label);
        }

        return [.. labels];
    }

    private static PlacedLabel Free(PlacedMark mark, List<XRect> taken, XRect frame)
    {
        foreach (var distance in _distancesPt)
        {
            foreach (var (x, y) in _directions)
            {
                var box = Box(mark, x, y, distance);
                if (frame.Contains(box) && !taken.Exists(t => t.IntersectsWith(box))) return new PlacedLabel(mark, box, distance > _distancesPt[0]);
            }
        }

        return new PlacedLabel(mark, null, false);
    }

    private static XRect Box(PlacedMark mark, double x, double y, double distance)
    {
        var (width, height) = (Pencil.StrongLabel.Width(mark.Text) + 2, Pencil.StrongLabel.Size * 1.15);
        return new XRect(mark.At.X + (x * distance) + (x > 0 ? 0 : x < 0 ? -width : -width / 2), mark.At.Y + (y * distance) - (height / 2), width, height);
    }
}
