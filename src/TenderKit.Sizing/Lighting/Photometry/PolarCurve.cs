using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>One point of a polar curve.</summary>
/// <param name="GammaDegrees">Angle from straight down, degrees; negative in the second half plane.</param>
/// <param name="IntensityCd">Intensity, cd.</param>
public readonly record struct PolarPoint(double GammaDegrees, double IntensityCd);

/// <summary>Intensities in one vertical plane through the luminaire, for drawing.</summary>
/// <param name="FirstPlaneDegrees">C plane of the positive angles, degrees.</param>
/// <param name="SecondPlaneDegrees">The opposite C plane, of the negative angles, degrees.</param>
/// <param name="Points">From the highest negative angle through 0 to the highest positive one.</param>
public sealed record PolarCurve(double FirstPlaneDegrees, double SecondPlaneDegrees, ImmutableArray<PolarPoint> Points)
{
    /// <summary>The curves a data sheet shows: along the road (C 0 and 180), across it (C 90 and 270), and the plane of the greatest intensity.</summary>
    public static ImmutableArray<PolarCurve> Usual(LightDistribution distribution) =>
        [InPlane(distribution, 0), InPlane(distribution, 90), InPlane(distribution, PhotometricAnalysis.Of(distribution).PeakPlaneDegrees)];

    /// <summary>The curve of a C plane and the one opposite, at the angles the distribution lists.</summary>
    /// <param name="planeDegrees">C plane, degrees, any; counted round to 0 to 360.</param>
    public static PolarCurve InPlane(LightDistribution distribution, double planeDegrees)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        Require.InRange(planeDegrees, -360, 720, nameof(planeDegrees));
        var (first, second) = (Angle.Normalised(planeDegrees), Angle.Normalised(planeDegrees + 180));
        var gammas = distribution.GammasDegrees.ToArray();
        var negative = gammas.Reverse().Where(g => g > 0).Select(g => new PolarPoint(-g, distribution.IntensityCd(second, g)));
        return new PolarCurve(first, second, [.. negative, .. gammas.Select(g => new PolarPoint(g, distribution.IntensityCd(first, g)))]);
    }
}
