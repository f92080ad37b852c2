using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Light on vertical, semicylindrical and hemispherical surfaces over a strip, maintained; faces look along the strip, both ways.</summary>
/// <param name="MinimumVerticalLx">Least vertical illuminance 1.5 m up, of both directions, lx.</param>
/// <param name="MinimumSemicylindricalLx">Least semicylindrical illuminance 1.5 m up, of both directions, lx.</param>
/// <param name="AverageHemisphericalLx">Average hemispherical illuminance of the ground, lx.</param>
/// <param name="HemisphericalUniformity">Least over average, fraction.</param>
public sealed record SpatialResult(
    double MinimumVerticalLx, double MinimumSemicylindricalLx, double AverageHemisphericalLx, double HemisphericalUniformity);

/// <summary>Illuminance of a strip along the road, on the grid of <see cref="RoadGrid"/>; luminaires within five mounting heights count.</summary>
internal static class StripLight
{
    /// <summary>Horizontal illuminance. Source: EN 13201-3:2015, 7.1 (from memory).</summary>
    public static LightResult Horizontal(RoadField field, double fromYM, double widthM, double maintenanceFactor)
    {
        var points = new RowField();
        points.Lay(field.SpacingM, fromYM, widthM);
        field.LightTo(points);
        return points.WithPoints(points.Summary(maintenanceFactor), maintenanceFactor);
    }

    /// <summary>Vertical and semicylindrical minimum of both directions, hemispherical average. Source: EN 13201-3:2015, clause 7 (from memory).</summary>
    public static SpatialResult Spatial(RoadField field, double fromYM, double widthM, double maintenanceFactor)
    {
        var points = RoadGrid.Points(field.SpacingM, fromYM, widthM, RoadGrid.PointsAlong(field.SpacingM), RoadGrid.PointsAcross(widthM));
        double vertical = double.PositiveInfinity, semicylindrical = double.PositiveInfinity, least = double.PositiveInfinity, sum = 0;
        foreach (var point in points)
        {
            var at = AtPoint(field, point.XM, point.YM);
            vertical = Math.Min(vertical, at.Vertical);
            semicylindrical = Math.Min(semicylindrical, at.Semicylindrical);
            least = Math.Min(least, at.Hemispherical);
            sum += at.Hemispherical;
        }

        var average = sum / points.Length;
        var uniformity = average > 0 ? least / average : 0;
        return new SpatialResult(vertical * maintenanceFactor, semicylindrical * maintenanceFactor, average * maintenanceFactor, uniformity);
    }

    private static (double Vertical, double Semicylindrical, double Hemispherical) AtPoint(RoadField field, double x, double y)
    {
        double verticalAhead = 0, verticalBack = 0, roundAhead = 0, roundBack = 0, hemispherical = 0;
        foreach (var (mounting, row) in field.Rows)
        {
            var (first, last) = field.WithinCircle(row, x, y);
            for (var k = first; k <= last; k++)
            {
                double dx = x - field.XOf(row, k), dy = y - row.YM;
                var heightM = row.HeightM - SpatialIlluminance.FaceHeightM;
                var (intensity, epsilon, alpha) = Ray(field, mounting, dx, dy, heightM);
                verticalAhead += SpatialIlluminance.VerticalLx(intensity, heightM, epsilon, alpha);
                verticalBack += SpatialIlluminance.VerticalLx(intensity, heightM, epsilon, 180 - alpha);
                roundAhead += SpatialIlluminance.SemicylindricalLx(intensity, heightM, epsilon, alpha);
                roundBack += SpatialIlluminance.SemicylindricalLx(intensity, heightM, epsilon, 180 - alpha);
                var ground = Ray(field, mounting, dx, dy, row.HeightM);
                hemispherical += SpatialIlluminance.HemisphericalLx(ground.IntensityCd, row.HeightM, ground.Epsilon);
            }
        }

        return (Math.Min(verticalAhead, verticalBack), Math.Min(roundAhead, roundBack), hemispherical);
    }

    /// <summary>Intensity towards the point, its incidence from the vertical, and alpha for a face that looks along +x.</summary>
    private static (double IntensityCd, double Epsilon, double Alpha) Ray(RoadField field, in Mounting mounting, double dx, double dy, double heightM)
    {
        var acrossM = Math.Sqrt((dx * dx) + (dy * dy));
        var alpha = Angle.ToDegrees(Math.Atan2(Math.Abs(dy), -dx));
        return (field.IntensityCd(mounting, dx, dy, heightM), Angle.ToDegrees(Math.Atan2(acrossM, heightM)), alpha);
    }
}
