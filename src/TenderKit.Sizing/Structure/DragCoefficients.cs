using MathNet.Numerics.Interpolation;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Force coefficients of what stands on a pole, by named standard.</summary>
public static class DragCoefficients
{
    /// <summary>Rounded luminaire: AASHTO LTS (from memory).</summary>
    public const double RoundedLuminaire = 0.5;

    /// <summary>Box or flat-sided luminaire: AASHTO LTS (from memory).</summary>
    public const double Box = 1.2;

    /// <summary>Kinematic viscosity of air, m2/s: EN 1991-1-4 7.9.1.</summary>
    public const double AirViscosityM2PerS = 15e-6;

    private const double GalvanisedRoughnessM = 0.0002;

    private static readonly LinearSpline Panel = LinearSpline.InterpolateSorted([1, 2, 5, 10, 15], [1.12, 1.19, 1.20, 1.23, 1.30]);

    private static readonly LinearSpline Canopy = LinearSpline.InterpolateSorted([0, 5, 10, 15, 20, 25, 30], [0.5, 0.7, 0.9, 1.1, 1.3, 1.6, 1.8]);

    /// <summary>Flat panel square to the wind by aspect ratio, AASHTO LTS sign-panel table (from memory).</summary>
    /// <param name="aspectRatio">Longer over shorter side, 1 to 15; more counts as 15.</param>
    /// <returns>Coefficient on the panel's area. Check value: 2 gives 1.19.</returns>
    public static double FlatPanel(double aspectRatio) => Panel.Interpolate(Math.Min(Require.InRange(aspectRatio, 1, 1000, nameof(aspectRatio)), 15));

    /// <summary>
    /// Horizontal force coefficient of a tilted module on its full area: the greatest overall coefficient of a free-standing monopitch
    /// canopy without obstruction, square to the panel (EN 1991-1-4 table 7.6, from memory), times the sine of the tilt, and no more
    /// than a flat plate square to the wind, 1.2. Over 30 degrees the coefficient of 30 degrees holds.
    /// </summary>
    /// <param name="tiltDegrees">Tilt from horizontal, 0 to 90 degrees.</param>
    /// <returns>Coefficient. Check value: 30 degrees gives 0.9; 15 degrees 0.285.</returns>
    public static double TiltedModule(double tiltDegrees)
    {
        var square = Canopy.Interpolate(Math.Min(Require.InRange(tiltDegrees, 0, 90, nameof(tiltDegrees)), 30));
        return Math.Min(1.2, square * Angle.SinDegrees(tiltDegrees));
    }

    /// <summary>
    /// Galvanised steel cylinder without end effect, EN 1991-1-4 figure 7.28 (from memory): up to 1.2 below the drag crisis,
    /// 0.11 / (Re / 1e6)^1.4 through it, and 1.2 + 0.18 log10(10 k / b) / (1 + 0.4 log10(Re / 1e6)) beyond, with k = 0.2 mm (table 7.13).
    /// </summary>
    /// <param name="diameterM">Diameter b, m.</param>
    /// <param name="peakSpeedMPerS">Peak wind speed, m/s.</param>
    /// <returns>Coefficient, 0.4 to 1.2. Check value: 0.14 m at 40 m/s (Re 3.7e5): 0.80.</returns>
    public static double GalvanisedCylinder(double diameterM, double peakSpeedMPerS)
    {
        Require.Positive(diameterM, nameof(diameterM));
        var millionsOfReynolds = diameterM * Require.NotNegative(peakSpeedMPerS, nameof(peakSpeedMPerS)) / AirViscosityM2PerS / 1e6;
        if (millionsOfReynolds < 0.1) return 1.2;
        var crisis = 0.11 / Math.Pow(millionsOfReynolds, 1.4);
        var beyond = 1.2 + 0.18 * Math.Log10(10 * GalvanisedRoughnessM / diameterM) / (1 + 0.4 * Math.Log10(millionsOfReynolds));
        return Math.Clamp(Math.Max(crisis, beyond), 0.4, 1.2);
    }

    /// <summary>
    /// Smooth round pole, AASHTO LTS (from memory): 1.10 while speed times diameter is at most 5.33 m2/s, 9.69 / (v d)^1.3 up to 10.66,
    /// 0.45 beyond.
    /// </summary>
    /// <param name="diameterM">Diameter, m.</param>
    /// <param name="speedMPerS">Wind speed with its coefficient, m/s.</param>
    /// <returns>Coefficient. Check value: 0.1 m at 30 m/s: 1.10.</returns>
    public static double SmoothRoundPole(double diameterM, double speedMPerS) =>
        (Require.Positive(diameterM, nameof(diameterM)) * Require.NotNegative(speedMPerS, nameof(speedMPerS))) switch
        {
            <= 5.33 => 1.10,
            >= 10.66 => 0.45,
            var product => 9.69 / Math.Pow(product, 1.3),
        };
}
