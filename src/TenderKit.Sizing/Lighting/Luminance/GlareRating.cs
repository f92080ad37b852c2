using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Glare rating GR of outdoor work places, 10 (not noticed) to 90 (unbearable). Source: CIE 112:1994 and EN 12464-2 (from memory): eye 1.5 m above
/// each point of the grid, eight directions 45 degrees apart, two degrees down; luminaires within 60 degrees of the line of sight count. New
/// luminaires: GR grows with flux to the power 0.1, which is the worse state.
/// </summary>
public static class GlareRating
{
    private const double EyeHeightM = 1.5;
    private const double SightDownDegrees = 2;
    private const double GreatestAngleDegrees = 60;
    private const double LeastAngleDegrees = 1.5;
    private const int Directions = 8;

    /// <summary>
    /// GR = 27 + 24 log10(Lvl / Lve^0.9), held to 10 to 90. Source: CIE 112:1994 (from memory).
    /// Check: Lvl 0.1, Lve 0.01671: 27 + 24 (-1 + 1.5993) = 41.38.
    /// </summary>
    /// <param name="luminairesCdM2">Veiling luminance of the luminaires, cd/m2.</param>
    /// <param name="surroundingsCdM2">Veiling luminance of the surroundings, cd/m2, above 0.</param>
    public static double Rating(double luminairesCdM2, double surroundingsCdM2)
    {
        Require.NotNegative(luminairesCdM2, nameof(luminairesCdM2));
        Require.Positive(surroundingsCdM2, nameof(surroundingsCdM2));
        if (luminairesCdM2 == 0) return 10;
        return Math.Clamp(27 + (24 * Math.Log10(luminairesCdM2 / Math.Pow(surroundingsCdM2, 0.9))), 10, 90);
    }

    /// <summary>Lve = 0.035 rho Eav / pi, cd/m2. Source: CIE 112:1994 (from memory). Check: 10 lx, 0.15: 0.01671.</summary>
    public static double SurroundingsCdM2(double averageLx, double reflectanceFraction)
    {
        Require.NotNegative(averageLx, nameof(averageLx));
        return 0.035 * Require.InRange(reflectanceFraction, 0.01, 1, nameof(reflectanceFraction)) * averageLx / Math.PI;
    }

    /// <summary>The worst rating over an area.</summary>
    /// <param name="luminaires">Every luminaire of the area.</param>
    /// <param name="area">Maintained illuminance with its points.</param>
    /// <param name="maintenanceFactor">Factor that illuminance holds; it is taken out again.</param>
    /// <param name="reflectanceFraction">Diffuse reflectance of the ground, fraction; 0.15 for asphalt (CIE 112, from memory).</param>
    public static double Worst(
        LightDistribution distribution, ReadOnlySpan<LuminairePosition> luminaires, LightResult area, double maintenanceFactor, double reflectanceFraction)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        ArgumentNullException.ThrowIfNull(area);
        Require.InRange(Require.Positive(maintenanceFactor, nameof(maintenanceFactor)), 0, 1, nameof(maintenanceFactor));
        Span<double> veils = stackalloc double[Directions];
        var worst = 0.0;
        foreach (var point in area.Points)
        {
            veils.Clear();
            foreach (var luminaire in luminaires) AddVeils(distribution, luminaire, point, veils);
            foreach (var veil in veils) worst = Math.Max(worst, veil);
        }

        return Rating(worst, SurroundingsCdM2(area.AverageLx / maintenanceFactor, reflectanceFraction));
    }

    private static void AddVeils(LightDistribution distribution, in LuminairePosition luminaire, in LightPoint point, Span<double> veils)
    {
        double dx = luminaire.XM - point.XM, dy = luminaire.YM - point.YM, rise = luminaire.HeightM - EyeHeightM;
        var squared = (dx * dx) + (dy * dy) + (rise * rise);
        if (squared == 0) return;
        var intensity = new Mounting(luminaire.HeightM, luminaire.FacingDegrees, luminaire.TiltDegrees).IntensityCd(distribution, -dx, -dy, rise);
        for (var i = 0; i < veils.Length; i++)
        {
            var turn = i * 360.0 / Directions;
            var ahead = (dx * Angle.CosDegrees(turn)) + (dy * Angle.SinDegrees(turn));
            var cos = ((ahead * Angle.CosDegrees(SightDownDegrees)) - (rise * Angle.SinDegrees(SightDownDegrees))) / Math.Sqrt(squared);
            var angle = Angle.ToDegrees(Math.Acos(Math.Clamp(cos, -1, 1)));
            if (angle <= GreatestAngleDegrees) veils[i] += 10 * intensity * cos / squared / Math.Pow(Math.Max(angle, LeastAngleDegrees), 2);
        }
    }
}
