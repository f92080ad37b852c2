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
    Luminaire Luminaire, PoleShape Shape, int Poles, LightSolution Light, double MaintenanceFactor, double LampInputW, ImmutableArray<Check> Checks)
{
    /// <summary>The integrated unit the luminaire is part of, or null.</summary>
    public IntegratedUnit? Integrated { get; init; }
}

/// <summary>What the light sees of a pole.</summary>
public sealed record PoleShape(double HeightM, double ArmReachM, double ArmTiltDegrees)
{
    public bool IsShapeOf(Pole pole) => pole.HeightM == HeightM && pole.ArmReachM == ArmReachM && pole.ArmTiltDegrees == ArmTiltDegrees;
}

/// <summary>Second step: every luminaire on every pole shape allowed, with the fewest poles that meet the target.</summary>
public static class LightStage
{
    public static ImmutableArray<LightOption> Options(Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        var options = ImmutableArray.CreateBuilder<LightOption>();
        foreach (var (luminaire, unit) in inputs.Catalog.Luminaires.Select(l => (l, (IntegratedUnit?)null)).Concat(inputs.Catalog.IntegratedUnits.Select(u => (u.AsLuminaire(), (IntegratedUnit?)u))))
        {
            var suited = LuminaireChecks(luminaire, site, climate, inputs);
            if (!rejections.Accept(() => luminaire.Code, suited)) continue;
            foreach (var shape in ShapesOf(site, inputs.Catalog))
            {
                var option = Option(luminaire, shape, site, suited, inputs) with { Integrated = unit };
                if (rejections.Accept(() => FormattableString.Invariant($"{luminaire.Code} at {shape.HeightM:0.#} m"), option.Checks)) options.Add(option);
            }
        }

        return options.ToImmutable();
    }

    /// <summary>Maintenance factor of a luminaire at the maintenance date: lumens, survival, dirt.</summary>
    public static double MaintenanceFactor(Luminaire luminaire, RuleSet rules) =>
        Maintenance.Factor(
            Maintenance.LumenFraction(rules["light.maintenance_hours"], luminaire.LifeL80H), rules["light.survival_factor"],
            Maintenance.DirtFraction(luminaire.IpCode, PollutionOf(rules), rules["light.cleaning_years"]));

    /// <summary>The rule counts 1 low, 2 medium, 3 high.</summary>
    private static Pollution PollutionOf(RuleSet rules) => (Pollution)((int)Math.Round(rules["light.pollution"]) - 1);

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
        site.Schedule.Levels.Where(l => l > 0).DefaultIfEmpty(1).Min();

    private static LightOption Option(Luminaire luminaire, PoleShape shape, Site site, ImmutableArray<Check> suited, DesignInputs inputs)
    {
        var maintenance = MaintenanceFactor(luminaire, inputs.Rules);
        var distribution = inputs.Light[luminaire.PhotometricFile];
        var bounds = BoundsFor(luminaire, site, inputs.Rules);
        var key = new LightKey(
            distribution, site.Kind, site.LengthM, site.WidthM, site.Target, site.Schedule, site.FixedPoles, site.Arrangement, shape, maintenance, bounds)
        { Drawn = SiteLighting.DrawnOf(site) };
        var (light, checks) = inputs.Shared.Light(key, () => Lit(key, site, inputs));
        return new LightOption(
            luminaire, shape, SiteLighting.PolesOf(light, site), light, maintenance, luminaire.InputPowerW * light.LevelFraction, [.. suited, .. checks]);
    }

    private static LitSite Lit(LightKey key, Site site, DesignInputs inputs)
    {
        var light = SiteLighting.Of(key.Distribution, site, key.Shape, key.Maintenance, key.Bounds, inputs);
        return new LitSite(light, [.. SiteLightChecks.Of(key.Distribution, site, light, key.Maintenance)]);
    }

    /// <summary>The driver must still reach the schedule's lowest level after trimming, so trimming stops earlier.</summary>
    private static SpacingBounds BoundsFor(Luminaire luminaire, Site site, RuleSet rules) =>
        new(rules["light.spacing_step"], rules["light.spacing_least"], rules["light.spacing_most"], Math.Min(1, luminaire.LeastLevelFraction / LeastScheduleLevel(site)));
}
