namespace TenderKit.Sizing.Lighting;

/// <summary>What a light distribution says by itself, before any layout.</summary>
/// <param name="FluxLm">Flux by integration, lm.</param>
/// <param name="StatedFluxLm">Flux of the lamps stated in the file, lm, or null for absolute photometry.</param>
/// <param name="LightOutputRatio">Flux by integration over stated flux, fraction, or null.</param>
/// <param name="PowerW">Input power stated, W, or null.</param>
/// <param name="EfficacyLmPerW">Luminaire efficacy, lm/W, or null when the power is not stated.</param>
/// <param name="PeakIntensityCd">Greatest intensity, cd.</param>
/// <param name="PeakPlaneDegrees">C plane of the greatest intensity, degrees; the first of equals.</param>
/// <param name="PeakGammaDegrees">Gamma of the greatest intensity, degrees; the least of equals.</param>
/// <param name="Symmetry">Symmetry found in the intensities.</param>
/// <param name="StreetSideFraction">Part of the flux on the street side, fraction.</param>
/// <param name="UpwardFraction">Part of the flux above the horizontal, fraction.</param>
/// <param name="Zones">Flux by zone.</param>
/// <param name="Rating">Backlight, uplight and glare rating of those zones.</param>
/// <param name="CutOff">Intensities near the horizontal.</param>
/// <param name="GlareClass">Highest luminous intensity class the cut-off meets: 1 to 6 for G*1 to G*6, or 0 for none.</param>
public sealed record PhotometricAnalysis(
    double FluxLm,
    double? StatedFluxLm,
    double? LightOutputRatio,
    double? PowerW,
    double? EfficacyLmPerW,
    double PeakIntensityCd,
    double PeakPlaneDegrees,
    double PeakGammaDegrees,
    DistributionSymmetry Symmetry,
    double StreetSideFraction,
    double UpwardFraction,
    ZoneFlux Zones,
    ZoneRating Rating,
    CutOffIntensities CutOff,
    int GlareClass)
{
    /// <summary>Analyses a distribution with light in it.</summary>
    /// <exception cref="ArgumentException">No light at all.</exception>
    public static PhotometricAnalysis Of(LightDistribution distribution)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        if (distribution.FluxLm <= 0) throw new ArgumentException("must hold some light", nameof(distribution));
        var (plane, gamma) = Peak(distribution);
        var symmetry = SymmetryFinder.Of(distribution);
        var zones = ZoneFlux.Of(distribution);
        var cutOff = CutOffIntensities.Of(distribution);
        return new PhotometricAnalysis(
            distribution.FluxLm,
            distribution.StatedFluxLm,
            distribution.FluxLm / distribution.StatedFluxLm,
            distribution.StatedPowerW,
            distribution.FluxLm / distribution.StatedPowerW,
            distribution.PeakIntensityCd,
            plane,
            gamma,
            symmetry,
            distribution.StreetSideFraction,
            distribution.UpwardFraction,
            zones,
            ZoneRating.Of(zones, symmetry is DistributionSymmetry.Rotational or DistributionSymmetry.Quadrants),
            cutOff,
            cutOff.GlareClass);
    }

    private static (double PlaneDegrees, double GammaDegrees) Peak(LightDistribution distribution)
    {
        foreach (var gamma in distribution.GammasDegrees)
        {
            foreach (var plane in distribution.PlanesDegrees)
            {
                if (distribution.IntensityCd(plane, gamma) >= distribution.PeakIntensityCd * (1 - 1e-12)) return (plane, gamma);
            }
        }

        throw new InvalidOperationException("the greatest intensity must stand at a corner of the table");
    }
}
