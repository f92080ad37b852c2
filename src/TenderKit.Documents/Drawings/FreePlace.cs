using System.Collections.Immutable;
using PdfSharp.Drawing;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Drawings;

/// <summary>Finds room for a label beside a curve.</summary>
internal static class FreePlace
{
    private const int PiecesOfSegment = 6;

    /// <summary>The first place the curve does not cross and no other label takes; where there is none, the one crossed least.</summary>
    /// <param name="places">Places in order of liking, one or more.</param>
    public static XRect Of(IReadOnlyList<XRect> places, IReadOnlyList<XPoint> curve, params ImmutableArray<XRect> taken) =>
        places.MinBy(place => Crossings(place, curve) + (taken.Any(t => t.IntersectsWith(place)) ? curve.Count * PiecesOfSegment : 0));

    /// <summary>The box of a label whose middle is at <paramref name="x"/> and <paramref name="y"/>.</summary>
    public static XRect Box(string text, TextStyle style, double x, double y)
    {
        var width = style.Width(text) + 2;
        return new XRect(x - (width / 2), y - (style.Size * 0.55), width, style.Size * 1.1);
    }

    private static int Crossings(XRect place, IReadOnlyList<XPoint> curve)
    {
        var inside = 0;
        for (var i = 0; i + 1 < curve.Count; i++)
        {
            for (var k = 0; k < PiecesOfSegment; k++)
            {
                var t = (double)k / PiecesOfSegment;
                if (place.Contains(curve[i].X + (t * (curve[i + 1].X - curve[i].X)), curve[i].Y + (t * (curve[i + 1].Y - curve[i].Y)))) inside++;
            }
        }

        return inside;
    }
}
