using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Grid of calculation points. Source: EN 13201-3:2015, 7.1.2 (rules from memory): along, N = 10 points for a spacing up to 30 m, else the
/// smallest N with D up to 3 m; across, the smallest n of 3 or more with d up to 1.5 m; the first point lies half a step from the edge.
/// Check: S 40 m gives N 14, D 2.857 m; width 8 m gives n 6, d 1.333 m.
/// </summary>
public static class RoadGrid
{
    /// <summary>Points across each lane for luminance, the middle one on the centre line of the lane (EN 13201-3:2015, 8.2; from memory).</summary>
    public const int PointsAcrossLane = 3;

    /// <summary>Luminaires counted for illuminance lie within this many mounting heights of the point (EN 13201-3:2015, 7.1.4; from memory).</summary>
    internal const double ReachInHeights = 5;

    private const double LongestShortSpacingM = 30;
    private const int PointsOfShortSpacing = 10;
    private const double GreatestStepAlongM = 3;
    private const double GreatestStepAcrossM = 1.5;
    private const int LeastPointsAcross = 3;

    /// <summary>Points along one spacing (or the long side of a yard).</summary>
    public static int PointsAlong(double spacingM) =>
        Require.Positive(spacingM, nameof(spacingM)) <= LongestShortSpacingM ? PointsOfShortSpacing : Steps(spacingM, GreatestStepAlongM);

    /// <summary>Points across the lit strip.</summary>
    public static int PointsAcross(double widthM) => Math.Max(LeastPointsAcross, Steps(Require.Positive(widthM, nameof(widthM)), GreatestStepAcrossM));

    /// <summary>Points of a strip that starts at <paramref name="fromYM"/>, row by row (y outer, x inner), unlit.</summary>
    internal static LightPoint[] Points(double lengthM, double fromYM, double widthM, int along, int across)
    {
        var points = new LightPoint[along * across];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = new LightPoint(((i % along) + 0.5) * lengthM / along, fromYM + (((i / along) + 0.5) * widthM / across), 0);
        }

        return points;
    }

    private static int Steps(double lengthM, double greatestM) => (int)Math.Ceiling((lengthM / greatestM) - 1e-9);
}
