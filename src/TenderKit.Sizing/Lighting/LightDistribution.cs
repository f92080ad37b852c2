using System.Collections.Immutable;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Luminous intensity of a luminaire over the full sphere, in candela, as C planes 0 to 360 degrees (both ends present, symmetry expanded)
/// by gamma 0 to 180 degrees. C 90 is the street side, C 0 and C 180 run along the road; gamma 0 is straight down.
/// </summary>
public sealed class LightDistribution
{
    /// <param name="planesDegrees">C planes, ascending, first 0, last 360.</param>
    /// <param name="gammasDegrees">Gamma angles, ascending, first 0, last 90 or 180.</param>
    /// <param name="intensitiesCd">Intensities, plane by plane.</param>
    /// <param name="statedFluxLm">Flux stated in the file's header, lm, or null for absolute photometry.</param>
    /// <param name="statedPowerW">Input power stated in the file, W, or null.</param>
    public LightDistribution(
        ImmutableArray<double> planesDegrees, ImmutableArray<double> gammasDegrees, ImmutableArray<double> intensitiesCd, double? statedFluxLm, double? statedPowerW)
    {
        throw new NotImplementedException();
    }

    public double? StatedFluxLm { get; }

    public double? StatedPowerW { get; }

    /// <summary>Flux by integration over the sphere, lm.</summary>
    public double FluxLm { get; }

    public double PeakIntensityCd { get; }

    /// <summary>Intensity in a direction, cd, bilinear in C and gamma; zero beyond the last gamma.</summary>
    public double IntensityCd(double planeDegrees, double gammaDegrees) => throw new NotImplementedException();
}
