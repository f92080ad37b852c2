using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Quality of light on one strip, maintained (glare: initial), at one level.</summary>
/// <param name="Name">Name as printed; the carriageway is <see cref="RoadQuality.CarriagewayName"/>.</param>
/// <param name="NearEdgeM">Edge with the smaller y, m.</param>
/// <param name="FarEdgeM">Edge with the greater y, m.</param>
/// <param name="Class">What is asked of the strip, or null.</param>
/// <param name="Illuminance">Horizontal illuminance.</param>
/// <param name="Spatial">Vertical, semicylindrical and hemispherical illuminance.</param>
/// <param name="Luminance">Luminance, carriageway only, when a surface was given.</param>
/// <param name="Glare">
/// Disability glare, when a surface was given. Of a sidewalk: the background is Q0 times its average illuminance (our choice, no source).
/// </param>
/// <param name="EdgeRatio">Edge illuminance ratio REI of the worse side, fraction, carriageway only; null where both sides have a class of their own.</param>
public sealed record StripQuality(
    string Name,
    double NearEdgeM,
    double FarEdgeM,
    RoadClass? Class,
    LightResult Illuminance,
    SpatialResult Spatial,
    LuminanceResult? Luminance,
    GlareResult? Glare,
    double? EdgeRatio)
{
    /// <summary>The strip against its class, or null when nothing is asked of it.</summary>
    public ClassVerdict? Verdict => Class is null ? null : ClassVerdict.Of(this, Class);

    /// <summary>The same at another level of the luminaires.</summary>
    public StripQuality AtLevel(double levelFraction) => this with
    {
        Illuminance = Lighting.Illuminance.AtLevel(Illuminance, levelFraction),
        Spatial = Spatial with
        {
            MinimumVerticalLx = Spatial.MinimumVerticalLx * levelFraction,
            MinimumSemicylindricalLx = Spatial.MinimumSemicylindricalLx * levelFraction,
            AverageHemisphericalLx = Spatial.AverageHemisphericalLx * levelFraction,
        },
        Luminance = Luminance?.AtLevel(levelFraction),
        Glare = Glare?.AtLevel(levelFraction),
    };
}

/// <summary>Quality of light over a cross-section: the carriageway and its sidewalks.</summary>
public sealed record RoadQuality(StripQuality Carriageway, ImmutableArray<StripQuality> Sidewalks)
{
    public const string CarriagewayName = "carriageway";

    public IEnumerable<StripQuality> Strips => Sidewalks.Prepend(Carriageway);

    /// <summary>Every strip that something is asked of, against its class.</summary>
    public IEnumerable<ClassVerdict> Verdicts => Strips.Select(s => s.Verdict).OfType<ClassVerdict>();

    public RoadQuality AtLevel(double levelFraction)
    {
        Require.InRange(levelFraction, 0, 1, nameof(levelFraction));
        return new RoadQuality(Carriageway.AtLevel(levelFraction), [.. Sidewalks.Select(s => s.AtLevel(levelFraction))]);
    }
}

/// <summary>Works out every measure of quality of a cross-section.</summary>
public static class RoadEvaluation
{
    /// <summary>Quality of a section at full level.</summary>
    /// <param name="distribution">Luminaire, new.</param>
    /// <param name="section">Cross-section; ranges at <see cref="RoadSection"/>.</param>
    /// <param name="surface">Surface of the road; null leaves luminance and glare out.</param>
    /// <param name="maintenanceFactor">Maintenance factor, above 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle, count or factor outside its range.</exception>
    public static RoadQuality Of(LightDistribution distribution, RoadSection section, RoadSurface? surface, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(section);
        section.Check();
        Require.InRange(Require.Positive(maintenanceFactor, nameof(maintenanceFactor)), 0, 1, nameof(maintenanceFactor));
        var field = new RoadField(distribution, section);
        var sidewalks = ImmutableArray.CreateBuilder<StripQuality>();
        var edge = 0.0;
        foreach (var s in section.NearSidewalks) sidewalks.Add(Beside(field, s, edge -= s.WidthM, surface, maintenanceFactor));
        edge = section.WidthM;
        foreach (var s in section.FarSidewalks)
        {
            sidewalks.Add(Beside(field, s, edge, surface, maintenanceFactor));
            edge += s.WidthM;
        }

        return new RoadQuality(Carriageway(field, section, surface, maintenanceFactor), sidewalks.ToImmutable());
    }

    private static StripQuality Carriageway(RoadField field, RoadSection section, RoadSurface? surface, double maintenanceFactor)
    {
        var luminance = surface is null ? null : RoadLuminance.OnRoad(field, section, surface, maintenanceFactor);
        var glare = luminance?.Observers
            .Select(o => ThresholdIncrement.Walk(field, (o.Lane - 0.5) * section.LaneWidthM, o.AverageCdM2 / maintenanceFactor, o.Against))
            .MaxBy(g => g.IncrementFraction);
        return new StripQuality(
            RoadQuality.CarriagewayName,
            0,
            section.WidthM,
            section.Class,
            StripLight.Horizontal(field, 0, section.WidthM, maintenanceFactor),
            StripLight.Spatial(field, 0, section.WidthM, maintenanceFactor),
            luminance,
            glare,
            EdgeIlluminance.Ratio(field, section));
    }

    private static StripQuality Beside(RoadField field, Sidewalk sidewalk, double fromYM, RoadSurface? surface, double maintenanceFactor)
    {
        var illuminance = StripLight.Horizontal(field, fromYM, sidewalk.WidthM, maintenanceFactor);
        var spatial = StripLight.Spatial(field, fromYM, sidewalk.WidthM, maintenanceFactor);
        var glare = surface is null ? null : OnFoot(field, fromYM + (sidewalk.WidthM / 2), surface.AverageCoefficient * illuminance.AverageLx / maintenanceFactor);
        return new StripQuality(sidewalk.Name, fromYM, fromYM + sidewalk.WidthM, sidewalk.Class, illuminance, spatial, null, glare, null);
    }

    /// <summary>People on foot walk both ways along the middle of their strip.</summary>
    private static GlareResult OnFoot(RoadField field, double yM, double backgroundCdM2)
    {
        var along = ThresholdIncrement.Walk(field, yM, backgroundCdM2, against: false);
        var against = ThresholdIncrement.Walk(field, yM, backgroundCdM2, against: true);
        return against.IncrementFraction > along.IncrementFraction ? against : along;
    }
}
