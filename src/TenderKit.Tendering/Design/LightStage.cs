using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>One way to light a site: luminaire, pole shape and layout that meet the target.</summary>
/// <param name="Poles">Poles on the site.</param>
/// <param name="Shape">Pole height, arm reach and arm tilt.</param>
/// <param name="LampInputW">Electrical input at the level used, before wiring losses, W.</param>
public sealed record LightOption(
    Luminaire Luminaire, PoleShape Shape, int Poles, LightSolution Light, double MaintenanceFactor, double LampInputW, ImmutableArray<Check> Checks);

/// <summary>What the light sees of a pole.</summary>
public sealed record PoleShape(double HeightM, double ArmReachM, double ArmTiltDegrees)
{
    public bool IsShapeOf(Pole pole) => pole.HeightM == HeightM && pole.ArmReachM == ArmReachM && pole.ArmTiltDegrees == ArmTiltDegrees;
}

/// <summary>Second step: every luminaire on every pole shape allowed, with the fewest poles that meet the target.</summary>
public static class LightStage
{
    private const double LeastSpacingM = 2;
    private const double GreatestSpacingM = 120;

    public static ImmutableArray<LightOption> Options(Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        var options = ImmutableArray.CreateBuilder<LightOption>();
        foreach (var luminaire in inputs.Catalog.Luminaires)
        {
            var suited = LuminaireChecks(luminaire, site, climate, inputs);
            if (!rejections.Accept(() => luminaire.Code, suited)) continue;
            foreach (var shape in ShapesOf(site, inputs.Catalog))
            {
                var option = Option(luminaire, shape, site, suited, inputs);
                if (rejections.Accept(() => FormattableString.Invariant($"{luminaire.Code} at {shape.HeightM:0.#} m"), option.Checks)) options.Add(option);
            }
        }

        return options.ToImmutable();
    }

    /// <summary>Maintenance factor of a luminaire at the maintenance date: lumens, survival, dirt.</summary>
    public static double MaintenanceFactor(Luminaire luminaire, RuleSet rules) =>
        Maintenance.Factor(
            Maintenance.LumenFraction(rules["light.maintenance_hours"], luminaire.LifeL80H), rules["light.survival_factor"], rules["light.dirt_factor"]);

    private static IEnumerable<PoleShape> ShapesOf(Site site, PartsCatalog catalog) =>
        catalog.Poles
            .Where(p => p.HeightM >= site.MountingHeightsM[0] && p.HeightM <= site.MountingHeightsM[^1])
            .Select(p => new PoleShape(p.HeightM, p.ArmReachM, p.ArmTiltDegrees))
            .Distinct()
            .OrderBy(s => s.HeightM).ThenBy(s => s.ArmReachM).ThenBy(s => s.ArmTiltDegrees);

    private static ImmutableArray<Check> LuminaireChecks(Luminaire luminaire, Site site, SiteClimate climate, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var least = LeastScheduleLevel(site);
        return
        [
            new Check(
                "luminaire.ingress", "Luminaire", "ingress protection", Comparison.AtLeast,
                rules["luminaire.ip"], luminaire.IpCode, "IP", "design rule luminaire.ip; IEC 60529", 0),
            new Check(
                "luminaire.ambient", "Luminaire", "highest ambient temperature", Comparison.AtLeast,
                climate.Monthly.RecordHighC + rules["luminaire.ambient_margin"], luminaire.MaxAmbientC, "degC",
                "record high of the site and design rule luminaire.ambient_margin", 0),
            new Check(
                "luminaire.plausible", "Luminaire", "flux over input power", Comparison.AtMost,
                rules["plausible.luminaire"], luminaire.FluxLm / luminaire.InputPowerW, "lm/W", "design rule plausible.luminaire", 0),
            new Check(
                "luminaire.dimming", "Luminaire", "lowest level the driver reaches", Comparison.AtMost,
                least, luminaire.LeastLevelFraction, "", $"lighting schedule {site.Schedule.Name}"),
        ];
    }

    /// <summary>Lowest level above zero the schedule asks for, fraction.</summary>
    private static double LeastScheduleLevel(Site site) =>
        site.Schedule.Parts.Select(p => p.LevelFraction).Append(site.Schedule.RestLevelFraction).Where(l => l > 0).DefaultIfEmpty(1).Min();

    private static LightOption Option(Luminaire luminaire, PoleShape shape, Site site, ImmutableArray<Check> suited, DesignInputs inputs)
    {
        var maintenance = MaintenanceFactor(luminaire, inputs.Rules);
        var distribution = inputs.Light[luminaire.PhotometricFile];
        var bounds = BoundsFor(luminaire, site, inputs.Rules);
        var light = site.Kind == SiteKind.Yard
            ? OnYard(distribution, site, shape, maintenance, bounds, inputs.Rules)
            : OnRoad(distribution, site, shape, maintenance, bounds, inputs.Rules);
        return new LightOption(
            luminaire, shape, PolesOf(light, site), light, maintenance, luminaire.InputPowerW * light.LevelFraction, [.. suited, .. LightChecks(site.Target, light.Result)]);
    }

    /// <summary>The driver must still reach the schedule's lowest level after trimming, so trimming stops earlier.</summary>
    private static SpacingBounds BoundsFor(Luminaire luminaire, Site site, RuleSet rules) =>
        new(rules["light.spacing_step"], rules["light.spacing_least"], rules["light.spacing_most"], Math.Min(1, luminaire.LeastLevelFraction / LeastScheduleLevel(site)));

    private static LightSolution OnRoad(LightDistribution distribution, Site site, PoleShape shape, double maintenance, SpacingBounds bounds, RuleSet rules)
    {
        var layout = new RoadLayout(site.WidthM, 0, shape.HeightM, Overhang(shape, rules), shape.ArmTiltDegrees, site.Arrangement);
        if (site.FixedPoles is { } poles) return OfPoles(distribution, layout, site, poles, maintenance, bounds);
        var widest = SpacingSearch.Road(distribution, layout with { SpacingM = shape.HeightM * bounds.MinSpacingToHeight }, site.Target, maintenance, bounds);
        if (!widest.Met) return widest;
        var perSide = PolesPerSide(site, widest.SpacingM);
        var sides = SidesOf(site);
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

    /// <summary>Why the number of poles asked for cannot be designed, or null.</summary>
    public static Diagnostic? PolesProblem(Site site)
    {
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

    /// <summary>Poles on one side: the line is divided into equal bays no longer than the spacing found, poles from half a bay.</summary>
    private static int PolesPerSide(Site site, double spacingM) => Math.Max(1, (int)Math.Ceiling((site.LengthM / spacingM) - 1e-9));

    private static int SidesOf(Site site) => site.Arrangement == Arrangement.SingleSided ? 1 : 2;

    private static double SpacingFor(Site site, int poles) => site.LengthM / Math.Max(1, (double)poles / SidesOf(site));

    private static int PolesOf(LightSolution light, Site site)
    {
        if (light.Yard is { } yard) return yard.PolesPerSide * (yard.BothSides ? 2 : 1);
        return site.FixedPoles ?? PolesPerSide(site, light.SpacingM) * SidesOf(site);
    }

    private static IEnumerable<Check> LightChecks(LightTarget target, LightResult result)
    {
        var basis = $"class {target.Name}, {target.Source}";
        yield return new Check(
            "light.average", "Light", "maintained average illuminance", Comparison.AtLeast,
            target.AverageLx, result.AverageLx, "lx", basis);
        if (target.MinimumLx is { } minimum)
            yield return new Check(
                "light.minimum", "Light", "maintained minimum illuminance", Comparison.AtLeast,
                minimum, result.MinimumLx, "lx", basis);
        if (target.OverallUniformity is { } uniformity)
            yield return new Check(
                "light.uniformity", "Light", "overall uniformity", Comparison.AtLeast,
                uniformity, result.OverallUniformity, "", basis);
        if (target.AverageCeilingLx is { } ceiling)
            yield return new Check(
                "light.ceiling", "Light", "maintained average illuminance, upper bound", Comparison.AtMost,
                ceiling, result.AverageLx, "lx", basis);
    }
}
