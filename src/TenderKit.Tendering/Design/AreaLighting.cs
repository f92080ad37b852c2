using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Poles and light of a yard as it is drawn: any outline, with openings, on the grid of the area itself.</summary>
internal static class AreaLighting
{
    /// <summary>The fewest poles that meet the class, those drawn or so many as are asked for; or the nearest miss.</summary>
    /// <param name="setbackM">From the edge of the area outwards to the pole axis, m.</param>
    public static LightSolution Of(LightDistribution distribution, Site site, DrawnArea drawn, PoleShape shape, double maintenance, SpacingBounds bounds, double setbackM)
    {
        var area = drawn.Area;
        var allowed = new AreaShape(shape.HeightM, shape.ArmTiltDegrees, null, Math.Clamp(bounds.MinSpacingToHeight * shape.HeightM, 2, 100), bounds.LeastLevelFraction)
        {
            EdgeOverhangM = Math.Clamp(shape.ArmReachM - setbackM, -5, 5),
            ReachM = shape.ArmReachM,
        };
        var found = site.FixedPoles switch
        {
            null => AreaSearch.FewestPoles(distribution, area, site.Target, maintenance, allowed),
            { } asked when asked == site.Geometry!.Poles.Length => AreaSearch.OfPositions(distribution, area, site.Target, maintenance, allowed, AsDrawn(site.Geometry, drawn, shape)),
            { } asked => AreaSearch.OfPoles(distribution, area, site.Target, maintenance, allowed, asked),
        };
        var yard = new YardLayout(Math.Max(area.LengthM, area.WidthM), Math.Min(area.LengthM, area.WidthM), found.Poles.Length, false, shape.HeightM, shape.ArmReachM - setbackM, shape.ArmTiltDegrees);
        return new LightSolution(MeanSpacingM(found.Poles, yard.LengthM), null, yard, found.LevelFraction, found.Result, found.Met, found.TightestLimit)
        {
            Area = new AreaLayout(area, found.Poles, shape.ArmReachM),
        };
    }

    /// <summary>Luminaires on poles drawn on the map, each facing a point inside the area.</summary>
    private static ImmutableArray<LuminairePosition> AsDrawn(SiteGeometry geometry, DrawnArea drawn, PoleShape shape)
    {
        var inside = drawn.Frame.ToPlan(Intake.Maps.MapMeasure.Inside(geometry.Parts[0]));
        return [.. geometry.Poles.Select(p => Facing(drawn.Frame.ToPlan(p), inside, shape))];
    }

    private static LuminairePosition Facing(PlanPoint foot, PlanPoint inside, PoleShape shape)
    {
        var facing = foot == inside ? 90 : Angle.ToDegrees(Math.Atan2(inside.YM - foot.YM, inside.XM - foot.XM));
        return new(
            foot.XM + (shape.ArmReachM * Angle.CosDegrees(facing)), foot.YM + (shape.ArmReachM * Angle.SinDegrees(facing)), shape.HeightM, facing, shape.ArmTiltDegrees);
    }

    /// <summary>Mean distance from a luminaire to the nearest other, m; the long side where there is no other.</summary>
    private static double MeanSpacingM(ImmutableArray<LuminairePosition> poles, double longSideM)
    {
        if (poles.Length < 2) return longSideM;
        double Apart(LuminairePosition a, LuminairePosition b) => Math.Sqrt(((a.XM - b.XM) * (a.XM - b.XM)) + ((a.YM - b.YM) * (a.YM - b.YM)));
        return poles.Average(a => poles.Where(b => b != a).Select(b => Apart(a, b)).DefaultIfEmpty(longSideM).Min());
    }
}
