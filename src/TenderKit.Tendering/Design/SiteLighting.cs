using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Poles and light of one site with one luminaire on one pole shape.</summary>
public static class SiteLighting
{
    private const double LeastSpacingM = 2;
    private const double GreatestSpacingM = 120;

    /// <summary>The layout with the fewest poles that meets the site's class, or the nearest miss.</summary>
    /// <param name="maintenance">Maintenance factor, fraction.</param>
    public static LightSolution Of(LightDistribution distribution, Site site, PoleShape shape, double maintenance, SpacingBounds bounds, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        if (site is { Kind: SiteKind.Yard, Geometry.Lit: { } drawn }) return AreaLighting.Of(distribution, site, drawn, shape, maintenance, bounds, rules["light.setback"]);
        if (site.Kind == SiteKind.Yard) return OnYard(distribution, site, shape, maintenance, bounds, rules);
        return TenderClasses.Luminance(site.Target) is { } roadClass
            ? LuminanceLighting.Of(distribution, site, LayoutOf(site, shape, rules), roadClass, maintenance, bounds, inputs.Shared)
            : OnRoad(distribution, site, shape, maintenance, bounds, inputs);
    }

    private static RoadLayout LayoutOf(Site site, PoleShape shape, RuleSet rules) =>
        new(site.WidthM, shape.HeightM, shape.HeightM, Overhang(shape, rules), shape.ArmTiltDegrees, site.Arrangement);

    private static LightSolution OnRoad(LightDistribution distribution, Site site, PoleShape shape, double maintenance, SpacingBounds bounds, DesignInputs inputs)
    {
        var layout = LayoutOf(site, shape, inputs.Rules);
        if (site.FixedPoles is { } poles) return OfPoles(distribution, layout, site, poles, maintenance, bounds);
        var widest = inputs.Shared.Widest(
            distribution, layout, site.Target, maintenance, bounds, () => SpacingSearch.Road(distribution, layout, site.Target, maintenance, bounds));
        if (!widest.Met) return widest;
        var perSide = PolesPerSide(site, widest.SpacingM);
        var sides = SidesOf(site);
        if (site.Geometry is { BendFractions.IsEmpty: false } && perSide > 1)
        {
            var bent = SpacingSearch.AtSpacing(distribution, layout with { SpacingM = BaysOf(site, widest.SpacingM).GreatestM * StepsPerBay(site) }, site.Target, maintenance, bounds);
            return bent with { GoverningLimit = widest.GoverningLimit };
        }

        var even = OfPoles(distribution, layout, site, perSide * sides, maintenance, bounds);
        if (!even.Met && perSide == 1 && site.LengthM >= 2 * LeastSpacingM)
            even = OfPoles(distribution, layout, site, 2 * sides, maintenance, bounds);
        return even with { GoverningLimit = widest.GoverningLimit };
    }

    /// <summary>
    /// Light of a given number of poles: measured between two poles of a row taken as endless, as EN 13201-3 has it; with one pole a side
    /// there is no such field and no row to help, so the whole line is measured as it stands, ends included.
    /// </summary>
    private static LightSolution OfPoles(LightDistribution distribution, RoadLayout layout, Site site, int poles, double maintenance, SpacingBounds bounds) =>
        poles <= SidesOf(site)
            ? SpacingSearch.OnLine(distribution, layout, site.LengthM, poles, site.Target, maintenance, bounds)
            : SpacingSearch.AtSpacing(distribution, layout with { SpacingM = SpacingFor(site, poles) }, site.Target, maintenance, bounds);

    /// <summary>The yard's poles, or those asked for on one long side or, when even, on both; the lower level that meets the target.</summary>
    private static LightSolution OnYard(LightDistribution distribution, Site site, PoleShape shape, double maintenance, SpacingBounds bounds, RuleSet rules)
    {
        var yard = YardOf(site, shape, rules);
        if (site.FixedPoles is not { } poles) return SpacingSearch.Yard(distribution, yard, site.Target, maintenance, bounds);
        var one = SpacingSearch.AtPoles(distribution, yard with { PolesPerSide = poles, BothSides = false }, site.Target, maintenance, bounds);
        if (poles % 2 != 0) return one;
        var both = SpacingSearch.AtPoles(distribution, yard with { PolesPerSide = poles / 2, BothSides = true }, site.Target, maintenance, bounds);
        return both.Met && (!one.Met || both.LevelFraction < one.LevelFraction) ? both : one;
    }

    /// <summary>Why the class or the number of poles asked for cannot be designed, or null.</summary>
    public static Diagnostic? Problem(Site site)
    {
        if (site.Kind != SiteKind.Road && TenderClasses.Luminance(site.Target) is not null)
            return Diagnostic.Error("TK232", $"class {site.Target.Name} asks for luminance, which is for roads; ask for a class of illuminance, such as P4 or C3", new Place(Site: site.Id));
        if (site.Kind == SiteKind.Yard || site.FixedPoles is not { } poles) return null;
        if (site.Arrangement == Arrangement.Opposite && poles % 2 != 0)
            return Diagnostic.Error("TK231", FormattableString.Invariant($"{poles} poles cannot stand in opposite pairs; ask for an even number or another arrangement"), new Place(Site: site.Id));
        var spacingM = SpacingFor(site, poles);
        return spacingM is >= LeastSpacingM and <= GreatestSpacingM
            ? null
            : Diagnostic.Error(
                "TK231",
                FormattableString.Invariant($"{poles} poles on {site.LengthM:0.##} m are {spacingM:0.##} m apart along a side, outside {LeastSpacingM} to {GreatestSpacingM} m; correct the number of poles or the length, or leave the number out"),
                new Place(Site: site.Id));
    }

    private static YardLayout YardOf(Site site, PoleShape shape, RuleSet rules) =>
        new(site.LengthM, site.WidthM, 1, false, shape.HeightM, Overhang(shape, rules), shape.ArmTiltDegrees);

    private static double Overhang(PoleShape shape, RuleSet rules) => shape.ArmReachM - rules["light.setback"];

    /// <summary>What is drawn of a site where its light depends on it, or null.</summary>
    internal static SiteGeometry? DrawnOf(Site site) => site switch
    {
        { Kind: SiteKind.Yard, Geometry: { Lit: not null } area } => area,
        { FixedPoles: null, Geometry: { BendFractions.IsEmpty: false } line } => line,
        _ => null,
    };

    /// <summary>Poles along the line of a site, a pole at each of its bends; on both sides of a staggered one, on one side otherwise.</summary>
    internal static LineBays BaysOf(Site site, double spacingM) =>
        LineBays.Of(site.LengthM, [.. (site.Geometry?.BendFractions ?? []).Select(f => f * site.LengthM)], spacingM / StepsPerBay(site));

    private static int StepsPerBay(Site site) => site.Arrangement == Arrangement.Staggered ? 2 : 1;

    /// <summary>Poles on one side: the line is divided into equal bays no longer than the spacing found, poles from half a bay.</summary>
    internal static int PolesPerSide(Site site, double spacingM) => Math.Max(1, (int)Math.Ceiling((site.LengthM / spacingM) - 1e-9));

    internal static int SidesOf(Site site) => site.Arrangement == Arrangement.SingleSided ? 1 : 2;

    internal static double SpacingFor(Site site, int poles) => site.LengthM / Math.Max(1, (double)poles / SidesOf(site));

    /// <summary>Poles on the site.</summary>
    public static int PolesOf(LightSolution light, Site site)
    {
        if (light.Yard is { } yard) return yard.PolesPerSide * (yard.BothSides ? 2 : 1);
        if (site.FixedPoles is { } asked) return asked;
        if (site.Geometry is { BendFractions.IsEmpty: false } && light.SpacingM < site.LengthM) return BaysOf(site, light.SpacingM).PlacesM.Length * (site.Arrangement == Arrangement.Opposite ? 2 : 1);
        return PolesPerSide(site, light.SpacingM) * SidesOf(site);
    }
}
