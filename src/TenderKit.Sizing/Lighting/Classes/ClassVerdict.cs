using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>One limit of a class against what is reached.</summary>
/// <param name="Limit">Limit in words, e.g. "threshold increment".</param>
/// <param name="Unit">Unit of both values; empty for a plain fraction. The threshold increment is in %.</param>
/// <param name="GrowsWithLevel">Whether the figure is linear in the level of the luminaires.</param>
public sealed record LimitCheck(string Limit, Comparison Comparison, double Required, double Reached, string Unit, bool GrowsWithLevel)
{
    public bool Met => Comparison == Comparison.AtLeast ? Reached >= Required : Reached <= Required;

    /// <summary>Reached over required (a greatest value: required over reached); 1 or more when met.</summary>
    public double MarginRatio => Comparison == Comparison.AtLeast ? Ratio(Reached, Required) : Ratio(Required, Reached);

    /// <summary>The same for a compliance table.</summary>
    /// <param name="idPrefix">Start of the stable id, e.g. <c>light.carriageway</c>.</param>
    public Check ToCheck(string idPrefix, string item, string basis) =>
        new($"{idPrefix}.{Limit.Replace(' ', '-')}", item, Limit, Comparison, Required, Reached, Unit, basis);

    private static double Ratio(double numerator, double denominator) => denominator > 0 ? numerator / denominator : double.PositiveInfinity;
}

/// <summary>Every limit of a class against what a strip or area reaches, in the order of the standard's tables.</summary>
/// <param name="Strip">Name of the strip or area.</param>
public sealed record ClassVerdict(string Strip, RoadClass Class, ImmutableArray<LimitCheck> Checks)
{
    public bool Met => Checks.All(c => c.Met);

    /// <summary>The tightest limit when all are met, the one missed by most when not.</summary>
    public LimitCheck Governing => Checks.MinBy(c => c.MarginRatio)!;

    /// <exception cref="ArgumentException">The class asks for nothing, or for a measure the strip was not worked out for.</exception>
    public static ClassVerdict Of(StripQuality strip, RoadClass roadClass)
    {
        ArgumentNullException.ThrowIfNull(strip);
        ArgumentNullException.ThrowIfNull(roadClass);
        ImmutableArray<LimitCheck> checks =
            [.. OfLuminance(strip, roadClass), .. OfIlluminance(strip.Illuminance, roadClass), .. OfGlareAndEdge(strip, roadClass), .. OfSpatial(strip, roadClass)];
        return NotEmpty(new ClassVerdict(strip.Name, roadClass, checks));
    }

    /// <summary>A yard or other area: horizontal illuminance and glare rating; whatever else a class may ask is for strips along a road.</summary>
    /// <param name="glareRatingFactor">Worst rating by <see cref="GlareRating.Worst"/>.</param>
    /// <exception cref="ArgumentException">The class asks for neither.</exception>
    public static ClassVerdict OfArea(string name, LightResult area, double glareRatingFactor, RoadClass roadClass)
    {
        ArgumentNullException.ThrowIfNull(area);
        ArgumentNullException.ThrowIfNull(roadClass);
        var checks = OfIlluminance(area, roadClass).ToImmutableArray();
        if (roadClass.GreatestGlareRating is { } greatest)
        {
            checks = checks.Add(new LimitCheck("glare rating", Comparison.AtMost, greatest, glareRatingFactor, "", false));
        }

        return NotEmpty(new ClassVerdict(name, roadClass, checks));
    }

    private static ClassVerdict NotEmpty(ClassVerdict verdict) =>
        verdict.Checks.IsEmpty ? throw new ArgumentException($"class {verdict.Class.Name} asks for nothing here", nameof(verdict)) : verdict;

    private static IEnumerable<LimitCheck> OfLuminance(StripQuality strip, RoadClass roadClass)
    {
        if (roadClass.Luminance is not { } target) yield break;
        var reached = strip.Luminance ?? throw NotWorkedOut("luminance", strip, roadClass);
        yield return Level("average luminance", target.AverageCdM2, reached.AverageCdM2, "cd/m2");
        yield return Least("overall uniformity of the luminance", target.OverallUniformity, reached.OverallUniformity);
        if (target.LongitudinalUniformity is { } along) yield return Least("longitudinal uniformity of the luminance", along, reached.LongitudinalUniformity);
    }

    private static IEnumerable<LimitCheck> OfIlluminance(LightResult reached, RoadClass roadClass)
    {
        if (roadClass.Illuminance is not { } target) yield break;
        yield return Level("average illuminance", target.AverageLx, reached.AverageLx, "lx");
        if (target.MinimumLx is { } minimum) yield return Level("minimum illuminance", minimum, reached.MinimumLx, "lx");
        if (target.OverallUniformity is { } uniformity) yield return Least("overall uniformity", uniformity, reached.OverallUniformity);
        if (target.AverageCeilingLx is { } ceiling)
        {
            yield return new LimitCheck("ceiling of the average illuminance", Comparison.AtMost, ceiling, reached.AverageLx, "lx", true);
        }
    }

    private static IEnumerable<LimitCheck> OfGlareAndEdge(StripQuality strip, RoadClass roadClass)
    {
        if (roadClass.Glare is { } glare)
        {
            var reached = strip.Glare ?? throw NotWorkedOut("glare", strip, roadClass);
            yield return new LimitCheck("threshold increment", Comparison.AtMost, glare.IncrementFraction * 100, reached.IncrementFraction * 100, "%", false);
        }

        if (roadClass.EdgeRatio is { } edge && strip.EdgeRatio is { } ratio) yield return Least("edge illuminance ratio", edge, ratio);
    }

    private static IEnumerable<LimitCheck> OfSpatial(StripQuality strip, RoadClass roadClass)
    {
        var reached = strip.Spatial;
        if (roadClass.MinimumVerticalLx is { } vertical) yield return Level("minimum vertical illuminance", vertical, reached.MinimumVerticalLx, "lx");
        if (roadClass.MinimumSemicylindricalLx is { } round)
        {
            yield return Level("minimum semicylindrical illuminance", round, reached.MinimumSemicylindricalLx, "lx");
        }

        if (roadClass.Hemispherical is not { } target) yield break;
        yield return Level("average hemispherical illuminance", target.AverageLx, reached.AverageHemisphericalLx, "lx");
        yield return Least("uniformity of the hemispherical illuminance", target.OverallUniformity, reached.HemisphericalUniformity);
    }

    private static LimitCheck Level(string limit, double required, double reached, string unit) =>
        new(limit, Comparison.AtLeast, required, reached, unit, true);

    private static LimitCheck Least(string limit, double required, double reached) => new(limit, Comparison.AtLeast, required, reached, "", false);

    private static ArgumentException NotWorkedOut(string measure, StripQuality strip, RoadClass roadClass) =>
        new($"class {roadClass.Name} asks for {measure}, which was not worked out for {strip.Name}", nameof(strip));
}
