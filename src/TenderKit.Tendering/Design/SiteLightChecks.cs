using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Everything the light of a site is checked against: its class, glare on roads, and the classes asked of parts of the night.</summary>
internal static class SiteLightChecks
{
    public static IEnumerable<Check> Of(LightDistribution distribution, Site site, LightSolution light, double maintenance) =>
        [.. OfRoad(distribution, site, light, maintenance), .. OfTarget("light", "", site.Target, light.Result), .. OfParts(site, light.Result)];

    /// <summary>Maintained illuminance against a target; nothing for a class of luminance.</summary>
    private static IEnumerable<Check> OfTarget(string id, string when, LightTarget target, LightResult result)
    {
        if (target.AverageLx <= 0) yield break;
        var basis = $"class {target.Name}, {target.Source}";
        yield return new Check($"{id}.average", "Light", "maintained average illuminance" + when, Comparison.AtLeast, target.AverageLx, result.AverageLx, "lx", basis);
        if (target.MinimumLx is { } minimum)
            yield return new Check($"{id}.minimum", "Light", "maintained minimum illuminance" + when, Comparison.AtLeast, minimum, result.MinimumLx, "lx", basis);
        if (target.OverallUniformity is { } uniformity)
            yield return new Check($"{id}.uniformity", "Light", "overall uniformity" + when, Comparison.AtLeast, uniformity, result.OverallUniformity, "", basis);
        if (target.AverageCeilingLx is { } ceiling)
            yield return new Check($"{id}.ceiling", "Light", "maintained average illuminance, upper bound" + when, Comparison.AtMost, ceiling, result.AverageLx, "lx", basis);
    }

    /// <summary>Luminance, glare and edge ratio where the class asks for them, on the road surface R3.</summary>
    private static IEnumerable<Check> OfRoad(LightDistribution distribution, Site site, LightSolution light, double maintenance)
    {
        if (light.Layout is not { } layout || RoadClasses.Find(site.Target.Name) is not { } roadClass) yield break;
        if (roadClass.Luminance is null && roadClass.Glare is null) yield break;
        if (layout.SpacingM is < 2 or > 120) yield break;
        var section = RoadSection.Of(layout, LuminanceLighting.LanesOf(site.WidthM), roadClass);
        var verdict = RoadEvaluation.Of(distribution, section, RoadSurface.R3, maintenance).AtLevel(light.LevelFraction).Carriageway.Verdict!;
        foreach (var check in verdict.Checks.Where(c => c.Unit != "lx" && c.Limit != "overall uniformity"))
            yield return check.ToCheck("light", "Light", $"class {roadClass.Name}, {roadClass.Source}; road surface R3, {section.Lanes} {(section.Lanes == 1 ? "lane" : "lanes")}");
    }

    /// <summary>Classes asked of single parts of the night, their least values only: light is in proportion to the level, and the level is the employer's.</summary>
    private static IEnumerable<Check> OfParts(Site site, LightResult full)
    {
        var asked = site.Schedule.Programmes
            .SelectMany(s => s.Parts.Select(p => (p.ClassName, p.LevelFraction)).Append((ClassName: s.RestClassName, LevelFraction: s.RestLevelFraction)))
            .Where(p => p.ClassName is not null)
            .Distinct();
        foreach (var (name, level) in asked)
        {
            var when = FormattableString.Invariant($" at {level * 100:0.#} % level");
            foreach (var check in OfTarget(FormattableString.Invariant($"light.at{level * 100:0.#}.{name}"), when, LightClasses.Find(name!)! with { AverageCeilingLx = null }, Illuminance.AtLevel(full, level)))
                yield return check;
        }
    }
}
