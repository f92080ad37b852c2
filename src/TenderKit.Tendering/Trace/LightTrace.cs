using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;
using static TenderKit.Tendering.Trace.FigureList;

namespace TenderKit.Tendering.Trace;

/// <summary>Where the poles stand and how much light falls where.</summary>
internal static class LightTrace
{
    /// <summary>Reach of a luminaire in an endless row, mounting heights: EN 13201-3:2015, 7.1.4 (from memory).</summary>
    private const double ReachInHeights = 5;

    public static ImmutableArray<TracedFigure> Of(TenderDesign design, SiteDesign site)
    {
        var list = new FigureList(design, TraceGroup.Light);
        AddSpacing(list, site);
        var lamp = site.Parts.Luminaire;
        list.Add(
            "light.maintenance", "Maintenance factor", site.MaintenanceFactor, "", "maintenance",
            list.Rule("t", "light.maintenance_hours", "hours to the maintenance"), Part("T", "life to 80 % of the light", lamp.LifeL80H, "h", lamp),
            list.Rule("s", "light.survival_factor", "luminaires that survive"), Dirt(list, site));
        if (!site.Light.Result.Points.IsEmpty)
        {
            AddDarkest(list, design, site);
            var points = List("E", "light of the points of the grid", site.Light.Result.Points.Select(p => p.IlluminanceLx), "lx", TraceOrigin.Light);
            list.Add("light.average", "Average illuminance, maintained", site.Light.Result.AverageLx, "lx", "mean", points, Given("N", "points of the grid", site.Light.Result.Points.Length, "", TraceOrigin.Light));
            list.Add("light.minimum", "Minimum illuminance, maintained", site.Light.Result.MinimumLx, "lx", "least", points);
        }

        return list.Figures;
    }

    private static void AddSpacing(FigureList list, SiteDesign site)
    {
        var (poles, sides) = site.Light.Yard is { } yard ? (yard.PolesPerSide, 1) : (site.Poles, SiteLighting.SidesOf(site.Site));
        list.Add(
            "light.spacing", "Pole spacing along a side", site.Light.SpacingM, "m", "spacing",
            Given("L", "length lit", site.Site.LengthM, "m", TraceOrigin.Site),
            Given("n", site.Light.Yard is null ? "poles, the fewest that meet the class" : "poles on a side, the fewest that meet the class", poles, "", site.Site.FixedPoles is null ? TraceOrigin.Search : TraceOrigin.Site),
            Given("k", "sides with poles", sides, "", TraceOrigin.Site));
    }

    private static TraceInput? Dirt(FigureList list, SiteDesign site) => (list.RuleValue("light.pollution"), list.RuleValue("light.cleaning_years")) is ({ } pollution, { } years)
        ? Given("D", "light not lost to dirt", Maintenance.DirtFraction(site.Parts.Luminaire.IpCode, (Pollution)((int)Math.Round(pollution) - 1), years), "", TraceOrigin.Standard, "CIE 154:2003")
        : null;

    private static void AddDarkest(FigureList list, TenderDesign design, SiteDesign site)
    {
        if (!design.Light.TryGetValue(site.Parts.Luminaire.PhotometricFile, out var light) || Positions(site) is not { } luminaires) return;
        var darkest = site.Light.Result.Points.MinBy(p => p.IlluminanceLx);
        var heightM = luminaires[0].HeightM;
        var rays = luminaires.Select(l => RayOf(light, l, darkest)).ToImmutableArray();
        list.Add(
            "light.darkest", "Light of the darkest point", darkest.IlluminanceLx, "lx", "point",
            list.Figure("MF", "light.maintenance"), Given("k", "level of the luminaire", site.Light.LevelFraction, "", TraceOrigin.Search),
            List("I", "intensity towards the point", rays.Select(r => r.IntensityCd), "cd", TraceOrigin.Part, site.Parts.Luminaire.PhotometricFile),
            List("e", "angle of the light from the vertical", rays.Select(r => r.AngleDegrees), "degrees", TraceOrigin.Light),
            Given("H", "mounting height", heightM, "m", TraceOrigin.Part, site.Parts.Pole.Code));
    }

    private static (double IntensityCd, double AngleDegrees) RayOf(LightDistribution light, LuminairePosition luminaire, LightPoint point)
    {
        var acrossM = Math.Sqrt(Math.Pow(point.XM - luminaire.XM, 2) + Math.Pow(point.YM - luminaire.YM, 2));
        var cos = luminaire.HeightM / Math.Sqrt((acrossM * acrossM) + (luminaire.HeightM * luminaire.HeightM));
        var lx = Illuminance.AtPoints(light, [luminaire], [point], 1)[0].IlluminanceLx;
        return (lx * luminaire.HeightM * luminaire.HeightM / (cos * cos * cos), Math.Acos(cos) * 180 / Math.PI);
    }

    /// <summary>The luminaires counted at the darkest point.</summary>
    private static ImmutableArray<LuminairePosition>? Positions(SiteDesign site)
    {
        if (site.Light.Yard is { } yard) return Illuminance.PositionsOf(yard);
        if (site.Light.Layout is not { } road) return null;
        if (site.Poles <= SiteLighting.SidesOf(site.Site) && site.Light.Result.PointsAlong == RoadGrid.PointsAlong(site.Site.LengthM) && TenderClasses.Luminance(site.Site.Target) is null)
            return PoleLine.Positions(road, site.Site.LengthM, site.Poles);
        var darkest = site.Light.Result.Points.MinBy(p => p.IlluminanceLx);
        var reachM = ReachInHeights * road.MountingHeightM;
        var near = Row(road.OverhangM, 0, 90, road);
        var far = road.Arrangement == Arrangement.SingleSided ? [] : Row(road.WidthM - road.OverhangM, road.Arrangement == Arrangement.Staggered ? road.SpacingM / 2 : 0, 270, road);
        return [.. near.Concat(far).Where(l => Math.Pow(l.XM - darkest.XM, 2) + Math.Pow(l.YM - darkest.YM, 2) <= reachM * reachM)];
    }

    private static IEnumerable<LuminairePosition> Row(double yM, double fromM, double facingDegrees, RoadLayout road)
    {
        var bays = (int)Math.Ceiling(ReachInHeights * road.MountingHeightM / road.SpacingM) + 1;
        return Enumerable.Range(-bays, (2 * bays) + 1).Select(i => new LuminairePosition(fromM + (i * road.SpacingM), yM, road.MountingHeightM, facingDegrees, road.TiltDegrees));
    }
}
