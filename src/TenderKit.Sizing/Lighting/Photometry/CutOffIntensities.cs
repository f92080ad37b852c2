namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Greatest intensity at and above an angle from straight down, over all planes, per 1000 lm of the luminaire's own flux.
/// </summary>
/// <param name="At70CdPerKlm">At 70 degrees and above, cd/klm.</param>
/// <param name="At80CdPerKlm">At 80 degrees and above, cd/klm.</param>
/// <param name="At90CdPerKlm">At 90 degrees and above, cd/klm.</param>
/// <param name="Above90CdPerKlm">Above 90 degrees, 90 itself left out, cd/klm.</param>
/// <param name="Above95CdPerKlm">Above 95 degrees, cd/klm.</param>
public sealed record CutOffIntensities(double At70CdPerKlm, double At80CdPerKlm, double At90CdPerKlm, double Above90CdPerKlm, double Above95CdPerKlm)
{
    private const double NothingCdPerKlm = 0.05; // what a file's rounding leaves; our choice, no source

    /// <summary>
    /// Highest luminous intensity class met, G*1 to G*6, as 1 to 6; 0 for none. Source: EN 13201-2, annex A, table A.1; every limit is from
    /// memory: 80 degrees 200, 150, 100, 100, 100, 100 cd/klm; 90 degrees 50, 30, 20, 10, 10, 0; 70 degrees 500, 350, 350 for G*4 to G*6;
    /// nothing above 95 degrees for G*4 and G*5, above 90 for G*6. The luminaire is taken as level: tilt it, and the class no longer holds.
    /// </summary>
    public int GlareClass =>
        Meets(350, 100, 0) && Above90CdPerKlm <= NothingCdPerKlm ? 6
        : Meets(350, 100, 10) && Above95CdPerKlm <= NothingCdPerKlm ? 5
        : Meets(500, 100, 10) && Above95CdPerKlm <= NothingCdPerKlm ? 4
        : Meets(double.PositiveInfinity, 100, 20) ? 3
        : Meets(double.PositiveInfinity, 150, 30) ? 2
        : Meets(double.PositiveInfinity, 200, 50) ? 1
        : 0;

    /// <summary>Reads the intensities off a distribution; between listed angles the surface is bilinear, so its greatest values stand at corners.</summary>
    public static CutOffIntensities Of(LightDistribution distribution)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        var perKlm = distribution.FluxLm > 0 ? 1000 / distribution.FluxLm : 0;
        double From(double gamma) => perKlm * Math.Max(AtGamma(distribution, gamma), Beyond(distribution, gamma));
        return new CutOffIntensities(From(70), From(80), From(90), perKlm * Beyond(distribution, 90), perKlm * Beyond(distribution, 95));
    }

    private bool Meets(double at70, double at80, double at90) =>
        At70CdPerKlm <= at70 && At80CdPerKlm <= at80 && At90CdPerKlm <= at90 + NothingCdPerKlm;

    private static double Beyond(LightDistribution distribution, double gammaDegrees)
    {
        var greatest = 0.0;
        foreach (var gamma in distribution.GammasDegrees)
        {
            if (gamma > gammaDegrees) greatest = Math.Max(greatest, AtGamma(distribution, gamma));
        }

        return greatest;
    }

    private static double AtGamma(LightDistribution distribution, double gammaDegrees)
    {
        var greatest = 0.0;
        foreach (var plane in distribution.PlanesDegrees) greatest = Math.Max(greatest, distribution.IntensityCd(plane, gammaDegrees));
        return greatest;
    }
}
